"""Foods that are named twice: in two languages, in brackets, or once more as the dish they go into.

"zucca (pumpkin)" is one food, "orzo pearl barley" another; in "red lentils 300 g, carrots. Lentil
soup for 4" the lentil of the soup is no second one, and burgers are what becomes of the mince.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from itertools import pairwise

from knowledge.text.match import Hit
from knowledge.text.normalise import key, singular
from knowledge.text.roles import Role
from knowledge.text.segments import Found, Segment
from knowledge.text.tokens import Token
from knowledge.text.vocabulary import Named, Vocabulary, table, words

_MEATS = frozenset({"beef", "pork", "lamb", "poultry", "game", "fish", "shellfish"})
_WANTED = frozenset(
    ["want", "wanting", "wanted", "fancy", "craving", "like", "love", "make", "making", "cook", "cooking",
     "proper", "dinner", "tonight", "tea", "supper", "doing", "please", "pls"]
)  # fmt: skip
_EATEN_UP = ("leftover", "cooked")  # what was eaten of is no second name of what is raw
_MADE_INTO = frozenset(["for", "into", "to"])
_MIXED = {"mixed vegetables": "vegetable", "leafy greens": "vegetable"}


@lru_cache(maxsize=1)
def forms() -> Mapping[str, str]:
    """What minced meat is shaped into ("burger"), and the cut that it is then."""
    return {row["word"]: row["cut"] for row in table("words_forms.csv")}


def ids(phrase: str, vocabulary: Vocabulary) -> frozenset[str]:
    """Every food that a phrase may mean."""
    return frozenset(vocabulary.meanings(key(phrase)))


def merge_neighbours(segment: Segment, tokens: Sequence[Token], vocabulary: Vocabulary) -> None:
    """Two names side by side that are one food become one: "orzo pearl barley", "beef sirloin"."""
    n = 0
    while n + 1 < len(segment.elements):
        a, b = segment.elements[n].food, segment.elements[n + 1].food
        if a is None or b is None or a.hit.end != b.hit.start or a.role is not b.role:
            n += 1
            continue
        shared = common_name(a, b, tokens, vocabulary)
        if shared is None:
            n += 1
            continue
        joined = Hit(a.hit.start, b.hit.end, b.hit.phrase, a.hit.sure and b.hit.sure)
        b.named, b.hit = shared, joined
        b.state, b.cut = b.state or a.state, b.cut or a.cut
        b.colour = b.colour or a.colour
        segment.elements[n : n + 2] = [replace(segment.elements[n + 1], at=segment.elements[n].at)]


def common_name(a: Found, b: Found, tokens: Sequence[Token], vocabulary: Vocabulary) -> Named | None:
    """The one food that both names mean, if there is one; the more exact name of an animal's meat."""
    if a.named.name == b.named.name:
        return b.named
    of_a, of_b = (ids(_said(f, tokens), vocabulary) for f in (a, b))
    if b.named.food_id in of_a:
        return b.named
    if a.named.food_id in of_b:
        return a.named
    if _is_animal(a.named, vocabulary) and _same_meat(a.named, b.named, vocabulary):
        return b.named
    return None


def _said(food: Found, tokens: Sequence[Token]) -> str:
    return " ".join(t.text for t in tokens[food.hit.start : food.hit.end])


def _is_animal(named: Named, vocabulary: Vocabulary) -> bool:
    """Whether the name is only that of an animal: "beef", "chicken", "fish"."""
    food = vocabulary.food(named)
    if food is None or food.animal not in _MEATS or food.part != "protein":
        return False
    return (named.name, food.animal) in vocabulary.animals or named.name == "white fish"


def _same_meat(a: Named, b: Named, vocabulary: Vocabulary) -> bool:
    first, second = vocabulary.food(a), vocabulary.food(b)
    if first is None or second is None or not first.animal or first.animal != second.animal:
        return False
    if first.animal in ("poultry", "game"):  # one bird is not another
        return set(a.name.split()) <= set(b.name.split())
    return second.part == "protein" and (first.group == second.group or a.name == "white fish")


def is_kin(a: Named, b: Named, vocabulary: Vocabulary) -> bool:
    """Whether `a` may be a general name for `b`: "lentil" for red lentils, "fish" for cod."""
    if a.name == b.name or set(a.name.split()) < set(b.name.split()):
        return True
    if _same_meat(a, b, vocabulary):
        return True
    first, second = vocabulary.food(a), vocabulary.food(b)
    if first is None or second is None:
        return False
    if a.name in _MIXED:
        return second.part == _MIXED[a.name]
    return first.group == second.group == "pulse" and " " not in a.name and a.name in ("lentil", "bean")


def mark_dish_names(parts: Sequence[Segment], tokens: Sequence[Token], vocabulary: Vocabulary) -> None:
    """Foods that only say the dish, while their kin is at hand, get the role AIM."""
    at_hand = [e.food for part in parts for e in part.elements if e.food and e.food.role is Role.HAVE]
    if len(at_hand) < 2:
        return
    for part in parts:
        _mince(part, tokens, vocabulary)
        of_a_dish = [food for run in _dish_runs(part, tokens) for food in run]
        others = [f for f in at_hand if f not in of_a_dish]
        for food in of_a_dish:
            if _form_of(food, tokens):
                continue
            if any(is_kin(food.named, o.named, vocabulary) for o in others):
                food.role = Role.AIM
        talks = bool(part.of("word")) or len(of_a_dish) > 1
        for food in (f for f in of_a_dish if _form_of(f, tokens) and talks):
            shape(food, others, tokens)
    for food in (f for part in parts for f in _bare_dishes(part, vocabulary)):
        if any(o is not food and _cooks_into(o, food, vocabulary) for o in at_hand):
            food.role = Role.AIM
    for food, kin, state in _spoken_of(parts, at_hand, vocabulary):
        food.role = Role.AIM
        if state:
            kin.add_state(state)
    for food in _wanted(parts):
        if any(o is not food and _is_exact(o, food, vocabulary) for o in at_hand):
            food.role = Role.AIM


def _mince(part: Segment, tokens: Sequence[Token], vocabulary: Vocabulary) -> None:
    """ "8 pork meatballs", "lamb kofte": the meat before a form of mince is minced."""
    foods = [e.food for e in part.elements if e.food and e.food.role is Role.HAVE]
    for meat, form in pairwise(foods):
        ground = vocabulary.get(["ground", *meat.named.name.split()])
        if meat.hit.end == form.hit.start and ground is not None and _form_of(form, tokens):
            meat.named, meat.form = ground.foods[0], _form_of(form, tokens)
            form.role = Role.AIM


def _spoken_of(
    parts: Sequence[Segment], at_hand: Sequence[Found], vocabulary: Vocabulary
) -> list[tuple[Found, Found, str]]:
    """An animal in a sentence without amounts, the cut of it that is counted elsewhere, and its state."""
    counted = {id(e.food) for part in parts if part.of("amount") for e in part.of("food")}
    out = []
    for part in parts:
        if part.of("amount") or not part.of("word") or any(e.mark[1] in _EATEN_UP for e in part.of("mark")):
            continue
        for food in (e.food for e in part.of("food") if e.food and e.food.role is Role.HAVE):
            kin = [o for o in at_hand if id(o) in counted and o.named != food.named]
            kin = [o for o in kin if _is_kind_of(o.named, food.named, vocabulary)]
            if _is_animal(food.named, vocabulary) and kin:
                frozen = any(e.mark[1] == "frozen" for e in part.of("mark"))
                out.append((food, kin[0], "frozen" if frozen else ""))
    return out


def _is_kind_of(exact: Named, general: Named, vocabulary: Vocabulary) -> bool:
    """Whether one name is the other made exact: "chicken thigh" for chicken, any fish for "fish"."""
    if general.name == "white fish":
        return is_kin(general, exact, vocabulary)
    return set(general.name.split()) < set(exact.name.split())


def _bare_dishes(part: Segment, vocabulary: Vocabulary) -> list[Found]:
    """ "Chilli con carne" without an amount, and not from yesterday or a tin."""
    if part.of("amount") or any(e.mark[0] == "state" for e in part.of("mark")):
        return []
    named = [(e.food, vocabulary.food(e.food.named)) for e in part.of("food") if e.food]
    return [
        food for food, known in named if known is not None and known.group == "leftover" and not food.state
    ]


def _cooks_into(other: Found, dish: Found, vocabulary: Vocabulary) -> bool:
    """Whether the meat of a dish is at hand raw: the mince of a chilli con carne."""
    meat, known = vocabulary.food(other.named), vocabulary.food(dish.named)
    return meat is not None and known is not None and meat.group != "leftover" and meat.animal == known.animal


def _dish_runs(part: Segment, tokens: Sequence[Token]) -> list[list[Found]]:
    """Foods without amounts that stand right before a dish: the chicken of "chicken veg soup"."""
    runs: list[list[Found]] = []
    run: list[Found] = []
    last = -1
    measured = False
    for element in part.elements:
        food = element.food
        if food is not None and food.role is Role.HAVE:
            run = [*run, food] if run and last == food.hit.start else [food]
            if _form_of(food, tokens) and not measured:
                runs.append(run)
                run = []
            last = food.hit.end
        elif element.kind == "amount":
            measured = bool(element.amount and not element.amount.article and element.amount.qty)
            run = []
        else:
            if element.kind == "word" and run and last == element.at and not measured:
                runs += [run] if is_dish(element.word) else []
            if element.word in _MADE_INTO:
                measured = False  # "500 g mince for kofte": the amount was of the mince
            run = []
    return runs


def is_dish(word: str) -> bool:
    """Whether a single word is the name of a dish."""
    return (singular(word),) in words().dishes or (word,) in words().dishes


def _form_of(food: Found, tokens: Sequence[Token]) -> str:
    """The cut of a food that is said as a form of mince and nothing else: "burgers"."""
    keys = [t.key for t in tokens[food.hit.start : food.hit.end]]
    return forms().get(keys[-1], "") if keys else ""


def shape(form: Found, others: Sequence[Found], tokens: Sequence[Token]) -> None:
    """ "Burgers" beside 500 g of mince: that is what becomes of the mince, no second food."""
    mince = [f for f in others if f.named.name.startswith("ground ") and not _form_of(f, tokens)]
    if mince and form.amount is None:
        form.role = Role.AIM
        mince[0].form = _form_of(form, tokens)


def _wanted(parts: Sequence[Segment]) -> list[Found]:
    """The only food of a sentence that says what is wanted, bare: "want proper slow cooked beef"."""
    out = []
    for number in {part.sentence for part in parts}:
        sentence = [part for part in parts if part.sentence == number]
        foods = [e.food for part in sentence for e in part.elements if e.food]
        said = {e.word for part in sentence for e in part.of("word")}
        measured = any(e.amount and not e.amount.article for part in sentence for e in part.of("amount"))
        asked = said & _WANTED or any(part.of("used") for part in sentence)
        if len(foods) == 1 and asked and not measured and foods[0].role is Role.HAVE:
            out.append(foods[0])
    return out


def _is_exact(other: Found, general: Found, vocabulary: Vocabulary) -> bool:
    """Whether another food at hand is the more exact name of a general one."""
    if other.role is not Role.HAVE or other.named.name == general.named.name:
        return False
    return is_kin(general.named, other.named, vocabulary) and len(other.named.name.split()) > len(
        general.named.name.split()
    )

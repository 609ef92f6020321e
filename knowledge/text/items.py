"""From food phrases to items: which amount, state and cut belongs to which food.

The text falls into segments at commas, line ends, "and", brackets and the like. In
a segment with several foods the amounts stand either all before or all after their
foods ("2 onions 3 carrots", "onions 2 carrots 3"); which it is shows at its ends.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache

from knowledge.text.amounts import SIZES, Amount, amount_at, size_id, unit_at
from knowledge.text.match import Hit
from knowledge.text.model import Item
from knowledge.text.normalise import FOOD, Flat, singular
from knowledge.text.roles import Role
from knowledge.text.tokens import Token
from knowledge.text.vocabulary import Named, Vocabulary, table, words

_SEPARATORS = frozenset(
    [",", ";", "\n", "*", "~", "+", "&", ".", "!", "?", ":", "/", "|", "(", ")", "[", "]", "=", ">"]
)
_JOINERS = frozenset(
    ["and", "plus", "n", "with", "but", "then", "aur", "y", "oh", "comma", "period", "also", "or", "instead", "rather", "than", "place"]
)
_STATE_RANK = {"raw": 5, "leftover": 4, "cooked": 3, "frozen": 2, "canned": 1, "dried": 1}
_NO_CAN_STATE = ("sauce", "soup", "stock", "paste", "puree", "beer")
_ONE_PIECE = frozenset(["joint", "bird", "carcass", "crown"])
_COLOURS = frozenset(["red", "green", "yellow", "orange", "white", "purple", "golden"])
_GENERIC = frozenset(["white fish", "ground beef", "lentil", "bean", "rice", "noodle", "steak", "sausage", "cheese",
                      "pasta", "beef", "pork", "squash", "winter squash", "mushroom", "stock"])  # fmt: skip
_HAVE_WORDS = frozenset(["have", "got", "ive", "weve", "theres", "there", "tengo"])


@lru_cache(maxsize=1)
def _marks() -> dict[tuple[str, ...], tuple[str, str]]:
    return {tuple(row["phrase"].split()): (row["kind"], row["value"]) for row in table("words_states.csv")}


@dataclass(slots=True)
class Found:
    """A food of the text while its amount, state and cut are gathered."""

    named: Named
    hit: Hit
    role: Role
    amount: Amount | None = None
    state: str | None = None
    cut: str | None = None
    size: str | None = None
    said: str = ""
    colour: str = ""

    def add_state(self, state: str) -> None:
        if _STATE_RANK[state] > _STATE_RANK.get(self.state or "", 0):
            self.state = state


@dataclass(slots=True)
class Element:
    """A thing in a segment: a food, an amount, a mark (state or cut), or a word."""

    kind: str
    at: int
    food: Found | None = None
    amount: Amount | None = None
    mark: tuple[str, str] = ("", "")
    word: str = ""


@dataclass(slots=True)
class Segment:
    """Elements between two separators. `opener` is the separator before, `closer` the one after."""

    opener: str
    elements: list[Element] = field(default_factory=list)
    closer: str = ""
    depth: int = 0
    sentence: int = 0

    def of(self, kind: str) -> list[Element]:
        return [e for e in self.elements if e.kind == kind]


def segments(
    tokens: Sequence[Token], hits: Sequence[Hit], roles: dict[int, Role], used: Sequence[tuple[int, int]]
) -> list[Segment]:
    """The text as segments of elements. `used` are stretches that are times, eaters and the like."""
    by_start = {hit.start: (n, hit) for n, hit in enumerate(hits)}
    blind = _blinded(tokens, hits, used)
    out = [Segment("")]
    depth = sentence = 0
    i = 0
    while i < len(tokens):
        token = tokens[i]
        if i in by_start:
            n, hit = by_start[i]
            first = True
            for named in hit.phrase.foods:
                role = roles.get(n, Role.HAVE)
                found = Found(named, hit, role, state=hit.phrase.state, cut=hit.phrase.cut)
                found.colour = next((t.text for t in tokens[hit.start : hit.end] if t.text in _COLOURS), "")
                _marks_inside(tokens, hit, found)
                out[-1].elements.append(Element("food", i, food=found))
                first = False
            del first
            i = hit.end
            continue
        if blind[i].text == FOOD:  # part of a time, of the number of eaters ...
            out[-1].elements.append(Element("used", i))
            i += 1
            continue
        if token.text in ("(", "["):
            depth += 1
        elif token.text in (")", "]"):
            depth = max(0, depth - 1)
        if _separates(blind, i):
            sentence += token.text in ".!?\n:"
            out[-1].closer = token.text
            out.append(Segment(token.text, depth=depth, sentence=sentence))
            i += 1
            continue
        mark = _mark_at(blind, i)
        if mark:
            out[-1].elements.append(Element("mark", i, mark=mark[0]))
            i = mark[1]
            continue
        got = amount_at(blind, i)
        if got and got[1] > i:
            out[-1].elements.append(Element("amount", i, amount=got[0]))
            i = got[1]
            continue
        holder = unit_at(blind, i)
        if holder and _is_holder(blind, i, holder[0].kind, holder[0].id):
            one = 1.0 if token.text == token.key else None
            amount = Amount(one, holder[0].id, canned=holder[0].id == "can", kind="holder")
            out[-1].elements.append(Element("amount", i, amount=amount))
            i = holder[1]
            continue
        if token.text in SIZES:
            out[-1].elements.append(Element("size", i, word=size_id(token.text)))
        else:
            out[-1].elements.append(Element("word", i, word=token.text))
        i += 1
    return [s for s in out if s.elements or s.closer]


def _blinded(tokens: Sequence[Token], hits: Sequence[Hit], used: Sequence[tuple[int, int]]) -> list[Token]:
    """Tokens with foods and used stretches hidden, so that no amount reads across them."""
    hidden = {n for hit in hits for n in range(hit.start, hit.end)}
    return [
        replace(t, text=FOOD, key=FOOD, value=None)
        if n in hidden or any(a <= t.start < b for a, b in used)
        else t
        for n, t in enumerate(tokens)
    ]


def _separates(tokens: Sequence[Token], i: int) -> bool:
    word = tokens[i].text
    if word in _JOINERS:
        return True
    if word == "-":
        return True
    return word in _SEPARATORS and not (word == "*" and i > 0 and tokens[i - 1].is_number)


def _mark_at(tokens: Sequence[Token], i: int) -> tuple[tuple[str, str], int] | None:
    for length in (4, 3, 2, 1):
        if i + length > len(tokens):
            continue
        for texts in (
            tuple(t.text for t in tokens[i : i + length]),
            tuple(t.key for t in tokens[i : i + length]),
        ):
            mark = _marks().get(texts)
            if mark:
                return mark, i + length
    return None


def _marks_inside(tokens: Sequence[Token], hit: Hit, found: Found) -> None:
    """A state word that is part of the matched phrase but not of the label: "fresh basil"."""
    label = found.named.name.split()
    for token in tokens[hit.start : hit.end]:
        mark = _marks().get((token.text,))
        if mark and mark[0] == "state" and token.text not in label and token.key not in label:
            if mark[1] == "leftover" or (token.text == "dry" and "wine" in found.named.name):
                continue
            found.add_state(mark[1])


def _is_holder(tokens: Sequence[Token], i: int, kind: str, unit: str) -> bool:
    """A container without a number ("tin chickpeas"); "can" the verb is none."""
    if unit == "cup":
        return i == 0 or tokens[i - 1].text in (",", "\n", ".", "and")
    if kind not in ("container", "count", "piece") or unit in (
        "stick",
        "ball",
        "box",
        "pot",
        "tray",
        "piece",
    ):
        return False
    if tokens[i].text != "can":
        return True
    after = tokens[i + 1].text if i + 1 < len(tokens) else ""
    return after in ("of", FOOD, "", ",", ";", "\n", ".", ")", "(") and not (
        after == FOOD
        and i == 0
        and len(tokens) > 3
        and tokens[2].text in ("replace", "go", "be", "work", "i")
    )


def gather(parts: Sequence[Segment], vocabulary: Vocabulary) -> list[Found]:
    """Every food with what belongs to it, in the order of the text; aims and slips marked."""
    last: Found | None = None
    everything: list[Found] = []
    heading = ""
    inherited: str | None = None
    for segment in parts:
        if segment.closer == ":" and not segment.of("food"):
            heading = _heading(segment) or heading
            continue
        foods = [e.food for e in segment.elements if e.food]
        if not foods:
            if last is not None:
                _orphans(segment, last, vocabulary)
            inherited = _inherit(segment, inherited)
            continue
        if segment.depth and last is not None and _narrows(segment, foods, last, vocabulary):
            continue
        _reversed_name(segment, vocabulary)
        foods = [e.food for e in segment.elements if e.food]
        _attach(segment)
        for food in foods:
            if heading == "frozen" or heading == "canned":
                food.add_state(heading)
            elif heading == "missing" and food.role is Role.HAVE:
                food.role = Role.REFUSED
            if segment.depth and inherited:
                food.add_state(inherited)
        if not segment.depth:
            inherited = None
        everything += foods
        last = foods[-1]
    return everything


def _heading(segment: Segment) -> str:
    said = [e.word for e in segment.of("word")]
    if any(e.mark[1] == "frozen" for e in segment.of("mark")):
        return "frozen"
    if any(
        w in said
        for w in (
            "dont",
            "missing",
            "no",
            "out",
            "lack",
            "havent",
            "need",
            "allergic",
            "hate",
            "avoid",
            "without",
            "not",
        )
    ):
        return "missing"
    return "have"


def _inherit(segment: Segment, before: str | None) -> str | None:
    """A dish from yesterday hands its state to the foods named in the brackets that follow."""
    states = [e.mark[1] for e in segment.of("mark") if e.mark[0] == "state"]
    return states[-1] if states and segment.of("word") else before


def _orphans(segment: Segment, last: Found, vocabulary: Vocabulary) -> None:
    """Amounts and marks that stand alone after a comma, a dash or in brackets belong to the food before."""
    close = segment.opener in ("(", "[", ")", "]", "-", ",", ":") or segment.depth > 0
    content = [e.word for e in segment.of("word") if e.word not in words().common]
    if not close or content:
        return
    for element in segment.elements:
        if element.amount and (last.amount is None or (last.amount.grams is None and element.amount.grams)):
            number_only = element.amount.bare and segment.opener not in ("(", "[", ")", "]", "-", ":")
            if not number_only:
                last.amount = _joined(last.amount, element.amount)
        elif element.kind == "mark":
            _mark(last, element.mark)
        elif element.kind == "size":
            last.size = element.word
    specific = vocabulary.get([*(e.word for e in segment.of("word")), *last.named.name.split()])
    if specific:
        last.named = specific.foods[0]


def _joined(first: Amount | None, second: Amount) -> Amount:
    """A count and a weight said apart: the count stays, the weight is the total."""
    if first is None or (first.qty is None and first.unit is None):
        return second
    if first.qty is not None and first.grams is None and second.kind == "weight":
        return replace(first, grams=second.grams)
    return first


def _mark(food: Found, mark: tuple[str, str]) -> None:
    kind, value = mark
    if kind == "state":
        food.add_state(value)
    elif food.cut is None:
        food.cut = value


def _narrows(segment: Segment, foods: list[Found], last: Found, vocabulary: Vocabulary) -> bool:
    """ "fish (rohu)", "keema (goat)": the brackets say which one it is."""
    if len(foods) != 1 or foods[0].role is not Role.HAVE:
        return False
    inner = foods[0]
    if last.named.name.startswith("ground ") and not last.named.name.endswith(inner.named.name):
        ground = vocabulary.get(["ground", *inner.named.name.split()])
        last.named = (
            ground.foods[0]
            if ground and inner.named.name in ("lamb", "pork", "turkey", "chicken")
            else inner.named
        )
        last.cut = "ground"
    elif inner.named.name == last.named.name:
        last.role = Role.HAVE
    elif (last.named.name.startswith("ground ") and last.named.name.endswith(inner.named.name)):
        pass
    elif last.named.name in _GENERIC and not segment.of("amount") and last.named.name != inner.named.name:
        last.named = inner.named
    else:
        return False
    _attach(segment)
    last.amount = last.amount or inner.amount
    if inner.state:
        last.add_state(inner.state)
    return True


def _reversed_name(segment: Segment, vocabulary: Vocabulary) -> None:
    """ "tortillas corn" alone in a segment is one food said the other way round."""
    foods = segment.of("food")
    if len(foods) == 2 and foods[1].at - foods[0].at == 1 and foods[0].food and foods[1].food:
        a, b = foods[0].food, foods[1].food
        turned = vocabulary.get([*b.named.name.split(), *a.named.name.split()])
        straight = vocabulary.get([*a.named.name.split(), *b.named.name.split()])
        if turned and not straight:
            a.named = turned.foods[0]
            segment.elements.remove(foods[1])
    elif len(foods) == 1 and foods[0].food:
        after = [e for e in segment.elements if e.kind == "word" and e.at == foods[0].food.hit.end]
        if after:
            turned = vocabulary.get([after[0].word, *foods[0].food.named.name.split()])
            if turned and after[0].word in vocabulary.food_words:
                foods[0].food.named = turned.foods[0]
                segment.elements.remove(after[0])


def _attach(segment: Segment) -> None:
    elements = segment.elements
    foods = [n for n, e in enumerate(elements) if e.food]
    amounts = [n for n, e in enumerate(elements) if e.amount]
    meant = [n for n in amounts if elements[n].amount.kind != "holder"]  # type: ignore[union-attr]
    after = bool(meant) and foods[0] < meant[0] and (foods[-1] < meant[-1] or len(foods) == 1)
    for n in amounts:
        amount = elements[n].amount
        assert amount is not None
        previous = [f for f in foods if f < n]
        following = [f for f in foods if f > n]
        holder = amount.kind == "holder"
        if (
            holder
            and previous
            and (
                not following
                or (elements[previous[-1]].food.amount is None
                and n - previous[-1] == 1
                and following[0] - n > 1)
            )
        ):  # type: ignore[union-attr]
            target = previous[-1]
        elif (after and previous) or not following:
            if not previous:
                continue
            target = previous[-1]
        else:
            target = following[0]
        food = elements[target].food
        assert food is not None
        if holder and food.amount is not None:
            food.amount = _held(food.amount, amount)
        else:
            food.amount = _joined(food.amount, amount)
    _attach_marks(elements, foods)


def _held(amount: Amount, holder: Amount) -> Amount:
    """ "2 ... tins" said around the food: "tomatoes 2 big cans" or "2 tomato tins"."""
    if amount.bare:
        return replace(amount, unit=holder.unit, canned=holder.canned, bare=False)
    if amount.kind == "weight":
        return replace(amount, qty=1.0, unit=holder.unit, canned=holder.canned)
    return amount


def _attach_marks(elements: list[Element], foods: list[int]) -> None:
    for n, element in enumerate(elements):
        if element.kind not in ("mark", "size") and element.word not in _ONE_PIECE:
            continue
        previous = [f for f in foods if f < n]
        following = [f for f in foods if f > n]
        if (
            following
            and (not previous or following[0] - n <= n - previous[-1])
            and element.mark[1] != "bone-in"
        ):
            target = following[0]
        elif previous:
            target = previous[-1]
        else:
            target = following[0]
        food = elements[target].food
        assert food is not None
        if element.kind == "mark":
            _mark(food, element.mark)
        elif element.kind == "size":
            food.size = element.word
        elif food.amount is None:
            food.amount = Amount(1.0, "piece")


def finished(found: Sequence[Found], flat: Flat, tokens: Sequence[Token], *, articles: bool) -> list[Item]:
    """Items out of the foods at hand, one for each name, in the order of the text."""
    out: dict[str, Item] = {}
    colours: dict[str, str] = {}
    for food in found:
        if food.role is not Role.HAVE:
            continue
        item = _item(food, flat, tokens, articles)
        name = item.name
        if name not in out:
            out[name] = item
            colours[name] = food.colour
        else:
            out[name] = _merged(out[name], item, food.colour != colours[name] and bool(food.colour))
    return list(out.values())


def _item(food: Found, flat: Flat, tokens: Sequence[Token], articles: bool) -> Item:
    amount = food.amount
    name = food.named.name
    if amount and amount.article and amount.unit == "piece" and not articles:
        amount = None
    unit = amount.unit if amount else None
    if name == "tomato puree" and unit == "tube":  # so it is sold in Britain
        name = "tomato paste"
    if food.hit.phrase.unit and unit in ("piece",):
        unit = food.hit.phrase.unit
    if amount and amount.canned and not name.endswith(_NO_CAN_STATE):
        food.add_state("canned")
    cut = food.cut
    if name.startswith("ground ") and food.hit.phrase is not None:
        cut = "ground"
    elif name.startswith("whole "):
        cut = "whole"
    state = food.state
    grams = amount.grams if amount else None
    return Item(
        name=name,
        food_id=food.named.food_id,
        qty=round(amount.qty, 4) if amount and amount.qty is not None else None,
        unit=unit,
        grams=float(round(grams)) if grams is not None else None,
        state=state,
        cut=cut,
        size=food.size or (amount.size if amount else None),
        phrase=flat.said(tokens[food.hit.start].start, tokens[food.hit.end - 1].end),
        sure=food.hit.sure,
    )


def _merged(a: Item, b: Item, add: bool) -> Item:
    """One food said twice."""
    if add and a.qty and b.qty and a.unit == b.unit:
        grams = a.grams + b.grams if a.grams and b.grams else None
        return replace(a, qty=a.qty + b.qty, grams=grams)
    if a.qty is None or (b.qty is not None and a.unit == "piece" and a.qty == 1):
        a = replace(
            a, qty=b.qty if b.qty is not None else a.qty, unit=b.unit or a.unit, grams=b.grams or a.grams
        )
    return replace(
        a, state=a.state or b.state, cut=a.cut or b.cut, size=a.size or b.size, sure=a.sure or b.sure
    )


_AIM_WORDS = frozenset(
    ["tonight", "idea", "night", "style", "fancy", "craving", "feel", "mood", "situation", "thinking"]
)


def mark_aims(parts: Sequence[Segment]) -> None:
    """Foods that only name the dish aimed at: a dish before a colon, "beans and dodo tonight. ..."."""
    for n, segment in enumerate(parts):
        foods = [e.food for e in segment.elements if e.food and e.food.role is Role.HAVE]
        if not foods:
            continue
        sentence = [s for s in parts if s.sentence == segment.sentence]
        rest = [s for s in parts if s.sentence > segment.sentence]
        more = sum(len(s.of("food")) for s in rest)
        said = {e.word for s in sentence for e in s.of("word")}
        if any(s.of("amount") for s in sentence) and sentence[-1].closer != ":":
            continue
        if any(e.mark[1] in ("leftover", "frozen", "canned") for s in sentence for e in s.of("mark")):
            continue
        dish = any((singular(w),) in words().dishes for w in said)
        labelled = sentence[-1].closer == ":" and more >= 1 and not (said & _HAVE_WORDS)
        length = sum(len(s.elements) for s in sentence)
        asked = sentence[-1].closer == "?" and length <= 5 and bool(rest) and _begins_with_have(parts[n + 1 :])
        aimed = bool(said & _AIM_WORDS) and "no" not in said and more >= 2
        if more and ((labelled and (dish or aimed or more >= 2)) or asked or aimed or (dish and more >= 2)):
            for food in foods:
                food.role = Role.AIM


def _begins_with_have(parts: Sequence[Segment]) -> bool:
    for segment in parts:
        if segment.elements:
            first = [e.word for e in segment.elements[:3] if e.kind == "word"]
            return bool(set(first) & _HAVE_WORDS)
    return False

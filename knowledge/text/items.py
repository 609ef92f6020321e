"""From segments to foods, and from foods to items: headings, brackets, and what is said behind a comma."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise, takewhile

from knowledge.text.amounts import Amount
from knowledge.text.attach import attach, each_of, joined, put_mark
from knowledge.text.model import Item
from knowledge.text.normalise import Flat, key
from knowledge.text.roles import Role
from knowledge.text.same import common_name, is_dish, is_kin, merge_neighbours
from knowledge.text.segments import Found, Segment, labelled
from knowledge.text.tokens import Token
from knowledge.text.unknown import is_measured
from knowledge.text.vocabulary import Vocabulary, words

_NO_CAN_STATE = ("sauce", "soup", "stock", "paste", "puree", "beer")
_LISTED = ("mixed vegetables", "leafy greens", "mixed herbs")
_GENERIC = frozenset([
    "white fish", "ground beef", "lentil", "bean", "rice", "noodle", "steak", "sausage", "cheese",
    "pasta", "beef", "pork", "squash", "winter squash", "mushroom", "stock",
])  # fmt: skip


def gather(parts: Sequence[Segment], tokens: Sequence[Token], vocabulary: Vocabulary) -> list[Found]:
    """Every food with what belongs to it, in the order of the text; aims and slips marked."""
    last: Found | None = None
    everything: list[Found] = []
    heading = ""
    of_sentence = -1
    inherited: str | None = None
    shared: Amount | None = None
    for n, segment in enumerate(parts):
        if segment.opener in (".", "!", "?") and heading == "missing":
            heading = ""  # a list of what is missing ends with its sentence
        if segment.closer == ":" and not segment.of("food"):
            heading, of_sentence = _heading(segment), segment.sentence + 1
            continue
        foods = [e.food for e in segment.elements if e.food]
        if not foods:
            said = segment.of("word")
            food_word = vocabulary.names_food(key(" ".join(e.word for e in said)))
            if last is not None and not (food_word and is_measured(segment, said)):
                _orphans(segment, last, vocabulary)
            inherited = _inherit(segment, inherited)
            continue
        if segment.opener == "(" and last is not None and last.named.name in _LISTED:
            last.role = Role.AIM  # "stir fry veg (leeks, pak choi)": the bracket lists it
        if segment.opener == "(" and last is not None:
            _shared_out(last, _foods_inside(parts, n), vocabulary)
        if (
            segment.depth
            and last is not None
            and last.role is not Role.AIM
            and _narrows(segment, foods, last, tokens, vocabulary)
        ):
            continue
        alone = segment.depth and len(_foods_inside(parts, n)) == 1
        if alone and last is not None and _describes(segment, foods, last, tokens, vocabulary):
            continue
        merge_neighbours(segment, tokens, vocabulary)
        _reversed_name(segment, tokens, vocabulary)
        foods = [e.food for e in segment.elements if e.food]
        shared = each_of(segment, shared)
        attach(segment)
        for food in foods:
            food.amount = food.amount or shared
        if segment.opener in ("and", "&", "+", "plus"):
            shared = None  # "150 g each of peas, corn and leeks, rice": the list ends with its "and"
        for food in foods:
            if heading == "frozen" or (heading == "leftover" and segment.sentence == of_sentence):
                food.add_state(heading)
            elif heading == "missing" and food.role is Role.HAVE:
                food.role = Role.REFUSED
            if segment.depth and inherited:
                food.add_state(inherited)
        if not segment.depth:
            inherited = None
        everything += foods
        last = foods[-1]
    for food in everything:
        _boned(food, vocabulary)
    return everything


_BONELESS = "boneless"


def _boned(food: Found, vocabulary: Vocabulary) -> None:
    """ "Chicken thighs (boneless)" are boneless chicken thighs, wherever the word stands."""
    if food.cut != _BONELESS:
        return
    exact = vocabulary.get([_BONELESS, *food.named.name.split()])
    if exact is not None and exact.foods[0].name == f"{_BONELESS} {food.named.name}":
        food.named, food.cut = exact.foods[0], None


_MISSING = frozenset([
    "dont", "missing", "lack", "lacking", "havent", "need", "allergic", "hate", "avoid", "without",
])  # fmt: skip


_NOT_ALLOWED = (
    ["got"],
    ["in"],
    ["any"],
    ["allowed"],
    ["ok"],
    ["okay"],
    ["good"],
    ["available"],
    ["thanks"],
    ["go"],
    ["please"],
)


def _heading(segment: Segment) -> str:
    said = [e.word for e in segment.of("word")]
    for state in ("frozen", "leftover"):
        if any(e.mark[1] == state for e in segment.of("mark")):
            return state
    refused = said[:1] in (["no"], ["not"]) and (len(said) == 1 or said[1:] in _NOT_ALLOWED)
    gone = said[-1:] == ["out"] or any(a == "out" and b == "of" for a, b in pairwise(said))
    if any(word in _MISSING for word in said) or refused or gone:
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
    counts = [e.amount.qty for e in segment.of("amount") if e.amount and e.amount.bare and e.amount.qty]
    if segment.depth and len(counts) > 1 and len(counts) == len(segment.of("amount")):
        last.amount = Amount(sum(counts), "piece")  # "peppers (1 red 1 yellow)"
        return
    for element in segment.elements:
        if element.amount and (last.amount is None or (last.amount.grams is None and element.amount.grams)):
            number_only = (
                element.amount.bare
                and not element.amount.size
                and segment.opener not in ("(", "[", ")", "]", "-", ":")
                and not segment.depth
            )
            if not number_only:
                last.amount = joined(last.amount, element.amount)
        elif element.kind == "mark":
            put_mark(last, element.mark)
        elif element.kind == "size":
            last.size = element.word
    specific = vocabulary.get([*(e.word for e in segment.of("word")), *last.named.name.split()])
    if specific:
        last.named = specific.foods[0]


def _is_counted_out(packs: Amount, pieces: Amount | None) -> bool:
    """ "Two packs of sausages (12 pork sausages)": how many are in them all."""
    if pieces is None or pieces.grams is not None or pieces.qty is None or pieces.unit not in (None, "piece"):
        return False
    return packs.grams is None and packs.unit not in (None, "piece") and pieces.qty > (packs.qty or 1.0)


def _narrows(
    segment: Segment, foods: list[Found], last: Found, tokens: Sequence[Token], vocabulary: Vocabulary
) -> bool:
    """ "fish (rohu)", "keema (goat)": the brackets say which one it is."""
    if len(foods) != 1 or foods[0].role is not Role.HAVE or segment.opener in ("or", "and", "plus", "with"):
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
    elif last.named.name.startswith("ground ") and last.named.name.endswith(inner.named.name):
        pass
    elif last.named.name in _GENERIC and (
        exact := vocabulary.get([*inner.named.name.split(), *last.named.name.split()])
    ):
        last.named = exact.foods[0]  # "cheese (goat)", "sausages (pork, 6)"
    elif last.named.name in _GENERIC and not segment.of("amount") and last.named.name != inner.named.name:
        last.named = inner.named
    else:
        return False
    attach(segment)
    if last.amount is None or _is_counted_out(last.amount, inner.amount):
        last.amount = inner.amount
    if set(_keys(last, tokens)) < set(_keys(inner, tokens)):
        last.hit = inner.hit  # "sausages (12 pork sausages)": the more exact words
    if inner.state:
        last.add_state(inner.state)
    return True


_BRACKET_PARTS = 12  # segments of a bracket that lists foods


def _foods_inside(parts: Sequence[Segment], n: int) -> list[Found]:
    """The foods that the bracket names in which a segment stands."""
    start = n
    while start > max(0, n - _BRACKET_PARTS) and parts[start - 1].depth:
        start -= 1
    inside = takewhile(lambda part: part.depth, parts[start : start + _BRACKET_PARTS])
    return [e.food for part in inside for e in part.elements if e.food]


def _shared_out(whole: Found, inside: Sequence[Found], vocabulary: Vocabulary) -> None:
    """ "1 kg chicken (thighs and drumsticks)": the bracket lists what it is, and each has its share."""
    if len(inside) < 2 or whole in inside:
        return
    if not all(f.named != whole.named and is_kin(whole.named, f.named, vocabulary) for f in inside):
        return
    whole.role = Role.AIM
    amount, count = whole.amount, len(inside)
    if amount is None or amount.qty is None:
        return
    grams = amount.grams / count if amount.grams is not None else None
    for food in inside:
        food.amount = replace(amount, qty=amount.qty / count, grams=grams)
        if whole.state:
            food.add_state(whole.state)


_NOT_DESCRIBING = frozenset(["with", "and", "plus", "also", "too", "or", "optional", "for", "not", "no"])
_CLOSE = 4  # tokens between a food and the bracket that describes it: its amount


def _describes(
    segment: Segment, foods: list[Found], last: Found, tokens: Sequence[Token], vocabulary: Vocabulary
) -> bool:
    """ "Meatballs (raw beef, 500g)", "zucca (pumpkin)": a bracket behind a food says what it is."""
    if len(foods) != 1 or foods[0].role is not Role.HAVE:
        return False
    inner = foods[0]
    opening = next((n for n in range(inner.hit.start, last.hit.end - 1, -1) if tokens[n].text in "(["), -1)
    if opening < 0 or opening - last.hit.end > _CLOSE:
        return False
    closing = next((n for n in range(opening, len(tokens)) if tokens[n].text in ")]"), len(tokens))
    said = {t.text for t in tokens[last.hit.end : closing]}
    counted = any(e.amount and e.amount.grams is None and e.amount.qty for e in segment.of("amount"))
    between = {t.text for t in tokens[last.hit.end : opening]}
    if said & _NOT_DESCRIBING or counted or between & {",", "\n", ".", ";", ")"}:
        return False
    attach(segment)
    last.named = common_name(last, inner, tokens, vocabulary) or last.named
    last.amount = inner.amount if last.amount is None else joined(last.amount, inner.amount or last.amount)
    last.cut = last.cut or inner.cut
    if inner.state:
        last.add_state(inner.state)
    return True


def _reversed_name(segment: Segment, tokens: Sequence[Token], vocabulary: Vocabulary) -> None:
    """ "tortillas corn", "dal toor": alone in a segment one food said the other way round."""
    foods = segment.of("food")
    if len(foods) == 2 and foods[0].food and foods[1].food:
        a, b = foods[0].food, foods[1].food
        first, second = _keys(a, tokens), _keys(b, tokens)
        turned = vocabulary.get([*second, *first])
        straight = vocabulary.get([*first, *second])
        if turned and not straight and a.hit.end == b.hit.start:
            a.named = turned.foods[0]
            segment.elements.remove(foods[1])
    elif len(foods) == 1 and foods[0].food:
        after = [e for e in segment.elements if e.kind == "word" and e.at == foods[0].food.hit.end]
        if after and not is_dish(after[0].word):
            turned = vocabulary.get([after[0].word, *foods[0].food.named.name.split()])
            if turned and after[0].word in vocabulary.food_words:
                foods[0].food.named = turned.foods[0]
                segment.elements.remove(after[0])


def _keys(food: Found, tokens: Sequence[Token]) -> list[str]:
    return [token.key for token in tokens[food.hit.start : food.hit.end]]


def finished(found: Sequence[Found], flat: Flat, tokens: Sequence[Token], *, articles: bool) -> list[Item]:
    """Items out of the foods at hand, one for each name, in the order of the text."""
    out: dict[str, Item] = {}
    colours: dict[str, str] = {}
    before: Found | None = None
    for food in found:
        if food.role is not Role.HAVE:
            continue
        item = _item(food, flat, tokens, articles)
        name = item.name
        if name not in out:
            out[name] = item
            colours[name] = food.colour
        else:
            if before is not None and before.named == food.named and _is_put_right(before, food, tokens):
                out[name] = replace(out[name], qty=None)
            out[name] = _merged(out[name], item, food.colour != colours[name] and bool(food.colour))
        before = food
    return list(out.values())


_PUTS_RIGHT = frozenset(["no", "wait", "sorry", "actually", "oops", "nope", "correction"])


def _is_put_right(before: Found, food: Found, tokens: Sequence[Token]) -> bool:
    """ "Two leeks no three leeks": the second amount takes the place of the first."""
    between = {token.text for token in tokens[before.hit.end : food.hit.start]}
    return food.amount is not None and food.amount.qty is not None and bool(between & _PUTS_RIGHT)


def _item(food: Found, flat: Flat, tokens: Sequence[Token], articles: bool) -> Item:
    amount = food.amount
    name = food.named.name
    if amount and amount.article and amount.unit == "piece" and not articles:
        amount = None
    unit = amount.unit if amount else None
    if name == "tomato puree" and unit == "tube":  # so it is sold in Britain
        name = "tomato paste"
    if unit == "piece":
        unit = _unit_in_name(food, tokens) or unit
    if food.hit.phrase.unit and unit in ("piece",):
        unit = food.hit.phrase.unit
    if amount and amount.canned and not name.endswith(_NO_CAN_STATE):
        food.add_state("canned")
    cut = food.cut
    if name.startswith("ground ") and food.hit.phrase is not None:
        cut = "ground"
    elif name.startswith("whole "):
        cut = "whole"
    state = labelled(food.state)
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
        across_mm=amount.across_mm if amount else None,
        rough=amount.rough if amount else None,
        form=food.form,
    )


_UNITS_IN_NAMES = frozenset(["clove", "slice", "head", "sprig", "stalk"])


def _unit_in_name(food: Found, tokens: Sequence[Token]) -> str | None:
    """ "4 garlic cloves": the unit is part of the phrase that was matched."""
    keys = {t.key for t in tokens[food.hit.start : food.hit.end]} - set(food.named.name.split())
    return next(iter(keys & _UNITS_IN_NAMES), None)


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
        a,
        state=a.state or b.state,
        cut=a.cut or b.cut,
        size=a.size or b.size,
        sure=a.sure or b.sure,
        across_mm=a.across_mm or b.across_mm,
        rough=a.rough or b.rough,
        form=a.form or b.form,
    )

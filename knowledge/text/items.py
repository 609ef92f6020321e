"""From segments to items: which amount, state and cut belongs to which food.

In a segment with several foods the amounts stand either all before or all after
their foods ("2 onions 3 carrots", "onions 2 carrots 3"); which it is shows at its ends.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from knowledge.text.amounts import Amount
from knowledge.text.model import Item
from knowledge.text.normalise import Flat
from knowledge.text.roles import Role
from knowledge.text.same import common_name, merge_neighbours
from knowledge.text.segments import Element, Found, Segment
from knowledge.text.tokens import Token
from knowledge.text.vocabulary import Vocabulary, words

_NO_CAN_STATE = ("sauce", "soup", "stock", "paste", "puree", "beer")
_ONE_PIECE = frozenset(["joint", "bird", "carcass", "crown"])
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
    for segment in parts:
        if segment.opener in (".", "!", "?") and heading == "missing":
            heading = ""  # a list of what is missing ends with its sentence
        if segment.closer == ":" and not segment.of("food"):
            heading, of_sentence = _heading(segment), segment.sentence + 1
            continue
        foods = [e.food for e in segment.elements if e.food]
        if not foods:
            if last is not None:
                _orphans(segment, last, vocabulary)
            inherited = _inherit(segment, inherited)
            continue
        if segment.depth and last is not None and _narrows(segment, foods, last, vocabulary):
            continue
        if segment.depth and last is not None and _describes(segment, foods, last, tokens, vocabulary):
            continue
        merge_neighbours(segment, tokens, vocabulary)
        _reversed_name(segment, tokens, vocabulary)
        foods = [e.food for e in segment.elements if e.food]
        shared = _each_of(segment, shared)
        _attach(segment)
        for food in foods:
            food.amount = food.amount or shared
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
    return everything


_MISSING = frozenset([
    "dont", "missing", "out", "lack", "lacking", "havent", "need", "allergic", "hate", "avoid", "without",
])  # fmt: skip


_NOT_ALLOWED = (["allowed"], ["ok"], ["okay"], ["good"], ["available"], ["thanks"], ["go"], ["please"])


def _heading(segment: Segment) -> str:
    said = [e.word for e in segment.of("word")]
    for state in ("frozen", "leftover"):
        if any(e.mark[1] == state for e in segment.of("mark")):
            return state
    refused = said[:1] in (["no"], ["not"]) and (len(said) == 1 or said[1:] in _NOT_ALLOWED)
    if any(word in _MISSING for word in said) or refused:
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
            number_only = (
                element.amount.bare
                and not element.amount.size
                and segment.opener not in ("(", "[", ")", "]", "-", ":")
                and not segment.depth
            )
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
    """A count and a weight said apart: the count stays, the weight is the total; a length is added."""
    if first is None:
        return second
    if second.across_mm is not None:
        return replace(first, across_mm=second.across_mm)
    if first.kind == "weight" and second.kind == "times":  # "150 g steaks x2"
        return replace(second, grams=(first.grams or 0.0) * (second.qty or 1.0), across_mm=first.across_mm)
    if first.grams is None and second.each and second.grams is not None:
        count = 1.0 if first.qty is None else first.qty
        unit = first.unit or "piece"
        return replace(first, qty=count, unit=unit, grams=count * second.grams, bare=False)
    if first.qty is None and first.unit is None:
        return replace(second, across_mm=first.across_mm)
    if first.kind == "holder" and second.bare:
        return replace(first, qty=second.qty, kind="container")
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
    _attach(segment)
    last.amount = last.amount or inner.amount
    if inner.state:
        last.add_state(inner.state)
    return True


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
    _attach(segment)
    last.named = common_name(last, inner, tokens, vocabulary) or last.named
    last.amount = inner.amount if last.amount is None else _joined(last.amount, inner.amount or last.amount)
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
        if after:
            turned = vocabulary.get([after[0].word, *foods[0].food.named.name.split()])
            if turned and after[0].word in vocabulary.food_words:
                foods[0].food.named = turned.foods[0]
                segment.elements.remove(after[0])


def _keys(food: Found, tokens: Sequence[Token]) -> list[str]:
    return [token.key for token in tokens[food.hit.start : food.hit.end]]


def _attach(segment: Segment) -> None:
    elements = segment.elements
    foods = [n for n, e in enumerate(elements) if e.food]
    amounts = [n for n, e in enumerate(elements) if e.amount]
    meant = [n for n, e in enumerate(elements) if e.amount and e.amount.kind not in ("holder", "length")]
    after = bool(meant) and foods[0] < meant[0] and (foods[-1] < meant[-1] or len(foods) == 1)
    for n in amounts:
        amount = elements[n].amount
        assert amount is not None
        previous = [f for f in foods if f < n]
        following = [f for f in foods if f > n]
        holder = amount.kind == "holder"
        close = previous and n - previous[-1] == 1 and not (following and following[0] - n == 1)
        if holder and previous and (not following or close):
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
        elif target == n - 1 and _is_part_of(food.amount, amount):
            food.amount = replace(amount, unit="piece", bare=False)
        elif target < n - 1 and amount.kind == "weight" and elements[n - 1].word in _OF_ONE:
            food.amount = _joined(food.amount, replace(amount, each=_is_count(food.amount)))
        else:
            food.amount = _joined(food.amount, amount)
    _attach_marks(elements, foods)


_OF_ONE = ("of", "at", "weighing")  # "6 sausages at 90 g", "4 fillets of 150 g"


def _is_count(amount: Amount | None) -> bool:
    """Whether it is a number of pieces, more than one."""
    return amount is not None and amount.kind != "weight" and amount.qty is not None and amount.qty > 1


def _is_part_of(said: Amount | None, part: Amount) -> bool:
    """ "A savoy cabbage half": the part said behind is what there is of it."""
    return said is not None and said.article and part.bare and part.qty is not None and part.qty < 1


def _each_of(segment: Segment, before: Amount | None) -> Amount | None:
    """The amount of "150 g each of beans, peas and corn", for as long as foods follow without one."""
    amounts = segment.of("amount")
    first = segment.elements[0].amount if segment.elements else None
    if first is not None and first.each and len(amounts) == 1:
        return replace(first, each=False)
    return before if not amounts and not segment.of("word") and not segment.depth else None


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

"""Which amount, state and cut belongs to which food of a segment.

With several foods the amounts stand either all before or all after their foods
("2 onions 3 carrots", "onions 2 carrots 3"); which it is shows at the ends of the segment.
"""

from __future__ import annotations

from dataclasses import replace

from knowledge.text.amounts import Amount
from knowledge.text.segments import Element, Found, Segment

_ONE_PIECE = frozenset(["joint", "bird", "carcass", "crown"])


def joined(first: Amount | None, second: Amount) -> Amount:
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


def put_mark(food: Found, mark: tuple[str, str]) -> None:
    kind, value = mark
    if kind == "state":
        food.add_state(value)
    elif food.cut is None:
        food.cut = value


def attach(segment: Segment) -> None:
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
        right_behind = bool(previous) and n - previous[-1] == 1
        times = amount.kind == "times" and amount.bare and right_behind  # "fish x2 broccoli"
        if times or (holder and previous and (not following or close)):
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
            food.amount = joined(food.amount, replace(amount, each=_is_count(food.amount)))
        else:
            food.amount = joined(food.amount, amount)
    _attach_marks(elements, foods)


_OF_ONE = ("of", "at", "weighing")  # "6 sausages at 90 g", "4 fillets of 150 g"


def _is_count(amount: Amount | None) -> bool:
    """Whether it is a number of pieces, more than one."""
    return amount is not None and amount.kind != "weight" and amount.qty is not None and amount.qty > 1


def _is_part_of(said: Amount | None, part: Amount) -> bool:
    """ "A savoy cabbage half": the part said behind is what there is of it."""
    return said is not None and said.article and part.bare and part.qty is not None and part.qty < 1


def each_of(segment: Segment, before: Amount | None) -> Amount | None:
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
            put_mark(food, element.mark)
        elif element.kind == "size":
            food.size = element.word
        elif food.amount is None:
            food.amount = Amount(1.0, "piece")

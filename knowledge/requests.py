"""From what was read to what is asked of the planner.

The only place where readings and requests meet: the reader knows nothing of
planning and the planner nothing of messages. A reading that amends the plan in
hand is laid over the request of that plan.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime, timedelta

from knowledge.foods.store import Store
from knowledge.planner.model import Have, Kitchen, Request
from knowledge.text.model import Item, Reading, ReadyBy

OUT_WARM = re.compile(
    r"\b(left|been|sat|standing|forgot(ten)?|stood)\b[^.;\n]{0,12}\b(out|counter|worktop|side)\b[^.;\n]{0,30}"
    r"\b(overnight|all day|since (this morning|last night|yesterday|lunch)|([3-9]|\d\d) ?h(ou)?rs?)\b",
    re.IGNORECASE,
)  # USDA FSIS: perishable food is thrown away after two hours at room temperature
STRIPS = re.compile(r"\bstrips?\b", re.IGNORECASE)  # bought cut for the pan
USUAL_EATERS = 2.0
PASSED = timedelta(hours=20)  # a clock time further ahead than this was meant earlier today


def request_of(
    reading: Reading,
    *,
    store: Store,
    kitchen: Kitchen,
    eaters: float | None = None,
    diets: tuple[str, ...] = (),
    excluded: tuple[str, ...] = (),
    now: datetime,
    base: Request | None = None,
) -> Request:
    """The request in a reading; `base` is the request it amends.

    Args:
        kitchen, eaters, diets, excluded: what holds for this cook beyond tonight.
        now: the cook's local time; a deadline is counted from it.
    """
    people = reading.people if reading.people is not None else eaters
    barred = _food_ids(reading.excluded, store)
    have = tuple(have_of(item) for item in reading.items if item.food_id is not None)
    fresh = Request(
        have=_joined(have),
        eaters=people if people is not None else USUAL_EATERS,
        eaters_said=people is not None,
        ready_in_s=seconds_until(reading.ready_by, now) if reading.ready_by else None,
        vessel=reading.vessel,
        not_vessels=reading.not_vessel,
        excluded=_unique((*excluded, *barred)),
        diets=_unique((*diets, *reading.diet)),
        wishes=_unique(reading.wishes),
        unknown=_unique(item.name for item in reading.items if item.food_id is None),
        kitchen=kitchen,
        spoiled=spoiled_in(reading),
    )
    return fresh if base is None else _laid_over(base, fresh, reading, barred)


def spoiled_in(reading: Reading) -> tuple[str, ...]:
    """Foods that the message says stood out warm for hours: the one named last before those words."""
    found = OUT_WARM.search(reading.text)
    if found is None:
        return ()
    text = reading.text.lower()
    before = [
        (text.find(item.phrase.lower()), item)
        for item in reading.items
        if item.food_id is not None and item.phrase and 0 <= text.find(item.phrase.lower()) < found.start()
    ]
    named = [item.food_id for _, item in sorted(before, key=lambda pair: pair[0])[-1:] if item.food_id]
    return tuple(named)


def have_of(item: Item) -> Have:
    """A read item as something at hand. `item.food_id` must be known."""
    if item.food_id is None:
        raise ValueError(f"{item.name!r} has no food id")
    return Have(
        food_id=item.food_id,
        grams=item.grams,
        qty=item.qty,
        unit=item.unit,
        size=item.size,
        state=item.state,
        cut=item.cut or ("strips" if STRIPS.search(item.phrase) else None),
        said=item.name,
    )


def seconds_until(ready_by: ReadyBy, now: datetime) -> float | None:
    """From `now` to the deadline [s]; negative when that time of day has passed; None when unreadable."""
    if ready_by.in_min is not None:
        return ready_by.in_min * 60.0
    if ready_by.clock is None:
        return None
    hour, _, minute = ready_by.clock.partition(":")
    if not (hour.isdecimal() and minute.isdecimal() and int(hour) < 24 and int(minute) < 60):
        return None
    then = now.replace(hour=int(hour), minute=int(minute), second=0, microsecond=0)
    if then < now:
        then += timedelta(days=1)
    ahead = then - now
    return (ahead - timedelta(days=1) if ahead > PASSED else ahead).total_seconds()


def _laid_over(base: Request, fresh: Request, reading: Reading, barred: tuple[str, ...]) -> Request:
    """What the amendment says replaces what was said before; the rest stands."""
    said = {have.food_id for have in fresh.have}
    have = (*(h for h in base.have if h.food_id not in said and h.food_id not in barred), *fresh.have)
    return replace(
        base,
        have=have,
        eaters=reading.people if reading.people is not None else base.eaters,
        eaters_said=base.eaters_said or reading.people is not None,
        ready_in_s=fresh.ready_in_s if reading.ready_by else base.ready_in_s,
        vessel=reading.vessel or (None if base.vessel in reading.not_vessel else base.vessel),
        not_vessels=tuple(
            v for v in _unique((*base.not_vessels, *reading.not_vessel)) if v != reading.vessel
        ),
        excluded=tuple(x for x in _unique((*base.excluded, *fresh.excluded)) if x not in said),
        diets=_unique((*base.diets, *fresh.diets)),
        wishes=_unique((*base.wishes, *fresh.wishes)),
        unknown=_unique((*base.unknown, *fresh.unknown)),
        kitchen=fresh.kitchen,
    )


def _joined(have: tuple[Have, ...]) -> tuple[Have, ...]:
    """One entry for a food in one state; amounts in the same terms are added up."""
    joined: dict[tuple[str, str | None], Have] = {}
    for one in have:
        key = one.food_id, one.state
        first = joined.get(key)
        if first is None:
            joined[key] = one
        elif first.grams is not None and one.grams is not None:
            joined[key] = replace(first, grams=first.grams + one.grams, qty=None, unit=None)
        elif first.qty is not None and one.qty is not None and first.unit == one.unit:
            joined[key] = replace(first, qty=first.qty + one.qty)
    return tuple(joined.values())


def _food_ids(names: Iterable[str], store: Store) -> tuple[str, ...]:
    """Names as food ids where they are foods; the others (food groups) as they are."""
    found = ((name, store.named(name)) for name in names)
    return tuple(food.id if food else name for name, food in found)


def _unique(values: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(values))

"""From what was read to what is asked of the planner.

The only place where readings and requests meet: the reader knows nothing of
planning and the planner nothing of messages. A reading that amends the plan in
hand is laid over the request of that plan.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime
from itertools import pairwise

from knowledge.foods.model import Food, Role
from knowledge.foods.store import Store
from knowledge.planner.model import Caution, Have, Kitchen, LeftOut, Request
from knowledge.text.allergens import allergens_told
from knowledge.text.model import Item, Reading, ReadyBy
from knowledge.text.normalise import flatten, key, singular
from knowledge.text.read import WARM_H
from knowledge.text.vocabulary import vocabulary
from knowledge.tonight import kitchen_of, vessel_of
from knowledge.unfit import alerts_in, spoilage_alert, spoilt_in, unfit_in
from knowledge.unsafe import refused_wishes
from knowledge.wished import settled

HOW_LONG = (
    "How long was the {food} out of the fridge? More than 2 hours in all (1 in the heat): throw it away; "
    "cooking does not make it safe."
)
SOAKED = re.compile(
    r"^[^,;.\n]{0,40}\b(?:soaked|soaking|put (?:them |it )?to soak|in soak|left to soak)\b|"
    r"\bsoaked\W+(\w+\W+){0,2}$",
    re.IGNORECASE,
)
IN_BRACKET = re.compile(r"^\s*[(\[]([^)\]\n]*)")  # "(dried, soaked overnight)" right behind the food
ASIDE = re.compile(
    r"\s*(?:\(|, |- )?(?:just |only |to go |for |is |are )?"
    r"(?:on the side|on top|to serve|serving|at the table|the table|to dip(?: in)?|dipping|alongside)\b",
    re.IGNORECASE,
)
NOT_SOAKED = re.compile(  # what was not done, or is yet to be: a bean half soaked is a bean half cooked
    r"\b(?:not|never|without|no|forgot\w*|needs?|should|must|have to|has to|got to|to be|will|gonna|going to|"
    r"yet to|cant|cannot|wont|\w+n.?t)\b[\w ']{0,24}soak|\bun-?soak|\bsoak\w*\W+(?:not|no|needed|required)\b",
    re.IGNORECASE,
)
STRIPS = re.compile(r"\bstrips?\b", re.IGNORECASE)  # bought cut for the pan
OF_UNIT = re.compile(r"^(ear|cob|head|bunch|clove|stalk|stick|fillet|piece)s? of ", re.IGNORECASE)
RICE_COOKER = re.compile(r"(?<!no )(?<!a )\brice[ -]?(?:cooker|maker)\b(?! (?:is |s )?broken)", re.IGNORECASE)
AND = "and"
WEIGHTS = frozenset({"g", "kg", "lb", "oz"})
TINS = frozenset({"tin", "can", "jar", "pouch", "carton"})  # words that are no part of a food's name
MEATS = frozenset({"beef", "pork", "lamb", "poultry", "game"})
USUAL_EATERS = 2.0
DAY_S = 24 * 3600.0
PASSED_S = 20 * 3600.0  # a clock time further ahead than this was meant earlier today


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
    known = [item for item in reading.items if item.food_id is not None]
    once = _weight_shared(
        _said_once(_mince_named(known, reading.text, store), reading.text, store), reading.text, store
    )
    have = tuple(
        replace(_soaked(have_of(item, store), item, reading, store), aside=_is_aside(item, reading.text))
        for item in once
    )
    merged = pairwise(known) if len(once) < len(known) else ()
    gaps = {between(one, next_one, reading.text) for one, next_one in merged}
    fresh = Request(
        have=_joined(have),
        eaters=people if people is not None else USUAL_EATERS,
        eaters_said=people is not None,
        ready_in_s=seconds_until(reading.ready_by, now) if reading.ready_by else None,
        vessel=vessel_of(reading),
        not_vessels=reading.not_vessel,
        excluded=_unique((*excluded, *barred)),
        allergies=_unique(
            (*allergens_of(reading.allergies, store), *allergens_told(flatten(reading.text).text))
        ),
        diets=_unique((*diets, *reading.diet)),
        wishes=_unique(reading.wishes),
        flavours=reading.flavours,
        unknown=_unique(
            i.phrase for i in reading.items if i.food_id is None and i.phrase.lower() not in gaps
        ),
        read_as=tuple(
            (i.phrase, store.food(i.food_id).name) for i in once if i.food_id is not None and not i.sure
        ),
        kitchen=kitchen_of(reading, kitchen, store=store),
        youngest=reading.youngest,
        spoiled=tuple(w.food_id for w in reading.out_warm if w.hours is not None and w.hours >= WARM_H),
        unfit=(
            *spoilt_in(reading, store=store),
            *unfit_in(reading.text, store=store),
            *_in_the_rice_cooker(once, reading.text, store),
        ),
        alerts=tuple(
            dict.fromkeys(
                (
                    *refused_wishes(reading, store=store),
                    *_warm_alerts(reading, store),
                    *_spoilage_alerts(reading, store),
                    *alerts_in(reading.text, store=store),
                )
            )
        ),
    )
    return fresh if base is None else _laid_over(base, fresh, reading, barred)


def _warm_alerts(reading: Reading, store: Store) -> Iterable[Caution]:
    """A line for each food of which it is not told how long it was in the warm."""
    for one in reading.out_warm:
        if one.hours is None:
            name = own_word(_phrase_of(one.name, reading), store.food(one.food_id), store)[0]
            yield Caution(text=HOW_LONG.format(food=name), source=str(store.source("A-FSIS-LEFT")))


def _spoilage_alerts(reading: Reading, store: Store) -> Iterable[Caution]:
    """A line, with its authority, for each food that is said to be off or of which the age is not told."""
    for one in reading.spoilt:
        food = store.food(one.food_id)
        yield spoilage_alert(one, food, own_word(_phrase_of(one.name, reading), food, store)[0], store=store)


def _phrase_of(name: str, reading: Reading) -> str:
    return next((item.phrase for item in reading.items if item.name == name), name)


def have_of(item: Item, store: Store) -> Have:
    """A read item as something at hand. `item.food_id` must be known."""
    if item.food_id is None:
        raise ValueError(f"{item.name!r} has no food id")
    food_id = item.food_id
    item = replace(item, state=item.state or store.state_named(food_id, item.phrase))
    dried = store.in_state(food_id, item.state) if item.state == "dried" else None
    fresh = store.food(food_id)
    if (
        dried is not None and dried.role is Role.SEASON and fresh.role is Role.COOK
    ):  # dried chiles are toasted
        item = replace(item, food_id=dried.id, state=None, phrase=_dried(item.phrase))
    said, several = own_word(item.phrase, store.food(item.food_id or ""), store)
    holder = next((w for w in key(item.phrase).split() if w in TINS), None)
    return Have(
        food_id=item.food_id or "",
        grams=item.grams,
        qty=item.qty,
        unit=item.unit or holder,
        size=item.size,
        state=item.state,
        cut=item.form or item.cut or ("strips" if STRIPS.search(item.phrase) else None),
        said=said,
        several=several and item.qty is None and item.grams is None,
        across_mm=item.across_mm,
        rough=item.rough,
    )


def _dried(phrase: str) -> str:
    return phrase if "dried" in phrase.lower().split() else f"dried {phrase}"


def own_word(phrase: str, food: Food, store: Store) -> tuple[str, bool]:
    """The cook's own word for one of a food, and whether it was said in the plural.

    The longest stretch of the phrase that is a name or a synonym of this very food, its last
    word in the singular; the food's own name when the words are the same, or misspelled.
    """
    phrase = OF_UNIT.sub("", phrase)
    spoken = [w for w in re.findall(r"[^\W_][\w'’-]*", phrase.lower()) if singular(w) not in TINS]
    several = bool(spoken) and singular(spoken[-1]) != spoken[-1]
    own = sorted(key(food.name).split())
    for length in range(len(spoken), 0, -1):
        for start in range(len(spoken) - length + 1):
            words = spoken[start : start + length]
            form = key(" ".join(words))
            if sorted(form.split()) == own:
                return food.name, several
            meant = {*store.names().get(form, ()), *vocabulary(store).meanings(form)}
            if food.id in meant and not (len(meant) > 1 and AND in form.split()):  # "oil and salt" are two
                return " ".join([*words[:-1], singular(words[-1])]), several
    return food.name, several


def allergens_of(names: Iterable[str], store: Store) -> tuple[str, ...]:
    """The allergen tokens behind foods that a cook is allergic to; too many rather than too few."""
    foods = [food for name in names if (food := store.named(name)) is not None]
    return _unique(token for food in foods for token in sorted(food.allergens))


def _soaked(have: Have, item: Item, reading: Reading, store: Store) -> Have:
    """Dry pulses that the message says were soaked."""
    if have.state not in (None, "dried", "raw") or store.food(have.food_id).group != "pulse":
        return have
    at = reading.text.lower().find(item.phrase.lower())
    if at < 0 or not item.phrase:
        return have
    before = re.split(r"[,;.\n]", reading.text[:at])[-1]
    rest = reading.text[at + len(item.phrase) :]
    bracket = IN_BRACKET.match(rest)
    after = bracket.group(1) if bracket else re.split(r"[,;.\n]", rest)[0]
    here = f"{before}{item.phrase} {after}"
    said = SOAKED.search(after.replace(",", " ")) or re.search(r"\bsoak(?:ed|ing)\b", before, re.IGNORECASE)
    alone = sum(i.food_id is not None and store.food(i.food_id).group == "pulse" for i in reading.items) == 1
    if NOT_SOAKED.search(here) or (alone and not said and NOT_SOAKED.search(reading.text)):
        return replace(have, state="dried")  # nobody soaks a tin
    return replace(have, state="soaked") if said else have


def _is_aside(item: Item, text: str) -> bool:
    """Whether the cook wants it beside the dish: "yoghurt on the side", "for on top"."""
    at = text.lower().find(item.phrase.lower()) if item.phrase else -1
    return at >= 0 and ASIDE.match(text, at + len(item.phrase)) is not None


def _mince_named(items: list[Item], text: str, store: Store) -> list[Item]:
    """ "Thawed the mince, 500 g beef": the animal with its weight is the mince that has none."""
    minces = [item for item in items if _is_any_mince(item, store)]
    meats = [item for item in items if _is_bare_meat(item, text, store)]
    if len(minces) != 1 or len(meats) != 1 or _animal(meats[0], store) not in MEATS:
        return items
    mince, meat = minces[0], meats[0]
    if items.index(meat) < items.index(mince):
        return items
    food = store.named(f"ground {meat.name}")
    if food is None:
        return items
    whole = replace(mince, name=food.name, food_id=food.id, qty=meat.qty, unit=meat.unit, grams=meat.grams)
    return [whole if i is mince else i for i in items if i is not meat]


def _is_bare_meat(item: Item, text: str, store: Store) -> bool:
    """A weight of "beef", with no word of what cut it is."""
    alone = re.search(rf"\b{re.escape(item.phrase)}\W*(?:[,;.&+(\n]|$| and\b| for\b)", text, re.IGNORECASE)
    said = item.cut is None and item.state in (None, "raw") and key(item.phrase) == item.name
    return said and bool(item.grams) and _is_general(item, store) and alone is not None


def _is_any_mince(item: Item, store: Store) -> bool:
    """Mince of which neither animal nor amount is said."""
    named = set(item.name.split()) & set(key(item.phrase).split())
    bare = item.qty is None and item.grams is None
    return bare and item.name.startswith("ground ") and bool(_animal(item, store)) and not named - {"ground"}


def _said_once(items: list[Item], text: str, store: Store) -> list[Item]:
    """Without the general names of what is named precisely beside it.

    "Chicken korma with 600 g chicken thigh" is one chicken, "beef roasting joint" one beef: a
    food without amount, state or cut goes when a food of the same animal has its name within
    its own, or stands right behind it. "Venison haunch steaks 2" are two pieces of venison.
    """
    kept: list[Item] = []
    taken: set[int] = set()
    for n, item in enumerate(items):
        if n in taken:
            continue
        bare = item.qty is None and item.grams is None and item.state is None and item.cut is None
        animal = _animal(item, store) if bare else ""
        if not animal:
            kept.append(item)
            continue
        words = set(item.name.split())
        others = [o for o in items if o is not item and _animal(o, store) == animal]
        if any(words < set(f"{o.name} {o.phrase.lower()}".split()) for o in others):
            continue
        after = items[n + 1] if n + 1 < len(items) else None
        if after is None or not _is_general(item, store) or between(item, after, text) is None:
            kept.append(item)
        elif _animal(after, store) == animal:
            continue
        elif store.food(after.food_id or "").group in MEATS and " " not in after.name:
            kept.append(replace(item, qty=after.qty, unit=after.unit, grams=after.grams, size=after.size))
            taken.add(n + 1)
        else:
            kept.append(item)
    return kept


def _weight_shared(items: list[Item], text: str, store: Store) -> list[Item]:
    """ "1.2 kg chicken thighs and drumsticks": one weight for both, half of it each."""
    out = list(items)
    for n, (one, other) in enumerate(pairwise(items)):
        bare = other.qty is None and other.grams is None and other.state is None
        weighed = one.grams is not None and one.unit in WEIGHTS
        joined = re.search(rf"{re.escape(one.phrase)} (?:and|&|\+) {re.escape(other.phrase)}", text)
        if bare and weighed and joined and one.grams and _animal(one, store) == _animal(other, store) != "":
            out[n], out[n + 1] = (replace(i, qty=None, unit=None, grams=one.grams / 2) for i in (one, other))
    return out


def _in_the_rice_cooker(items: Iterable[Item], text: str, store: Store) -> Iterable[LeftOut]:
    """Rice that has a cooker of its own stays out of the vessel."""
    if RICE_COOKER.search(text):
        for item in items:
            if item.food_id is not None and store.food(item.food_id).group == "rice":
                yield LeftOut(food=item.food_id, why="the rice cooker does it: serve it beside")


def between(first: Item, second: Item, text: str) -> str | None:
    """The words between two foods of one phrase ("haunch"); None when they stand apart."""
    flat = text.lower()
    begin = flat.find(first.phrase.lower()) + len(first.phrase)
    end = flat.find(second.phrase.lower(), begin)
    gap = flat[begin:end] if end >= begin else ","
    return gap.strip() if re.fullmatch(r"\s+(?:[^\W\d_]+\s+){0,1}", gap) and " and " not in gap else None


def _animal(item: Item, store: Store) -> str:
    return store.food(item.food_id or "").animal


def _is_general(item: Item, store: Store) -> bool:
    """Whether its name is only that of an animal: "beef", "chicken", "venison"."""
    food = store.food(item.food_id or "")
    return " " not in food.name and any(
        other.id != food.id and food.name in other.name.split() for other in store.foods() if other.animal
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
    of_day = 3600.0 * now.hour + 60.0 * now.minute + now.second + now.microsecond / 1e6
    ahead = (3600.0 * int(hour) + 60.0 * int(minute) - of_day) % DAY_S
    return ahead - DAY_S if ahead > PASSED_S else ahead


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
        allergies=_unique((*base.allergies, *fresh.allergies)),
        diets=_unique((*base.diets, *fresh.diets)),
        youngest=base.youngest if fresh.youngest is None else fresh.youngest,
        spoiled=_unique((*base.spoiled, *fresh.spoiled)),
        wishes=settled(base.wishes, fresh.wishes),
        flavours=fresh.flavours or base.flavours,
        unknown=_unique((*base.unknown, *fresh.unknown)),
        read_as=tuple(dict.fromkeys((*base.read_as, *fresh.read_as))),
        kitchen=_tonight(base.kitchen, fresh.kitchen),
        unfit=tuple(dict.fromkeys((*base.unfit, *fresh.unfit))),
        alerts=tuple(dict.fromkeys((*base.alerts, *fresh.alerts))),
    )


def _tonight(before: Kitchen, now: Kitchen) -> Kitchen:
    """The kitchen as it is now, without what was said to be missing tonight."""
    there = {vessel.id for vessel in before.vessels}
    left = tuple(vessel for vessel in now.vessels if vessel.id in there)
    gone = before.oven_max_degC == 0.0
    return replace(
        now,
        vessels=left or now.vessels,
        oven_max_degC=0.0 if gone else now.oven_max_degC,
        broiler=now.broiler and not gone,
    )


def _joined(have: tuple[Have, ...]) -> tuple[Have, ...]:
    """One entry for a food in one state; amounts in the same terms are added up."""
    joined: dict[tuple[str, str | None], Have] = {}
    for one in have:
        name = one.food_id, one.state
        first = joined.get(name)
        if first is None:
            joined[name] = one
        elif first.grams is not None and one.grams is not None:
            joined[name] = replace(first, grams=first.grams + one.grams, qty=None, unit=None)
        elif first.qty is not None and one.qty is not None and first.unit == one.unit:
            joined[name] = replace(first, qty=first.qty + one.qty)
    return tuple(joined.values())


def _food_ids(names: Iterable[str], store: Store) -> tuple[str, ...]:
    """Names as food ids where they are foods; the others (food groups) as they are."""
    found = ((name, store.named(name)) for name in names)
    return tuple(food.id if food else name for name, food in found)


def _unique(values: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(values))

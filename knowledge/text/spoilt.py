"""Food that has gone off, however it is said: "smells a bit", "use by was Monday", "rice from Sunday".

A sign belongs to the food it is said of: within its comma item the food before it, else the one right
behind it; where its item names none, the one said last. What each sign means for which food is in
`spoilage.csv`; the words for it are the cues of the topic "off".
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime

from knowledge.foods.model import Food
from knowledge.text.cues import cue, cues
from knowledge.text.dated import passed
from knowledge.text.fields import NUM, value
from knowledge.text.model import Context, Spoilt
from knowledge.text.normalise import FOOD
from knowledge.text.seen import Seen
from knowledge.text.vocabulary import Vocabulary, table
from knowledge.text.warm import MEATS, joined, perishes

_BOUND = re.compile(r"[,;!?\n()\[\]]|\.(?=\s|$)| - | but ")  # between the items of a list
_BEHIND = re.compile(rf" ?(?:\w+ ){{0,2}}{FOOD}")  # "slimy chicken", "past use by date prawns"
_POINTS = re.compile(r"\b(?:it|its|they|theyre|which)(?: \w+){0,3} $")  # back to the food said before
_LEAVES = frozenset({"tender leaf", "tough leaf", "salad", "mushroom"})
_HARD = frozenset({"root", "cabbage", "squash"})  # USDA FSIS: firm, so that mould stays near the surface
_DRY = frozenset({"dry", "canned", "room"})
_SPEAKS_OF = {"meat": MEATS, "mince": MEATS, "fish": {"fish"}, "seafood": {"fish", "shellfish"}}
_GRAINS = frozenset({"rice", "pasta", "noodle", "grain"})
_WEEKDAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
_AGE = re.compile(
    rf"\b(?:(?P<n>{NUM}|a|few|several) ?(?P<unit>day|week|month)s? (?:ago|old|back|in (?:the|my) fridge)|"
    rf"in (?:the|my) fridge (?:for )?(?:\w+ )?(?P<kept>{NUM}|a|few|several) ?"
    r"(?P<kept_unit>day|week|month)s?\b|"
    r"(?P<before>(?:the )?day before yesterday)|(?P<night>yesterdays?|last night)|"
    r"(?P<week>last week|weeks ago|days ago|last month)|"
    r"(?:(?P<last>last) |leftover |on |from |since |of |this |past )"
    r"(?P<day>(?:mon|tues?|wed(?:nes)?|thu(?:rs?)?|fri|sat(?:ur)?|sun)(?:day)?s?)\b(?! (?:week|dinner is)))"
)
_MADE = re.compile(r"\b(?:from|cooked|boiled|made|steamed|roasted|fried|old|leftovers?|left over)\b")
_KEPT = re.compile(r"\bfrom\b|\bold\b|\bin (?:the|my) fridge\b")
_NO_SIGNS = frozenset({"stem", "unless", "wanted", "frozen"})
_DATES = frozenset({"use by", "expired", "best"})
_DAYS = {"day": 1.0, "week": 7.0, "month": 30.0}
HARD_CHEESE_WATER_G = (
    45.0  # in 100 g: cheddar 37, mozzarella 50; between hard and soft, common practice, no source
)
SEVERAL = 3.0  # days, at least: "a few", "several", "days ago"


@dataclass(frozen=True, slots=True)
class _Known:
    """A food of the text where it stands."""

    name: str
    food: Food | None
    states: frozenset[str]
    said: str


def spoilt(seen: Seen, vocab: Vocabulary, context: Context, now: datetime | None) -> tuple[Spoilt, ...]:
    """The foods that are said to be off, too old, or past their date; the first sign counts."""
    foods = {place: _known(seen, n, vocab) for place, n in seen.where.items()}
    if not foods:
        return ()
    planned = [_planned(name, vocab) for name in context.foods]
    told: dict[str, tuple[str, bool, float | None]] = {}
    strange = [item.phrase.lower() for item in seen.unknown]
    for said, bounds, span in _signs(seen.masked, now):
        subject = seen.masked[bounds[0] : span[0]]
        if any(phrase in subject for phrase in strange) and not _names_food(seen, bounds):
            continue  # "berries with mould": said of something that is in no table, and not cooked
        for place in _meant(seen.masked, bounds, span, foods, said):
            eaten = not _applies(_rule(said), foods[place])
            from_frozen = eaten and said in _DATES and "frozen" in foods[place].states
            sign = "frozen" if from_frozen else said
            for name in _also(foods[place], [*foods.values(), *planned]):
                before = told.get(name)
                if before is None or (before[1] and not eaten):
                    told[name] = sign, eaten, None
    own = {food.hit.start for food in seen.found}
    for place, known in foods.items():
        if known.name not in told and seen.hits[seen.where[place]].start in own:
            item = _item_of(seen.masked, place).replace(FOOD, known.said)  # "day-old rice"
            told |= _of_age(known, item, now)
    ids = {known.name: known.food.id for known in [*planned, *foods.values()] if known.food is not None}
    return tuple(
        Spoilt(name=name, food_id=ids[name], sign=sign, eaten=eaten, days=days)
        for name, (sign, eaten, days) in told.items()
        if name in ids and (not eaten or spoilage(sign)["otherwise"])
    )


def _names_food(seen: Seen, bounds: tuple[int, int]) -> bool:
    return any(bounds[0] <= place < bounds[1] for place in seen.where)


def spoilage(sign: str) -> Mapping[str, str]:
    """What is said and done about a sign."""
    return next(row for row in table("spoilage.csv") if row["sign"] == sign)


def _rule(sign: str) -> str:
    return spoilage(sign)["applies"]


def _known(seen: Seen, n: int, vocab: Vocabulary) -> _Known:
    hit = seen.hits[n]
    # A food that another one took in ("fish (rohu)", "meatballs (raw beef, slimy)") is that one.
    read = [f for f in seen.found if f.hit.start <= hit.start][-1:]
    named = read[0].named if read else hit.phrase.foods[0]
    states = frozenset(f.state for f in read if f.state)
    said = " ".join(token.text for token in seen.tokens[hit.start : hit.end])
    return _Known(named.name, vocab.food(named), states, said)


def _planned(name: str, vocab: Vocabulary) -> _Known:
    """A food of the plan in hand, which "the chicken smells" may speak of."""
    meant = vocab.named(name)
    return _Known(name, vocab.food(meant), frozenset(), name)


def _signs(text: str, now: datetime | None) -> Iterator[tuple[str, tuple[int, int], tuple[int, int]]]:
    """Each sign of spoilage: its id, the item it stands in, and its own place."""
    for start, end in _items(text):
        item = text[start:end]
        if not cue("off", "stem").search(item):  # saves the time for the rest
            continue
        for sign, (first, last) in passed(item, now):
            yield sign, (start, end), (start + first, start + last)
        for sign, pattern in cues("off"):
            if sign in _NO_SIGNS:
                continue
            for match in pattern.finditer(item):
                said_before = item[: match.start()]
                if cue("off", "unless").search(said_before) and "nt smell" not in match.group():
                    continue
                if sign == "slime" and cue("off", "wanted").search(said_before):
                    continue
                yield sign, (start, end), (start + match.start(), start + match.end())
                break


def _items(text: str) -> Iterator[tuple[int, int]]:
    """Where the comma items of a text begin and end."""
    start = 0
    for bound in _BOUND.finditer(text):
        yield start, bound.start()
        start = bound.end()
    yield start, len(text)


def _item_of(text: str, place: int) -> str:
    """The comma item of a food, with a bracket that follows it; within a bracket, with what is before it."""
    spans = list(_items(text))
    n = next(n for n, (start, end) in enumerate(spans) if start <= place <= end)
    start, end = spans[n]
    if n and text[start - 1] in "([":
        start = spans[n - 1][0]
    elif n + 1 < len(spans) and text[end] in "([":
        end = spans[n + 1][1]
    return text[start:end]


def _meant(
    text: str, bounds: tuple[int, int], span: tuple[int, int], foods: Mapping[int, _Known], sign: str
) -> list[int]:
    """The foods, by their places, that a sign at `span` in the item `bounds` is said of."""
    places = sorted(foods)
    fits = [place for place in places if _applies(_rule(sign), foods[place])]
    before = [place for place in places if bounds[0] <= place < span[1]]
    if before:
        run = joined(text, before[::-1])
        return [place for place in run if place in fits] or run[:1]
    behind = [place for place in places if span[1] <= place < bounds[1]]
    earlier = [place for place in places if place < bounds[0]]
    points_back = bool(earlier) and bool(_POINTS.search(text[bounds[0] : span[0]]))
    if behind and not points_back and _BEHIND.match(text[span[1] : bounds[1]]):
        run = joined(text, behind)
        return [place for place in run if place in fits] or run[:1]
    if earlier:
        run = joined(text, earlier[::-1])
        last = [place for place in run if place in fits] or [p for p in earlier[::-1] if p in fits][:1]
        return last or run[:1]
    return [place for place in places if place > span[0] and place in fits][:1]


def _also(known: _Known, foods: Iterable[_Known]) -> Iterator[str]:
    """The food itself, and what it speaks of in general: "the fish smells, 400 g cod"."""
    yield known.name
    animals = _SPEAKS_OF.get(known.said, {known.food.animal} if known.food and known.food.animal else set())
    words = set(known.name.split())
    for other in foods:
        if other.name == known.name or other.food is None or other.food.animal not in animals:
            continue
        if known.said in _SPEAKS_OF or words < set(other.name.split()):
            yield other.name


def _applies(rule: str, known: _Known) -> bool:
    """Whether a food of that kind is thrown away for the sign; a food we do not know is."""
    food, states = known.food, known.states
    if food is None:
        return True
    stale = perishes(food, states) or food.animal == "egg"
    kept = "frozen" in states or "canned" in states or "dried" in states
    match rule:
        case "any":
            return True
        case "fresh":
            return not kept and (
                stale or food.start_state not in _DRY or bool(states & {"cooked", "leftover"})
            )
        case "meat":
            return not kept and food.animal in MEATS and perishes(food, states)
        case "perishable":
            return not kept and perishes(food, states)
        case "perishable or leaf":
            return stale or food.group in _LEAVES
        case "soft":
            return food.group not in _HARD and not _is_hard_cheese(food)
        case _:
            raise ValueError(f"spoilage.csv applies: no rule {rule!r}")


def _is_hard_cheese(food: Food) -> bool:
    """Dry enough that mould stays near the surface; one of unknown water counts as soft."""
    water = food.composition.water_g if food.composition is not None else 0.0
    return "cheese" in food.group and 0.0 < water <= HARD_CHEESE_WATER_G


def _of_age(known: _Known, item: str, now: datetime | None) -> dict[str, tuple[str, bool, float | None]]:
    """What was cooked, or kept, longer ago than it keeps; leftovers of no known day are asked about."""
    food, days = known.food, _age(item, now)
    if (
        food is None
        or food.cooked_days is None
        or "canned" in known.states
        or cue("off", "frozen").search(item)
    ):
        return {}
    cooked = food.group == "leftover" or bool(known.states & {"cooked", "leftover"})
    if days is None:
        asked = cooked and (food.group in ("leftover", "rice") or "leftover" in known.states)
        return {known.name: ("unknown age", True, None)} if asked else {}
    if cooked or (food.group in _GRAINS and _MADE.search(item)):
        return {known.name: ("old", False, days)} if days > food.cooked_days else {}
    kept = perishes(food, known.states | {None}) and _KEPT.search(item)
    return (
        {known.name: ("kept", False, days)}
        if kept and days > max(food.cooked_days, food.fridge_days or 0)
        else {}
    )


def _age(item: str, now: datetime | None) -> float | None:
    """How many days ago, at the least, something was cooked; None when it is not told."""
    match = _AGE.search(item)
    if match is None:
        return None
    if number := match["n"] or match["kept"]:
        count = {"a": 1.0, "few": SEVERAL, "several": SEVERAL}.get(number) or value(number)
        return count * _DAYS[match["unit"] or match["kept_unit"]]
    if match["before"]:
        return 2.0
    if match["night"]:
        return 1.0
    if match["week"]:
        return {"last month": 30.0, "last week": 7.0}.get(match["week"], SEVERAL)
    if now is None:
        return None
    ago = (now.weekday() - _WEEKDAYS.index(match["day"][:3])) % 7
    return float(ago or 7)

"""How amounts and times are said to a cook; numbers with a unit are written by `knowledge.units`."""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import TYPE_CHECKING

from knowledge.tables import rows
from knowledge.units import weight

if TYPE_CHECKING:
    from knowledge.planner.gathering.dinner import Dish


def minutes(seconds: float) -> int:
    """Whole minutes; to the nearest five beyond thirty."""
    exact = seconds / 60.0
    return int(round(exact / 5.0) * 5) if exact > 32 else max(1, round(exact))


def at_least(seconds: float) -> str:
    """A length of time that must not be cut short: rounded up to the minute."""
    return _spelled(math.ceil(seconds / 60.0 - 0.02))


def duration(seconds: float) -> str:
    """A length of time: "12 min", "1 h 30"."""
    return _spelled(minutes(seconds))


def _spelled(whole: int) -> str:
    if whole < 90:
        return f"{whole} min"
    hours, rest = divmod(whole, 60)
    return f"{hours} h {rest:02d}" if rest else f"{hours} h"


def handy(grams: float) -> float:
    """A guessed weight, to what a kitchen scale is read to: 5 g, 10 g, from 400 g 50 g."""
    step = 5 if grams < 100 else 10 if grams < 400 else 50
    return float(max(step, round(grams / step) * step))


def amount(dish: Dish, units: str) -> str:
    """How much of a dish: the weight that was said, or whole pieces where it comes in pieces."""
    last = dish.name.rsplit(" ", 1)[-1]
    if last in NEVER_ONE or (last in BLOCKS and not dish.unit):
        return f"{weight(dish.grams, units)} {plural(dish.name)}"
    if dish.weighed or dish.cut_said in ("ground", "diced", "strips", "chopped", "sliced"):
        return f"{weight(dish.grams, units)} {_mass(dish)}"
    if dish.piece_g and (dish.piece_g > 40 or dish.unit or dish.part == "aromatic"):
        count = dish.grams / dish.piece_g
        nameless = dish.food.animal not in ("", "fish") and plural(dish.name) == dish.name and not dish.unit
        if nameless and count > 1.2:
            return f"{weight(dish.grams, units)} {_mass(dish)}"  # nobody counts "6 stew beef"
        halves = dish.part != "protein" and not dish.unit  # nobody halves a fillet or an egg
        if halves and (abs(count - 0.25) < 0.06 or abs(count - 0.75) < 0.06):
            return f"{'a quarter' if count < 0.5 else 'three quarters'} of {_a(dish.name)}"
        tries = (round(count), round(count * 2) / 2) if count < MOST_HALVED else (round(count),)
        for whole in tries:
            if count >= MOST_HALVED and not dish.unit and dish.part != "protein" and not dish.weighed:
                return pieces(whole, dish)
            if whole >= 0.5 and abs(count - whole) < 0.12 and (halves or whole == int(whole)):
                return pieces(whole, dish)
    return f"{weight(dish.grams, units)} {_mass(dish)}"


MOST_HALVED = 3.3  # nobody counts out four and a half of anything


def pieces(number: float, dish: Dish) -> str:
    """So many of it: "2 carrots", "half a cauliflower", "2 cod fillets", "3 ears of corn"."""
    if dish.unit == "stalk" and dish.name.endswith(" stick"):
        return f"{counted(number)} {dish.name if number <= 1 else plural(dish.name)}"
    if dish.unit:
        one = number <= 1
        if dish.unit in AFTER_NAME:
            return f"{counted(number)} {dish.name} {dish.unit}{'' if one else 's'}"
        return f"{counted(number)} {dish.unit}{'' if one else 's'} of {dish.name}"
    if head := HEADS.get(dish.name.rsplit(" ", 1)[-1]):
        return (
            f"half {_a(head)} of {dish.name}"
            if number == 0.5
            else f"{counted(number)} {head}{'' if number <= 1 else 's'} of {dish.name}"
        )
    if number == 0.5:
        return f"half {_a(dish.name)}"
    return f"{counted(number)} {dish.name if number <= 1 else plural(dish.name)}"


NEVER_ONE = frozenset({"rib", "floret", "sprout", "shoot", "chip", "lardon"})  # of these nobody cooks one
BLOCKS = frozenset({"tofu", "tempeh", "seitan"})
HEADS = {"broccoli": "head", "lettuce": "head", "corn": "ear"}  # what one of it is called
AFTER_NAME = frozenset({"fillet", "steak"})


def _a(name: str) -> str:
    return f"{'an' if name[:1] in 'aeiou' else 'a'} {name}"


def _mass(dish: Dish) -> str:
    if dish.comes_in_pieces:
        return f"{dish.name} in pieces"
    return _plain_mass(dish)


def _plain_mass(dish: Dish) -> str:
    """Its name after a weight: "600 g potatoes", "700 g beef chuck" (one joint, or part of it)."""
    joint = dish.piece_g is not None and dish.piece_g > 450 and dish.grams < 1.5 * dish.piece_g
    return dish.name if joint else plural(dish.name)


def in_spoons(name: str) -> str:
    """What is measured by the spoon but counts by the piece: "1 tbsp capers", "1 tsp cumin seeds"."""
    return plural(name) if name.rsplit(" ", 1)[-1] in SMALL else name


SMALL = frozenset({
    "flake", "caper", "chive", "tortilla", "flatbread", "seed", "peanut", "almond",
    "cashew", "walnut", "hazelnut", "pistachio", "pecan", "peppercorn", "berry", "crumb",
    "nut",
})  # fmt: skip


def many(unit: str, number: float) -> str:
    """A unit for a number of them: "sprig", "leaves", "bunches"."""
    return unit if number <= 1 else plural(unit)


def of_these(number: float, name: str) -> str:
    """So many of a thing that goes by the piece: "2 bay leaves", "half a lemon", "1 and a half lemons"."""
    return (
        f"half {_a(name)}" if number == 0.5 else f"{counted(number)} {name if number <= 1 else plural(name)}"
    )


def counted(number: float) -> str:
    """A number of pieces: "2", "half", "1 and a half"."""
    whole, half = int(number), number % 1 > 0.25
    if not half:
        return str(whole)
    return f"{whole} and a half" if whole else "half"


def label(dish: Dish) -> str:
    """A dish as it is called in a step: "carrots", "chicken thigh" when there is one, "rice"."""
    one = dish.piece_g and (dish.piece_g > 40 or dish.part == "aromatic") and dish.grams < 1.3 * dish.piece_g
    if one and dish.name.rsplit(" ", 1)[-1] not in NEVER_ONE:
        return dish.name
    return plural(dish.name)


@lru_cache(maxsize=1)
def uncounted() -> frozenset[str]:
    """Names that have no plural in a kitchen, from `words_mass.csv`."""
    return frozenset(row["word"] for row in rows("words_mass"))


def plural(name: str) -> str:
    """The plural of a food's name, for a count of pieces: "carrots", "legs of lamb", "corn on the cob"."""
    for link in (" of ", " on ", " in "):
        if link in name:
            head, tail = name.split(link, 1)
            return f"{plural(head)}{link}{tail}"
    last = name.rsplit(" ", 1)[-1]
    if last in uncounted() or last.endswith(("s", "fish")) or name.startswith("ground "):
        return name
    if last.endswith(("ch", "sh", "x")) or last in ("potato", "tomato", "mango"):
        return f"{name}es"
    if last.endswith("y") and last[-2:-1] not in "aeiou":
        return f"{name[:-1]}ies"
    if last == "leaf":
        return f"{name[:-1]}ves"
    return f"{name}s"


def is_plural(name: str) -> bool:
    """Whether one says "bring" of it rather than "brings"."""
    last = name.rsplit(" ", 1)[-1]
    return last.endswith("s") and last not in uncounted()


def listed(names: Sequence[str]) -> str:
    """ "a", "a and b", "a, b and c"."""
    unique = list(dict.fromkeys(names))
    if len(unique) < 2:
        return "".join(unique)
    return f"{', '.join(unique[:-1])} and {unique[-1]}"

"""A dish in the words of a step: its name, its cut, how it is made ready, how hot it should be."""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.foods.model import When
from knowledge.planner import words
from knowledge.planner.draft import SOAKED, Draft, Placed

RINSED = frozenset({"white_rice", "lentil", "red_lentil", "bean", "chickpea", "pearl_grain", "split_pea"})


def seasoned(draft: Draft, *moments: When) -> list[str]:
    """Names of the seasonings that go in at these moments."""
    return [s.name for s in draft.dinner.seasonings if (s.food.when or When.END) in moments]


def names(placed: Sequence[Placed]) -> str:
    """The foods of some placed dishes, listed."""
    return words.listed([words.label(p.way.dish) for p in placed])


def cut_name(placed: Placed, units: str) -> str:
    """The cut in words, its size in the cook's units."""
    cut = placed.way.cut
    if units == "us" and cut.size_mm and "mm" in cut.name:
        return cut.name.replace(f"{cut.size_mm:g} mm", words.size(cut.size_mm, "us")).replace(
            f"{round(cut.size_mm - 0.1)} mm", words.size(cut.size_mm, "us")
        )
    return cut.name


def is_loose(placed: Placed) -> bool:
    """Whether it is grain, mince or crumbs: nothing to cut."""
    return placed.way.piece.shape == "grain"


def merged(parts: Sequence[str]) -> str:
    """Short sentences about preparing, those with the same verb said in one."""
    by_verb: dict[str, list[str]] = {}
    for part in parts:
        verb, _, rest = part.partition("|")
        by_verb.setdefault(verb, []).append(rest)
    said = [f"{verb} {words.listed(rest)}" if verb else "; ".join(rest) for verb, rest in by_verb.items()]
    return capital("; ".join(said))


def ready(placed: Placed, units: str) -> str:
    """How a dish is made ready, as "verb|what"."""
    way = placed.way
    dish = way.dish
    said = words.amount(dish, units)
    if dish.state == "canned":
        return f"drain|{said}" if dish.food.group != "fruit vegetable" else f"open|{said}"
    if way.lead == SOAKED:
        drained = ", 4 min, and drain" if dish.kind == "noodle" else " to a finger above it, 5 min under a plate"
        return f"cover|{said} with boiling water{drained}"
    if dish.kind in RINSED:
        return f"rinse|{said}"
    if dish.food.part == "starch" and dish.kind in ("pasta", "noodle", "whole_grain"):
        return f"measure|{said}"
    if is_loose(placed) and dish.part == "protein":
        return f"have ready|{said}"
    if is_loose(placed) and dish.part != "aromatic":
        return f"measure|{said}"
    if dish.cut_said or dish.state in ("frozen", "cooked", "leftover") or dish.kind == "egg":
        return f"have ready|{said}"
    if way.cut.id in ("whole", "whole leaf"):
        return f"pat dry|{said}" if dish.part == "protein" and dish.food.animal else f"wash|{said}"
    name = cut_name(placed, units)
    return (
        f"|{said}: {name}"
        if name.startswith(("cut", "halved", "quartered", "finely", "crumbled", "grated"))
        else (f"cut|{said} into {name}")
    )


def capital(text: str) -> str:
    """The text with a capital first letter."""
    return text[:1].upper() + text[1:]


def core_text(placed: Sequence[Placed], units: str) -> str:
    """ " (74 °C inside)", or nothing where no thermometer is needed."""
    cores = [p.way.core_degC for p in placed if p.way.core_degC]
    return f" ({words.temperature(max(cores), units)} inside)" if cores else ""


def targets(placed: Sequence[Placed], units: str) -> str:
    """ "chicken thigh: 74 °C; sausage: 71 °C"."""
    by_temp: dict[float, list[str]] = {}
    for p in placed:
        by_temp.setdefault(p.way.core_degC or 0.0, []).append(words.label(p.way.dish))
    return "; ".join(
        f"{words.listed(n)}: {words.temperature(t, units)}" for t, n in sorted(by_temp.items(), reverse=True)
    )

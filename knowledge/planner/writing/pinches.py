"""How much of a seasoning goes in, and how, from `pinches.csv`.

What the cook said wins. Otherwise it is what kitchens take for each eater or each kilo of
food: a start to taste from, not a rule.
"""

from __future__ import annotations

import math

from knowledge.foods.store import Store
from knowledge.planner import words
from knowledge.planner.draft import Draft
from knowledge.planner.gathering.dinner import Seasoning
from knowledge.planner.gathering.usual import Pinch, pinch
from knowledge.planner.techniques import doses
from knowledge.units import KITCHEN, spoons, volume, weight

MEASURED = frozenset({"ml", "tsp", "tbsp", "fl oz", "cup", "l", "pint"})
COUNTED = frozenset(
    {"bunch", "handful", "sprig", "stalk", "stick", "leaf", "pod", "slice", "cube", "pinch", "knob", "clove"}
)
OPENED = {"bruise": "bruised", "crush": "crushed", "pierce": "pierced"}  # so that they give their scent
HALVED = frozenset({"lemon", "lime", "orange"})  # what is used by the half
SPICED = frozenset({"curry", "dal"})  # styles
SAID_ML = 40.0  # less than that of a liquid is measured in spoons


def measured(seasoning: Seasoning, draft: Draft, units: str, store: Store) -> str:
    """The seasoning with its amount, as a step says it: "3 tbsp soy sauce", "a handful of parsley"."""
    p = pinch(seasoning, store)
    return (
        _as_said(seasoning, p, units)
        or _of_the_dish(seasoning, draft, units, store)
        or _as_usual(seasoning, p, draft, units)
    )


def _of_the_dish(s: Seasoning, draft: Draft, units: str, store: Store) -> str:
    """As much as the dish of tonight wants of it, by its eaters or its meat; "" where it says nothing."""
    dose = doses(store).get((draft.dinner.technique.id, s.food.id))
    if dose is None:
        return ""
    amount, unit, per = dose
    times = draft.dinner.eaters if per == "eater" else protein_kg(draft)
    return of_it(spoons(amount * times * KITCHEN[unit][1], units), words.in_spoons(s.name)) if times else ""


def _as_said(s: Seasoning, p: Pinch, units: str) -> str:
    """In the cook's own measure; "" when none was said, or only what it comes in (a jar)."""
    if s.qty is not None and s.unit in MEASURED:
        return of_it(spoons(s.qty * KITCHEN[s.unit][1], units), words.in_spoons(s.name))
    if s.qty is not None and s.unit in COUNTED:
        return _counted(s.qty, s.unit, s.name)
    if (
        s.qty is not None
        and s.unit in (None, "piece")
        and (p.how in OPENED or any(one.unit == "piece" for one in s.food.portions))
    ):
        pieces = _counted(s.qty, "", f"{OPENED[p.how]} {s.name}" if p.how in OPENED else s.name)
        is_poured = s.food.part == "liquid" or (s.food.part == "acid" and p.unit == "tbsp")
        return f"the juice of {pieces}" if s.is_fruit and is_poured else pieces
    if s.fruits:
        return f"the juice of {_counted(s.fruits, '', s.name)}"
    fluid = s.food.part == "liquid" or s.simmers or (s.food.group == "dairy" and s.food.part != "fat")
    if fluid and (s.grams or 0.0) >= SAID_ML:
        return f"{volume(s.grams or 0.0, units)} {s.name}"
    if s.grams is not None and s.qty is None and s.unit is None:
        return f"{weight(s.grams, units)} {s.name}"
    return ""


def _as_usual(s: Seasoning, p: Pinch, draft: Draft, units: str) -> str:
    if p.amount is None:
        return s.name
    times = {"eater": draft.dinner.eaters, "kg": food_kg(draft)}.get(p.per, 1.0)
    amount = min(p.amount * times, p.most)
    style = draft.dinner.style
    if p.curry is not None and style is not None and style.id in SPICED:
        return of_it(
            spoons(p.curry * draft.dinner.eaters * KITCHEN["tsp"][1], units), words.in_spoons(s.name)
        )
    if p.unit in ("tsp", "tbsp", "ml"):
        ml = amount * KITCHEN[p.unit][1]
        said = spoons(ml, units)
        return of_it(said, words.in_spoons(s.name))
    if p.unit == "g":
        return f"{weight(max(5.0, round(amount / 5) * 5), units)} {s.name}"
    done = f"{OPENED[p.how]} " if p.how in OPENED else ""
    return _counted(amount, f"{done}{p.unit}", s.name) if p.unit else _counted(amount, "", f"{done}{s.name}")


def _counted(number: float, unit: str, name: str) -> str:
    """Whole ones, or halves of what is halved: "2 bay leaves", "half a lemon", "3 sprigs of thyme"."""
    whole = float(max(1, math.ceil(number - 0.05)))
    if not unit:
        exact = 0.5 if name.rsplit(" ", 1)[-1] in HALVED and number < 0.75 else whole
        return words.of_these(exact, name)
    if unit == "handful" and whole == 1:
        return f"a handful of {name}"
    if unit == "pinch":
        return f"a pinch of {words.in_spoons(name)}"
    half = number == 0.5 and unit in ("bunch", "stick", "stalk")
    return f"half a {unit} of {name}" if half else f"{whole:g} {words.many(unit, whole)} of {name}"


def salt(grams: float, units: str) -> str:
    """Salt for so much food [g]: half a teaspoon for a pound (3 g in 500 g), a start to taste from."""
    return of_it(spoons(max(grams, 150.0) / 500.0 * 0.5 * KITCHEN["tsp"][1], units), "salt")


def of_it(measure: str, name: str) -> str:
    """A measure of something: "1 tsp salt", "a pinch of salt"."""
    return f"{measure}{' of' if measure.startswith('a ') else ''} {name}"


def protein_kg(draft: Draft) -> float:
    """What is eaten of the meat, fish, pulses and tofu, as bought but trimmed [kg]."""
    protein = (p.way.dish for p in draft.placed if p.way.dish.part == "protein")
    return sum(d.grams * d.food.edible_frac for d in protein) / 1000.0


def food_kg(draft: Draft) -> float:
    """What is eaten of all that cooks, as bought but trimmed [kg]."""
    return sum(p.way.dish.grams * p.way.dish.food.edible_frac for p in draft.placed) / 1000.0

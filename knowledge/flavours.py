"""Directions of flavour for what a cook has, from `flavours.csv`.

A family is aromatics, spices, an acid and a finish that go well together, as food ids.
Of what a family names, what the diet or an allergy bars is left out; a family from which
too much is left out is not offered.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from knowledge import diets as diet_rules
from knowledge.foods.store import Store

LAYERS = ("aromatics", "spices", "acids", "finish")
# Weights: a food at hand that a family names; an aromatic, which most name; a main food that it suits.
HAVE, COMMON, SUITS = 1.0, 0.5, 0.8
LEAST_LEFT = 0.6  # share of a family that must be allowed


@dataclass(frozen=True, slots=True, kw_only=True)
class Family:
    """One direction: food ids in the order in which they go in, and how well it suits what is there."""

    id: str
    name: str
    aromatics: tuple[str, ...]
    spices: tuple[str, ...]
    acids: tuple[str, ...]
    finish: tuple[str, ...]
    have: tuple[str, ...]  # those of them that are at hand
    score: float
    source: str

    @property
    def tellers(self) -> tuple[str, ...]:
        """The few foods that tell the direction."""
        return (*self.aromatics[:2], *self.spices[:2], *self.acids[:1], *self.finish[:2])


def families_for(
    food_ids: Sequence[str], *, diets: Collection[str] = (), excluded: Collection[str] = (), store: Store
) -> tuple[Family, ...]:
    """Families that suit the foods at hand, by what of them they name and the kinds they go with; best first.

    `diets` are diet tokens, `excluded` food ids or allergen and group names; ids that are
    not in the tables are ignored. Ties keep the order of the table.
    """
    at_hand = frozenset(food_ids)
    rules = [*diets, *(f"no {name}" for name in excluded)]
    families = [
        family
        for row in store.table("flavours")
        if (family := _family(dict(row), at_hand, rules, frozenset(excluded), store)) is not None
    ]
    return tuple(sorted(families, key=lambda family: -family.score))


def _family(
    row: dict[str, str], at_hand: frozenset[str], rules: list[str], excluded: frozenset[str], store: Store
) -> Family | None:
    known = frozenset(store.food_ids())
    layers: dict[str, tuple[str, ...]] = {}
    named = left = 0
    for layer in LAYERS:
        ids = [food_id for food_id in row[layer].split(";") if food_id in known]
        allowed = [
            food_id
            for food_id in ids
            if food_id not in excluded and not diet_rules.barred_by(store.food(food_id), rules)
        ]
        named, left = named + len(ids), left + len(allowed)
        layers[layer] = tuple(allowed)
    if not named or left < LEAST_LEFT * named or not (layers["aromatics"] or layers["spices"]):
        return None
    have = tuple(food_id for layer in LAYERS for food_id in layers[layer] if food_id in at_hand)
    telling = sum(COMMON if food_id in layers["aromatics"] else HAVE for food_id in have)
    suits = frozenset(row["suits"].split(";"))
    mains = [store.food(food_id) for food_id in at_hand & known if food_id not in have]
    telling += SUITS * sum(bool({food.animal, food.group} & suits) for food in mains)
    return Family(
        id=row["id"],
        name=row["name"],
        aromatics=layers["aromatics"],
        spices=layers["spices"],
        acids=layers["acids"],
        finish=layers["finish"],
        have=have,
        score=(telling + left / named) / (1 + 0.1 * left),
        source=row["source"],
    )

"""What a swap changes at the table, from `tastes.csv` and the composition: sweeter, softer, saltier."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from knowledge import tables
from knowledge.foods.model import Food

MORE_LESS = {
    "sweet": ("sweeter", "less sweet"),
    "bitter": ("more bitter", "less bitter"),
    "sharp": ("sharper", "less sharp"),
    "earthy": ("earthier", "less earthy"),
    "peppery": ("more peppery", "less peppery"),
    "starchy": ("starchier", "lighter"),
    "soft": ("softer", "firmer"),
    "chewy": ("chewier", "less chewy"),
    "nutty": ("nuttier", "less nutty"),
    "smoky": ("smokier", "less smoky"),
    "savoury": ("more savoury", "less savoury"),
    "mild": ("milder", "stronger in taste"),
    "strong": ("stronger in taste", "milder"),
    "salty": ("saltier", "less salty"),
    "rich": ("richer", "leaner"),
}
SALTY_G, RICH_G = 0.6, 8.0  # per 100 g, for one level more
MOST_SAID = 2  # in one clause
CLEARLY = 2  # levels from which it is more than a little


def at_the_table(old: Food, new: Food) -> str:
    """What the eaters will notice ("a little sweeter, softer"); empty when it is nothing."""
    was, now = levels(old), levels(new)
    steps = {t: now.get(t, 0.0) - was.get(t, 0.0) for t in MORE_LESS}
    noticed = sorted((t for t in steps if abs(steps[t]) >= 1), key=lambda t: -abs(steps[t]))
    said = list(dict.fromkeys(MORE_LESS[t][steps[t] < 0] for t in noticed))[:MOST_SAID]
    if not said:
        return ""
    little = "" if abs(steps[noticed[0]]) >= CLEARLY else "a little "
    return f"{little}{' and '.join(said)}"


def levels(food: Food) -> Mapping[str, float]:
    """How sweet, bitter, soft ... a food is when cooked: 0 not at all, 3 very; what is said of it goes
    before what is said of its group."""
    table = _levels()
    found = {
        **table.get(("group", food.group), {}),
        **table.get(("food", food.id), {}),
        "salty": (food.salt_g or 0.0) / SALTY_G,
        "rich": (food.composition.fat_g if food.composition else 0.0) / RICH_G,
    }
    return {taste: min(level, 3.0) for taste, level in found.items()}


@lru_cache(maxsize=1)
def _levels() -> Mapping[tuple[str, str], Mapping[str, float]]:
    found: dict[tuple[str, str], dict[str, float]] = {}
    for row in tables.rows("tastes"):
        found.setdefault((row["by"], row["value"]), {})[row["taste"]] = float(row["level"])
    return found

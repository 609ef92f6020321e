"""Fit the parameters of media, classes and foods to published cooking times.

    python -m tests.benchmarks.fit_times              fit on all rows, print the tables' new figures
    python -m tests.benchmarks.fit_times --write      ... and write them into knowledge/data
    python -m tests.benchmarks.fit_times --cross      leave one source out at a time, print the mean error

Every parameter is a multiplier that is held to 1 by a prior of its own width, so that what the
tables cannot tell stays physical. Each source may be padded or bold as a whole (its own offset,
sd 0.05); rows derived from minutes per pound count half. Never touched: conductivity, density,
heat capacity, altitude, kill, z.
"""

from __future__ import annotations

import csv
import math
import sys
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from pathlib import Path

import numpy as np
from scipy.optimize import least_squares

from knowledge.foods.model import DoneKind, Food
from knowledge.foods.store import Store, open_store
from knowledge.physics import chart, cook, doneness, tables
from knowledge.physics.chart import read_row
from knowledge.physics.chart_names import resolve

DATA = Path(__file__).parents[1] / "data" / "cook_times_dev.csv"
KNOWLEDGE = Path(tables.__file__).parents[1] / "data"
Parameters = dict[str, float]
FITTED = "FIT-TIMES"

MEDIA = {
    "oven_still_h_W_m2K": 0.2, "exposure_piled": 0.2, "exposure_spaced": 0.08, "oven_vapour_Pa": 0.15,
    "wetness_cut": 0.3, "wetness_meat": 0.3, "wetness_skin": 0.3, "crust_m4K_W_kg": 0.2,
    "broiler_side_frac": 0.3, "joint_by_mass": 0.3, "rolled_size": 0.1, "pan_h_W_m2K": 0.3,
    "gentle_h_W_m2K": 0.3, "lively_h_W_m2K": 0.2, "covered_dish_h_W_m2K": 0.3, "covered_dish_come_up_s": 0.3,
    "covered_oven_come_up_s": 0.3, "pressure_come_up_s": 0.3, "oven_come_up_s": 0.4, "open_pan_h_W_m2K": 0.3,
}  # fmt: skip
SHARED = {
    "crisp_factor": 0.3,
    "crisp_dense": 0.3,
    "soft_factor": 0.3,
    "frozen_factor": 0.3,
    "dry_factor": 0.2,
}
DENSE = ("starchy", "hard_veg", "root")  # nobody wants them crisp: their crisp-tender is nearly tender
ROAST = {"starchy": 0.4, "root": 0.3, "medium_veg": 0.3, "quick_veg": 0.3, "other": 0.3}
BOOKS = {  # minutes at a boil as cookery books have them (from memory): where a fit that starts afresh begins
    "bean": 60, "chickpea": 75, "firm_fruit": 6, "hard_veg": 25, "hominy": 120, "lentil": 25, "medium_veg": 8,
    "noodle": 4, "pasta": 9, "pearl_grain": 25, "quick_veg": 5, "red_lentil": 8, "root": 10, "shell_bean": 20,
    "small_grain": 12, "soft_fruit": 3, "split_pea": 35, "starchy": 8, "stewing_fowl": 80, "tender_leaf": 6,
    "tough_beef": 80, "tough_lamb": 50, "tough_leaf": 12, "tough_pork": 60, "tough_poultry": 12,
    "white_rice": 17, "whole_grain": 60,
}  # fmt: skip
OWN_BOOKS = {  # the same for foods unlike most of their class: what their own factors are held to
    "amaranth": 20, "barley": 40, "beet-greens": 5, "brown-lentil": 25, "bulgur": 12, "buckwheat": 15,
    "carrot": 10, "cassava": 25, "celery-root": 15, "corn": 4, "dried-pea": 45, "farro": 25, "leek": 8,
    "hulled-barley": 75, "lima-bean": 60, "millet": 20, "oat-groat": 22, "parboiled-rice": 20, "pea": 4,
    "polenta": 12,
    "potato": 10, "quinoa": 14, "rutabaga": 14, "rye-berry": 75, "soybean": 90, "sweet-potato": 10,
    "swiss-chard": 7, "tomato": 3, "triticale": 60, "turnip": 9, "wheat-berry": 60, "wild-rice": 50,
}  # fmt: skip
PRACTICE = [  # common practice, no source: fitted with, never scored
    {"food": food, "cut_text": cut, "shape": shape, "size_mm": mm, "method": method, "medium_temp_c": degC,
     "endpoint_kind": core if core in ("tender", "soft") else "core_temp",
     "core_temp_c": "" if core in ("tender", "soft") else core, "time_min_lo": lo, "time_min_hi": hi,
     "source_title": "practice", "source_org": "practice", "note": "practice"}
    for food, cut, shape, mm, method, degC, core, lo, hi in (
        ("chicken breast", "cubes", "cuboid", "38", "roast", "260", "73.9", "18", "22"),
        ("chicken breast", "cubes", "cuboid", "38", "roast", "220", "73.9", "20", "25"),
        ("beef sirloin", "cubes", "cuboid", "30", "roast", "260", "62.8", "10", "16"),
        ("cod", "fillet", "", "19", "broil", "320", "62.8", "7", "9"),
        ("cod", "fillet", "", "25", "broil", "290", "62.8", "10", "12"),
        ("chicken thigh", "boneless", "slab", "25", "roast", "190", "73.9", "30", "35"),
        ("broccoli", "florets", "", "38", "roast", "260", "tender", "19", "22"),
        ("cauliflower", "florets", "", "38", "roast", "190", "tender", "30", "35"),
        ("carrot", "dice", "cuboid", "12.5", "roast", "260", "tender", "20", "22"),
        ("carrot", "dice", "cuboid", "12.5", "roast", "190", "tender", "30", "35"),
        ("cauliflower", "whole head", "sphere", "140", "roast", "200", "tender", "55", "80"),
        ("cauliflower", "florets", "", "38", "steam", "", "tender", "6", "10"),
        ("broccoli", "florets", "", "38", "steam", "", "tender", "5", "8"),
        ("broccoli", "florets", "", "35", "boil", "", "tender", "4", "7"),
        ("green beans", "", "", "", "boil", "", "tender", "6", "10"),
        ("carrot", "dice", "cuboid", "12", "boil", "", "tender", "8", "10"),
        ("carrot", "sticks", "cuboid", "13", "roast", "200", "tender", "25", "35"),
        ("parsnip", "sticks", "cuboid", "15", "roast", "200", "tender", "25", "35"),
        ("beet", "wedges", "cuboid", "25", "roast", "200", "tender", "35", "45"),
        ("bell pepper", "strips", "slab", "8", "roast", "220", "tender", "15", "22"),
        ("zucchini", "slices", "slab", "12", "roast", "220", "tender", "15", "22"),
        ("butternut squash", "halves", "slab", "45", "roast", "200", "tender", "50", "65"),
        ("cod", "fillet", "slab", "25", "simmer", "95", "62.8", "8", "12"),
        ("carrot", "dice", "cuboid", "20", "simmer", "", "tender", "12", "16"),
        ("potato", "cubes", "cuboid", "25", "simmer", "", "tender", "12", "17"),
        ("red lentils", "", "", "", "simmer", "", "tender", "10", "15"),
        ("chickpeas", "soaked", "", "", "simmer", "", "tender", "60", "80"),
        ("sweet potato", "chunks", "cuboid", "25", "roast", "220", "tender", "25", "32"),
        ("beef steak", "", "slab", "25", "saute", "200", "57", "7", "10"),
        ("beef steak", "", "slab", "38", "saute", "200", "57", "12", "16"),
        ("pork chop", "", "slab", "25", "saute", "180", "63", "9", "13"),
        ("beef steak", "", "slab", "38", "roast", "220", "57", "15", "20"),
    )
]  # fmt: skip
CLASS_SD, PAN_SD, BROWN_SD, FOOD_SD = 0.5, 0.3, 0.3, 0.5
WEIGHTS = {"practice": 2.0}
SOURCE_SD, ROW_SD = 0.05, 0.25
DOSED = [r["id"] for r in tables.rows("doneness") if r["dose_min"]]
FACTORS_COVER = 0.05  # a food whose factor is nearer to 1 than this keeps the class's dose


def rows() -> list[dict[str, str]]:
    """The published table, historic books left out."""
    with DATA.open(encoding="utf-8", newline="") as file:
        return [r for r in csv.DictReader(file) if "historic" not in r["note"]]


class Model:
    """The model with its parameters loose."""

    def __init__(self, store: Store) -> None:
        self.store = store
        self.media = dict(tables.constants())
        self.classes = {d: store.doneness(d) for d in (r["id"] for r in tables.rows("doneness"))}
        self.extras = {d: doneness.extra(d) for d in self.classes}
        self.foods: dict[str, float] = {}
        self.loose = {r["food_id"] for r in _factors() if r["source"] == FITTED}
        self.practice = {r["food_id"] for r in _factors() if r["source"] != FITTED and r["dose_factor"]}
        self.resolved = lru_cache(None)(resolve)
        self.extra = dict(self.extras)
        chart.resolve = self._resolve  # type: ignore[attr-defined, assignment]
        doneness.extra = lambda class_id: self.extra[class_id]  # type: ignore[assignment]

    def _resolve(self, *args: object) -> object:
        food, note = self.resolved(*args)
        return replace(food, dose_factor=self.factor(food)), note

    def factor(self, food: Food) -> float:
        """A food's factor on its class; common practice is a dose, and stays when its class moves."""
        if food.id in self.practice:
            base, now = self.classes[food.doneness].dose_min, self.store.doneness(food.doneness).dose_min
            return food.dose_factor * (base or 1.0) / (now or 1.0)
        return self.foods.get(food.id, food.dose_factor)

    def usual(self, food_id: str) -> float:
        """The factor that cookery books give a food on its class, before any row is seen."""
        class_id = self.store.food(food_id).doneness
        return OWN_BOOKS.get(food_id, BOOKS.get(class_id, 1.0)) / BOOKS.get(class_id, 1.0)

    def names(self) -> list[tuple[str, float]]:
        """Parameters with the widths of their priors."""
        return (
            [(f"media:{k}", sd) for k, sd in MEDIA.items()]
            + [(f"class:{c}", CLASS_SD) for c in DOSED]
            + [(f"shared:{k}", sd) for k, sd in SHARED.items()]
            + [(f"roast:{k}", sd) for k, sd in ROAST.items()]
            + [
                ("pan:leaf", PAN_SD),
                ("pan:piece", PAN_SD),
                ("brown:poultry", BROWN_SD),
                ("brown:sausage", BROWN_SD),
            ]
        )

    def put(self, x: Parameters) -> None:
        """Set the parameters; each is a multiplier on the tables' present figure."""
        for name, value in self.media.items():
            tables.constants()[name] = value * x.get(f"media:{name}", 1.0)
        shared = {k: x.get(f"shared:{k}", 1.0) for k in SHARED}
        for name, d in self.classes.items():
            roast = x.get(f"roast:{name if name in ROAST else 'other'}", 1.0)
            self.store._classes[name] = replace(
                d,
                dose_min=d.dose_min and d.dose_min * x.get(f"class:{name}", 1.0),
                crisp_factor=d.crisp_factor
                and d.crisp_factor * shared["crisp_dense" if name in DENSE else "crisp_factor"],
                soft_factor=d.soft_factor
                and d.soft_factor * (1.0 if d.kind is DoneKind.COLLAGEN else shared["soft_factor"]),
                roast_factor=d.roast_factor and d.roast_factor * roast,
            )
            e = self.extras[name]
            warm = x.get("brown:poultry" if "poultry" in name else "brown:sausage", 1.0)
            self.extra[name] = replace(
                e,
                frozen=e.frozen * shared["frozen_factor"] if e.frozen != 1.0 else 1.0,
                dried=e.dried * shared["dry_factor"] if e.dried != 1.0 else 1.0,
                pan=e.pan * x.get("pan:leaf" if "leaf" in name else "pan:piece", 1.0)
                if e.pan != 1.0
                else 1.0,
                brown_degC=(60.0 + (e.brown_degC - 60.0) * warm) if e.brown_degC else 0.0,
            )

    def log_times(self, chosen: Sequence[Mapping[str, str]]) -> tuple[np.ndarray, list[str]]:
        """Log minutes, and the food of each row whose own dose decides ("" elsewhere)."""
        reads = [read_row(_row(r), self.store) for r in chosen]
        out = []
        for read, outcome in zip(reads, cook([r.case for r in reads]), strict=True):
            done = outcome.done_s if outcome.done_s is not None else 6 * 3600.0
            out.append(math.log(max(done - read.not_counted_s, 30.0) / 60.0))
        own = [
            r.food.id if r.case.goal.dose_min is not None and r.doneness.id == r.food.doneness else ""
            for r in reads
        ]
        return np.array(out), own


def _row(line: Mapping[str, str]) -> chart.Row:
    from bot.commands.times import row_of

    return row_of(line)


def published(chosen: Sequence[Mapping[str, str]]) -> np.ndarray:
    """Log of the geometric middle of each published range."""
    return np.array([0.5 * math.log(float(r["time_min_lo"]) * float(r["time_min_hi"])) for r in chosen])


def _groups(chosen: Sequence[Mapping[str, str]]) -> list[np.ndarray]:
    by = defaultdict(list)
    for i, r in enumerate(chosen):
        by[r["source_title"], r["source_org"]].append(i)
    return [np.array(v) for (title, _), v in by.items() if title != "practice"]


def _factors() -> list[dict[str, str]]:
    """The rows of `food_factors.csv`; those not fitted are common practice and stay."""
    with (KNOWLEDGE / "food_factors.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def fit(
    model: Model, chosen: Sequence[Mapping[str, str]], *, rounds: int = 3, afresh: bool = False
) -> Parameters:
    """The parameters, and `model.foods` with the foods' own factors.

    Afresh: classes and foods begin at what cookery books say, so that nothing
    that an earlier fit learned from rows left out comes back by way of the tables.
    """
    chosen = [*chosen, *PRACTICE]
    names = model.names()
    width = np.array([sd for _, sd in names])
    y = published(chosen)
    weight = np.array([WEIGHTS.get(r["note"], 0.7 if "derived" in r["note"] else 1.0) for r in chosen])
    groups = _groups(chosen)
    model.foods = {f: model.usual(f) for f in model.loose} if afresh else {}
    middle = np.zeros(len(names))
    if afresh:
        begin = {f"class:{c}": math.log(BOOKS[c] / (model.classes[c].dose_min or 1.0)) for c in DOSED}
        middle = np.array([begin.get(n, 0.0) for n, _ in names])
    x = middle.copy()
    for turn in range(rounds):

        def residual(p: np.ndarray) -> np.ndarray:
            model.put({n: math.exp(v) for (n, _), v in zip(names, p, strict=True)})
            r = model.log_times(chosen)[0] - y
            for g in groups:
                r[g] -= r[g].sum() / (g.size + (ROW_SD / SOURCE_SD) ** 2)
            r = np.sign(r) * np.sqrt(
                2.0 * 0.36 * (np.sqrt(1.0 + r * r / 0.36) - 1.0)
            )  # long tails count less
            return np.concatenate([weight * r / ROW_SD, (p - middle) / width])

        x = least_squares(residual, x, diff_step=0.03, max_nfev=5 if turn == 0 else 4).x
        found = {n: math.exp(v) for (n, _), v in zip(names, x, strict=True)}
        model.put(found)
        _fit_foods(model, chosen, y, groups, weight)
        _centre_classes(model, found)
        model.put(found)
        x = np.array([math.log(found[n]) for n, _ in names])
    return found


def _centre_classes(model: Model, found: Parameters) -> None:
    """What most foods of a class have in common belongs to the class: foods not in the table have it too.

    Moves the mean of the foods' own factors into the class's dose, the class counting as one more at 1.
    """
    for c in DOSED:
        if model.classes[c].kind is DoneKind.COLLAGEN:
            continue  # cuts, not foods: what their names have in common is the animal only
        own = [f for f in model.foods if model.store.food(f).doneness == c]
        common = sum(math.log(model.foods[f] / model.usual(f)) for f in own) / (len(own) + 1)
        found[f"class:{c}"] *= math.exp(common)
        for f in own:
            model.foods[f] *= math.exp(-common)


def _fit_foods(
    model: Model,
    chosen: Sequence[Mapping[str, str]],
    y: np.ndarray,
    groups: list[np.ndarray],
    weight: np.ndarray,
) -> None:
    """Dose factors of foods, shrunk toward what is usual: their rows' mean error over its own elasticity."""
    for _ in range(4):
        now, foods = model.log_times(chosen)
        r = now - y
        for g in groups:
            r[g] -= r[g].sum() / (g.size + (ROW_SD / SOURCE_SD) ** 2)
        for f in sorted(set(foods) & model.loose):
            i = [k for k, g in enumerate(foods) if g == f]
            have = math.log(model.foods.get(f, model.store.food(f).dose_factor) / model.usual(f))
            step = -np.sum(weight[i] * np.clip(r[i], -0.8, 0.8)) * 0.75
            own = (have * len(i) * 0.75 + step) / (len(i) * 0.75 + (ROW_SD / FOOD_SD) ** 2)
            model.foods[f] = model.usual(f) * math.exp(own)


def report(log_ratio: np.ndarray) -> str:
    """Mean error as a factor, bias, spread."""
    return (
        f"rows {log_ratio.size}  factor {math.exp(np.abs(log_ratio).mean()):.3f}  "
        f"bias {math.exp(log_ratio.mean()):.3f}  spread {log_ratio.std():.3f}"
    )


def cross(model: Model, chosen: list[dict[str, str]]) -> None:
    """Leave one source out at a time."""
    y = published(chosen)
    error = np.empty(len(chosen))
    own = {r["id"]: i for i, r in enumerate(chosen)}
    by = defaultdict(list)
    for r in chosen:
        by[r["source_org"]].append(r)
    for org, held in sorted(by.items()):
        rest = [r for r in chosen if r["source_org"] != org]
        model.put({})
        model.put(fit(model, rest, rounds=1, afresh=True))
        i = [own[r["id"]] for r in held]
        error[i] = model.log_times(held)[0] - y[i]
        print(f"{org[:44]:44s} {report(error[i])}", flush=True)
    print(f"{'ALL, each source unseen':44s} {report(error)}")


def write(model: Model, found: Parameters) -> None:
    """Put the fitted figures into the tables, to three digits."""
    model.put(found)
    _rewrite("media", lambda r: {"value": _digits(tables.constants()[r["id"]])} if r["id"] in MEDIA else {})

    def of_class(r: Mapping[str, str]) -> dict[str, str]:
        d, e = model.store.doneness(r["id"]), model.extra[r["id"]]
        new = {k: getattr(d, k) for k in ("dose_min", "crisp_factor", "soft_factor", "roast_factor")}
        new |= {
            "frozen_factor": e.frozen,
            "dry_factor": e.dried,
            "pan_factor": e.pan,
            "brown_degC": e.brown_degC,
        }
        return {k: _digits(v) for k, v in new.items() if r[k] and v}

    _rewrite("doneness", of_class)
    kept = {r["food_id"]: r for r in _factors() if r["food_id"] not in model.foods}
    for f in model.practice & set(kept):
        kept[f] = {**kept[f], "dose_factor": f"{model.factor(model.store.food(f)):.2f}"}
    for f, factor in model.foods.items():
        near = abs(math.log(factor)) < FACTORS_COVER
        figure = "1" if near else f"{factor:.2f}"
        kept[f] = {"food_id": f, "dose_factor": figure, "target_degC": "", "source": FITTED}
    with (KNOWLEDGE / "food_factors.csv").open("w", encoding="utf-8", newline="") as file:
        out = csv.DictWriter(file, ("food_id", "dose_factor", "target_degC", "source"), lineterminator="\n")
        out.writeheader()
        out.writerows(kept[f] for f in sorted(kept))


def _digits(value: float | None) -> str:
    return "" if value is None else f"{float(f'{value:.3g}'):g}"


def _rewrite(name: str, change: object) -> None:
    path = KNOWLEDGE / f"{name}.csv"
    old = list(tables.rows(name))
    with path.open("w", encoding="utf-8", newline="") as file:
        out = csv.DictWriter(file, list(old[0]), lineterminator="\n")
        out.writeheader()
        out.writerows({**r, **change(r)} for r in old)  # type: ignore[operator]


def main(argv: Sequence[str]) -> None:
    """Run one of the jobs named at the top."""
    model, chosen = Model(open_store()), rows()
    if "--cross" in argv:
        cross(model, chosen)
        return
    found = fit(model, chosen)
    print(report(model.log_times(chosen)[0] - published(chosen)))
    for name, value in found.items():
        print(f"{name:32s} x {value:.3f}")
    for food, value in sorted(model.foods.items()):
        print(f"food:{food:27s} {value:.2f}")
    if "--write" in argv:
        write(model, found)


if __name__ == "__main__":
    main(sys.argv[1:])

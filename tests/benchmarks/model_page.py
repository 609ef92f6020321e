"""Write the validation tables of `knowledge/physics/MODEL.md` anew.

python -m tests.benchmarks.model_page            between the two marks of the page
"""

from __future__ import annotations

import csv
import math
from collections import defaultdict
from pathlib import Path

import numpy as np

from bot.commands.bench_solvers import compare_finite_volumes, compare_solve_ivp
from bot.commands.times import answers
from knowledge.foods.store import open_store
from knowledge.physics import tables
from tests.benchmarks.fit_times import KNOWLEDGE, rows

PAGE = Path(tables.__file__).with_name("MODEL.md")
BEGIN, END = "<!-- tables -->", "<!-- end of tables -->"


def times_table() -> list[str]:
    """Published against computed times, a method a line."""
    chosen = rows()
    by: dict[str, list[tuple[float, bool, bool]]] = defaultdict(list)
    widths = []
    with open_store() as store:
        for row, answer in zip(chosen, answers(chosen, store), strict=True):
            t, low, high = (float(c) for c in answer.cells()[:3])
            lo, hi = float(row["time_min_lo"]), float(row["time_min_hi"])
            one = (math.log(t / math.sqrt(lo * hi)), 0.75 * lo <= t <= 1.25 * hi, low <= hi and high >= lo)
            by[row["method"]].append(one)
            by["all"].append(one)
            widths.append(high / low)
    out = ["| method | rows | bias | mean error, factor | spread | within 25 % | ranges overlap |"]
    out.append("|---|---|---|---|---|---|---|")
    for method in [*sorted(set(by) - {"all"}), "all"]:
        log, near, over = (np.array(c, dtype=float) for c in zip(*by[method], strict=True))
        out.append(
            f"| {method} | {log.size} | {math.exp(log.mean()):.2f} | {math.exp(np.abs(log).mean()):.2f} "
            f"| {log.std():.2f} | {near.mean():.2f} | {over.mean():.2f} |"
        )
    out.append("")
    out.append(f"Half of the ranges are narrower than a factor {np.median(widths):.2f} from end to end.")
    return out


def parameter_table() -> list[str]:
    """How many parameters there are, and where they come from."""

    def fitted(name: str, columns: tuple[str, ...]) -> int:
        return sum(bool(r[c]) for r in tables.rows(name) for c in columns if r["source"] == "FIT-TIMES")

    media = tables.rows("media")
    with (KNOWLEDGE / "food_factors.csv").open(encoding="utf-8", newline="") as file:
        own = [r for r in csv.DictReader(file) if r["dose_factor"] not in ("", "1")]
    foods, learned = len(own), sum(r["source"] == "FIT-TIMES" for r in own)
    with (KNOWLEDGE / "foods.csv").open(encoding="utf-8", newline="") as file:
        own_ids = {r["food_id"] for r in own}
        estimates = sum(bool(r["dose_factor"]) and r["id"] not in own_ids for r in csv.DictReader(file))
    by_hand = len(tables.rows("browned")) + len(tables.rows("crisp_core"))
    classes = (
        "dose_min",
        "crisp_factor",
        "soft_factor",
        "roast_factor",
        "frozen_factor",
        "dry_factor",
        "pan_factor",
    )
    doses = sum(bool(r[c]) for r in tables.rows("doneness") for c in classes)
    return [
        "| table | figures | of these fitted |",
        "|---|---|---|",
        f"| media.csv | {len(media)} | {sum(r['source'] == 'FIT-TIMES' for r in media)} |",
        f"| doneness.csv: doses and factors | {doses} "
        f"| {fitted('doneness', ('dose_min',))} doses; the factors move together, 14 in all |",
        f"| size_factors.csv | {len(tables.rows('size_factors'))} | {fitted('size_factors', ('factor',))} |",
        f"| food_factors.csv | {foods} | {learned}, each held to 1 or to cookery books (log-sd 0.5) |",
        f"| foods.csv: dose factors of other foods | {estimates} | none: estimates by likeness |",
        f"| browned.csv, crisp_core.csv | {by_hand} | none: common practice |",
        f"| spreads.csv | {len(tables.rows('spreads'))} | {len(tables.rows('spreads'))} |",
    ]


def solver_table() -> list[str]:
    """The conduction solver beside two others."""
    with open_store() as store:
        volumes, scipy = compare_finite_volumes(store), compare_solve_ivp(store)
    return [
        "| other solver of the same equations | largest difference of the core | times slower, at least |",
        "|---|---|---|",
        f"| scipy BDF, 40 cells, one by one | {scipy.worst_K:.2f} K | {_at_least(scipy.ratio, 50)} |",
        "| implicit finite volumes, 40 cells, 200 steps, batched "
        f"| {volumes.worst_K:.2f} K | {_at_least(volumes.ratio, 4)} |",
    ]


def _at_least(ratio: float, wanted: float) -> str:
    """What is wanted of a ratio where it is met: measured twice it differs, and the page should not."""
    return f"{wanted:g}" if ratio >= wanted else f"{ratio:.1f}"


def main() -> None:
    """Rewrite the page."""
    page = PAGE.read_text(encoding="utf-8")
    head, tail = page.split(BEGIN)[0], page.split(END)[1]
    parts = [
        [
            "### Published cooking times (tests/data/cook_times_dev.csv, historic books left out)",
            "",
            *times_table(),
        ],
        ["### Parameters", "", *parameter_table()],
        ["### Solvers", "", *solver_table()],
    ]
    body = "\n\n".join("\n".join(part) for part in parts)
    PAGE.write_text(f"{head}{BEGIN}\n\n{body}\n\n{END}{tail}", encoding="utf-8")


if __name__ == "__main__":
    main()

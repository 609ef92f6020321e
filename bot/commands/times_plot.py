"""Core and surface temperature and dose over time, drawn to a file (needs matplotlib)."""

from __future__ import annotations

from knowledge.physics import History, Outcome
from knowledge.physics.chart import Read

SURFACE, MEAN, MIDDLE, DOSE = "#b5541c", "#8a8a8a", "#1f4e79", "#4a7d3a"


def draw(read: Read, outcome: Outcome, followed: History, path: str) -> None:
    """Write a picture of one explained piece. Raises OSError, ValueError (unknown kind of file)."""
    try:
        import matplotlib as mpl
    except ImportError as error:
        raise OSError("drawing needs matplotlib: pip install 'panwright[plot]'") from error
    mpl.use("Agg")
    from matplotlib.figure import Figure

    minutes = [t / 60.0 for t in followed.times_s]
    goal = read.case.goal
    figure = Figure(figsize=(7.5, 4.5), dpi=120, layout="constrained")
    axes = figure.add_subplot()
    lines = axes.plot(minutes, followed.surface_degC, color=SURFACE, label="surface")
    lines += axes.plot(minutes, followed.mean_degC, color=MEAN, linestyle="--", label="mean")
    lines += axes.plot(minutes, followed.core_degC, color=MIDDLE, label="middle")
    if goal.target_degC is not None and goal.dose_min is None:
        axes.axhline(goal.target_degC, color=MIDDLE, linewidth=0.7)
        said = f"{goal.target_degC:.0f} °C in the middle"
        said += ", rise at rest counted" if goal.kappa else ""
        axes.annotate(said, (0.0, goal.target_degC), xytext=(2, 3), textcoords="offset points", fontsize=8)
    if goal.dose_min:
        dose = axes.twinx()
        lines += dose.plot(minutes, followed.dose_min, color=DOSE, linestyle=":", label="dose (right)")
        dose.axhline(goal.dose_min, color=DOSE, linewidth=0.7)
        said = f"tender at {goal.dose_min:.1f}"
        dose.annotate(said, (0.0, goal.dose_min), xytext=(2, 3), textcoords="offset points", fontsize=8)
        dose.set_ylabel("softening dose, minutes at 100 °C")
        dose.set_ylim(bottom=0.0)
    if outcome.browned_s is not None and outcome.browned_s <= followed.times_s[-1]:
        axes.axvline(outcome.browned_s / 60.0, color=SURFACE, linewidth=0.8, linestyle=":")
        axes.annotate(
            "brown", (outcome.browned_s / 60.0, 0.02), rotation=90, fontsize=8, color=SURFACE,
            xycoords=("data", "axes fraction"), xytext=(3, 0), textcoords="offset points",
        )  # fmt: skip
    if outcome.done_s is not None and outcome.lo_s is not None and outcome.hi_s is not None:
        axes.axvspan(outcome.lo_s / 60.0, min(outcome.hi_s / 60.0, minutes[-1]), color="0.92", zorder=0)
        axes.axvline(outcome.done_s / 60.0, color="black", linewidth=0.8)
        axes.annotate(
            f"done {outcome.done_s / 60.0:.0f} min", (outcome.done_s / 60.0, 0.02), rotation=90, fontsize=8,
            xycoords=("data", "axes fraction"), xytext=(-11, 0), textcoords="offset points",
        )  # fmt: skip
    axes.set_xlabel("minutes (grey: the range of published times)")
    axes.set_ylabel("°C")
    axes.set_xlim(0.0, minutes[-1])
    axes.set_title(f"{read.food.name}, {read.size_mm:g} mm {read.shape}: {read.method}")
    figure.legend(handles=lines, loc="outside lower center", ncols=4, frameon=False)
    figure.savefig(path)

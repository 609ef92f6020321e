"""Core and surface temperature and dose over time, drawn to a file (needs matplotlib)."""

from __future__ import annotations

from knowledge.physics import History, Outcome
from knowledge.physics.chart import Read


def draw(read: Read, outcome: Outcome, followed: History, path: str) -> None:
    """Write a picture of one explained piece. Raises OSError, ValueError (unknown kind of file)."""
    try:
        import matplotlib as mpl
    except ImportError as error:
        raise OSError("drawing needs matplotlib: pip install 'panwright[plot]'") from error
    mpl.use("Agg")
    from matplotlib.figure import Figure

    minutes = [t / 60.0 for t in followed.times_s]
    figure = Figure(figsize=(7.0, 4.2), dpi=120, layout="constrained")
    axes = figure.add_subplot()
    axes.plot(minutes, followed.surface_degC, color="#b5541c", label="surface")
    axes.plot(minutes, followed.mean_degC, color="#8a8a8a", linestyle="--", label="mean")
    axes.plot(minutes, followed.core_degC, color="#1f4e79", label="middle")
    if outcome.done_s is not None:
        axes.axvline(outcome.done_s / 60.0, color="black", linewidth=0.8)
    axes.set_xlabel("minutes")
    axes.set_ylabel("°C")
    axes.set_title(f"{read.food.name}, {read.size_mm:g} mm {read.shape}")
    if read.case.goal.dose_min:
        dose = axes.twinx()
        dose.plot(minutes, followed.dose_min, color="#4a7d3a", linestyle=":", label="dose")
        dose.axhline(read.case.goal.dose_min, color="#4a7d3a", linewidth=0.6)
        dose.set_ylabel("dose, min at 100 °C")
    axes.legend(loc="lower right", frameon=False)
    figure.savefig(path)

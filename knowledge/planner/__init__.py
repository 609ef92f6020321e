"""From what is at hand to a dinner in one vessel; see PROBLEM.md for the problem it solves."""

from __future__ import annotations

from knowledge.planner.choose import plan
from knowledge.planner.replan import replan
from knowledge.planner.swap import swap

__all__ = ["plan", "replan", "swap"]

"""From what is at hand to a dinner in one vessel; see PROBLEM.md for the problem it solves.

The three functions load their parts when first called: whoever only handles plans, as the chat
does until somebody asks for one, does not wait for the physics.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from knowledge.foods.store import Store
    from knowledge.planner.model import Have, NoPlan, Plan, Request, SwapAnswer

__all__ = ["plan", "replan", "swap"]


def plan(request: Request, *, store: Store) -> Plan | NoPlan:
    """See `choose.plan`; what an allergy bars is never shown (`checking.withheld`)."""
    from knowledge.planner import choose
    from knowledge.planner.checking.withheld import withheld

    return withheld(choose.plan(request, store=store), store=store)


def swap(
    plan: Plan, *, frm: str | None, to: Have | None, store: Store, elapsed_s: float | None = None
) -> SwapAnswer:
    """See `swaps.swap`."""
    from knowledge.planner.changing import swaps

    return swaps.swap(plan, frm=frm, to=to, store=store, elapsed_s=elapsed_s)


def replan(plan: Plan, *, request: Request, elapsed_s: float, store: Store) -> Plan | NoPlan:
    """See `replans.replan`; the gate is the same as for `plan`."""
    from knowledge.planner.changing import replans
    from knowledge.planner.checking.withheld import withheld

    return withheld(replans.replan(plan, request=request, elapsed_s=elapsed_s, store=store), store=store)

"""What must hold for every request: any foods, any amounts, any kitchen."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from knowledge.foods.model import Role
from knowledge.foods.store import open_store
from knowledge.physics.safety import minimum
from knowledge.planner import plan, replan, swap
from knowledge.planner.checking.verify import check
from knowledge.planner.model import Do, Have, Kitchen, NoPlan, Plan, Request, Verdict, VesselAt

STORE = open_store()
IDS = [f.id for f in STORE.foods() if f.role is Role.COOK and f.doneness != "none"]
SIZES = [(v.id, s.id) for v in STORE.vessels() for s in v.sizes]

haves = st.builds(
    Have,
    food_id=st.sampled_from(IDS),
    grams=st.one_of(st.none(), st.floats(20, 3000)),
    state=st.sampled_from([None, None, None, "frozen", "leftover"]),
)
kitchens = st.builds(
    Kitchen,
    vessels=st.lists(st.sampled_from(SIZES), min_size=1, max_size=3, unique_by=lambda v: v[0]).map(
        lambda found: tuple(VesselAt(id=i, size=s) for i, s in found)
    ),
    oven_max_degC=st.sampled_from([200.0, 220.0, 250.0]),
    fan_oven=st.booleans(),
    broiler=st.sampled_from([True, True, False]),
    altitude_m=st.sampled_from([0.0, 0.0, 1500.0, 2500.0]),
)
requests = st.builds(
    Request,
    have=st.lists(haves, min_size=1, max_size=6, unique_by=lambda h: h.food_id).map(tuple),
    eaters=st.floats(1, 6).map(round).map(float),
    eaters_said=st.booleans(),
    kitchen=kitchens,
    wishes=st.sampled_from([(), (), ("broil",)]),
)


def answered(request: Request) -> Plan | None:
    made = plan(request, store=STORE)
    if isinstance(made, NoPlan):
        assert made.reasons
        return made.nearest
    return made


@settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))
@given(requests)
def test_plans_are_safe_in_order_and_within_room(request: Request) -> None:
    made = answered(request)
    if made is None:
        return
    report = check(made, store=STORE)
    assert report.unsafe == ()
    assert not [p for p in report.problems if "full" in p or "sealed" in p or "liquid" in p or "order" in p]
    assert [s.at_s for s in made.steps] == sorted(s.at_s for s in made.steps)
    assert made.total_s >= made.cooking_s > 0
    for item in made.items:
        assert item.done.window_s[0] <= item.done.window_s[1] + 1e-6
        assert item.done.window_s[0] <= item.out_s + 1e-6 <= item.done.window_s[1] + 2e-6
        assert 0 <= item.in_s < item.out_s <= made.cooking_s + 1e-6
        published = minimum("leftover" if item.state == "leftover" else STORE.food(item.food_id).safety)
        if published is not None and item.done.core_degC is not None:
            assert item.done.core_degC >= published.core_degC - 0.2


@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(requests, st.data())
def test_a_swap_for_itself_is_always_together(request: Request, data: st.DataObject) -> None:
    made = answered(request)
    if made is None:
        return
    item = data.draw(st.sampled_from(made.items))
    answer = swap(made, frm=item.food_id, to=Have(food_id=item.food_id), store=STORE)
    assert answer.verdict is Verdict.TOGETHER


@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(requests, st.sampled_from(IDS), st.data())
def test_a_swap_answers_in_words_and_its_plan_holds(request: Request, new: str, data: st.DataObject) -> None:
    made = answered(request)
    if made is None:
        return
    item = data.draw(st.sampled_from(made.items))
    elapsed = data.draw(st.sampled_from([None, 300.0, 1200.0]))
    answer = swap(made, frm=item.food_id, to=Have(food_id=new), store=STORE, elapsed_s=elapsed)
    assert answer.text
    if answer.verdict is not Verdict.NO:
        assert answer.plan is not None
        sealed = answer.plan.settings.pressure_kPa_gauge is not None
        assert sealed == any(s.do is Do.LID for s in answer.plan.steps if s.safety)
        assert check(answer.plan, store=STORE).unsafe == ()


@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(requests, haves, st.sampled_from([0.0, 300.0, 1200.0]))
def test_what_joins_a_running_cook_is_safe(request: Request, new: Have, elapsed_s: float) -> None:
    made = answered(request)
    if made is None:
        return
    wanted = replace(made.request, have=(*made.request.have, new))
    again = replan(made, request=wanted, elapsed_s=elapsed_s, store=STORE)
    shown = again.nearest if isinstance(again, NoPlan) else again
    if shown is not None:
        assert check(shown, store=STORE).unsafe == ()


@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(requests)
def test_one_gram_more_does_not_change_the_vessel(request: Request) -> None:
    said = tuple(replace(h, grams=h.grams or 300.0) for h in request.have)
    more = tuple(replace(h, grams=(h.grams or 0.0) + 1.0) for h in said)
    first = answered(replace(request, have=said, eaters_said=True))
    second = answered(replace(request, have=more, eaters_said=True))
    assert (first is None) == (second is None)
    if first is not None and second is not None:
        assert first.vessel == second.vessel

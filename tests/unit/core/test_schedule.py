"""The bookkeeping of a running cook."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

from bot.core import schedule
from bot.core.actions import CancelReminders, Remind
from bot.core.state import LiveCook, StepStatus
from knowledge.planner.model import Have, Request
from tests.unit.core.kitchen import NOW, plan_of


def cook(*foods: str) -> LiveCook:
    plan = plan_of(Request(have=tuple(Have(food_id=f) for f in foods)))
    zero_at = NOW + timedelta(minutes=15)
    return schedule.begin(plan, cook_id="t.1", number=1, offer_no=1, now=NOW, zero_at=zero_at)


def test_shifting_there_and_back_is_no_shift() -> None:
    one = cook("chicken", "carrot")
    assert schedule.shift(schedule.shift(one, 600), -600) == one


def test_a_shift_from_a_moment_on_leaves_what_is_due_before_it() -> None:
    one = cook("chicken", "carrot")
    waiting = schedule.waiting(one)
    from_here = waiting[len(waiting) // 2].due_at
    before = {s.number: s.due_at for s in waiting}
    after = {s.number: s.due_at for s in schedule.waiting(schedule.shift(one, 300, after=from_here))}
    for number, due_at in before.items():
        moved = timedelta(seconds=300) if due_at >= from_here else timedelta(0)
        assert after[number] - due_at == moved
    assert set(before.values()) != {from_here}


def test_a_cook_nobody_ends_leaves_time_to_eat_and_to_chill_what_is_left() -> None:
    # leftovers go to the fridge within two hours of cooking (USDA FSIS)
    one = cook("chicken", "carrot")
    open_for = schedule.closes_at(one) - schedule.table_at(one)
    assert timedelta(minutes=30) <= open_for <= timedelta(hours=1.5)


def test_moving_a_waiting_step_keeps_its_key_and_telling_it_again_takes_a_new_one() -> None:
    one = cook("chicken", "carrot")
    step = schedule.waiting(one)[-1]
    moved = next(s for s in schedule.shift(one, 60).steps if s.number == step.number)
    assert schedule.key(one, moved) == schedule.key(one, step)
    again = schedule.tell_again(one, [step], NOW)
    assert schedule.key(again, schedule.waiting(again)[0]) != schedule.key(one, step)


def test_reminders_of_nothing_changed_are_none() -> None:
    one = cook("chicken", "carrot")
    assert schedule.reminders(one, one) == ()


def test_a_skipped_step_loses_its_reminder_only() -> None:
    one = cook("chicken", "carrot")
    step = next(s for s in one.steps if s.step_id == "add-carrot")
    two = schedule.mark(one, [step], StepStatus.SKIPPED)
    assert schedule.reminders(one, two) == (CancelReminders(cook_id="t.1", keys=(schedule.key(one, step),)),)


def test_an_id_that_now_means_another_step_gets_a_fresh_key_and_is_told() -> None:
    one = cook("chicken", "carrot")
    add = next(s for s in one.steps if s.step_id == "add-carrot")
    told = schedule.tell(one, [add])
    other = replace(
        one.plan,
        steps=tuple(
            replace(s, foods=("pea",), at_s=1200.0) if s.id == "add-carrot" else s for s in one.plan.steps
        ),
    )
    two = schedule.adopt(told, other, NOW + timedelta(minutes=26))
    pea = next(s for s in two.steps if s.step_id == "add-carrot")
    assert pea.status is StepStatus.WAITING
    assert schedule.key(two, pea) != schedule.key(told, add)
    assert any(
        isinstance(a, Remind) and a.key == schedule.key(two, pea) for a in schedule.reminders(told, two)
    )


def test_a_new_step_that_keeps_dinner_safe_is_told_though_its_time_is_past() -> None:
    one = cook("chicken", "carrot")
    early = next(s for s in one.plan.steps if s.id == "add-carrot")
    dull = replace(early, id="stir", at_s=-600.0, foods=("carrot",))
    safe = replace(dull, id="boil-hard", safety=True)
    two = schedule.adopt(
        one, replace(one.plan, steps=(dull, safe, *one.plan.steps)), NOW + timedelta(minutes=20)
    )
    standing = {s.step_id: s.status for s in two.steps}
    assert standing["stir"] is StepStatus.DONE
    assert standing["boil-hard"] is StepStatus.WAITING

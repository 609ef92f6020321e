"""The conversation while something is on the heat.

The plan of `kitchen.plan_of`: oven on and knife work from 17:00, chicken in at 17:15,
carrot 17:25, pea 17:35, check 17:53:20, table 17:55.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from bot.core import schedule
from bot.core.actions import Remind
from bot.core.events import ButtonPressed, RemindersDue
from bot.core.replies import cooks
from bot.core.state import StepStatus
from knowledge.planner.model import Do, Step
from tests.unit.core.evening import Evening, cooking
from tests.unit.core.kitchen import NOW, START, says, send, text_of


def at(hour: int, minute: int, second: int = 0) -> datetime:
    return NOW.replace(hour=hour, minute=minute, second=second)


def test_start_tells_the_first_steps_and_sets_a_reminder_for_each_other() -> None:
    evening = Evening()
    evening.text("chicken carrot pea")
    text = evening.text("start")
    assert "On the table at 17:55" in text
    assert "Heat the oven" in text
    assert "Next at 17:15 (in 15 min): chicken in." in text
    due = {r.step_id: r.due_at for r in evening.rows.values()}
    assert due["add-chicken"] == at(17, 15)
    assert due["serve"] == at(17, 55)
    assert evening.state.cook is not None
    told = {s.step_id for s in evening.state.cook.steps if s.status is StepStatus.TOLD}
    assert told | due.keys() - {"close"} == {s.id for s in evening.state.cook.plan.steps}


def test_a_whole_evening_is_told_in_order_and_ends_with_leftovers() -> None:
    evening = cooking()
    said = evening.wait(55)
    assert [line.splitlines()[0] for line in said] == [
        "▶ Put the chicken in.",
        "▶ Put the carrot in.",
        "▶ Put the pea in.",
        "▶ Check the chicken: 74 °C at the core.",
        "▶ Serve.",
    ]
    assert "within 2 hours" in evening.text("done")
    assert evening.state.cook is None
    assert not evening.rows


def test_the_same_reminder_twice_changes_nothing() -> None:
    evening = cooking()
    evening.now = at(17, 15)
    due = RemindersDue(reminders=tuple(r for r in evening.rows.values() if r.due_at <= evening.now))
    first = send(evening.state, due, evening.now)
    second = send(first.state, due, evening.now)
    assert says(first)
    assert second.state == first.state
    assert not second.actions


def test_done_twice_changes_nothing() -> None:
    evening = cooking()
    evening.wait(15)
    evening.tap("Done")
    state = evening.state
    assert "done already" in evening.tap("Done")
    assert evening.state == state


def test_later_comes_again_and_takes_the_rest_along() -> None:
    evening = cooking()
    evening.wait(15)
    assert "17:20" in evening.tap("Later (5 min)")
    # A second tap changes nothing.
    state = evening.state
    evening.tap("Later (5 min)")
    assert evening.state == state
    assert evening.wait(5)[0].startswith("▶ Put the chicken in.")
    assert {r.due_at for r in evening.rows.values() if r.step_id == "serve"} == {at(18, 0)}


def test_late_moves_all_that_is_left_and_names_what_cooks_on() -> None:
    evening = cooking()
    evening.wait(26)
    text = evening.text("10 min late")
    assert "On the table at 18:05" in text
    assert "chicken" in text
    due = {r.step_id: r.due_at for r in evening.rows.values()}
    assert due["add-pea"] == at(17, 45)
    assert due["serve"] == at(18, 5)
    assert due["add-carrot"] == evening.now + timedelta(minutes=10)


def test_late_without_a_number_asks_and_a_number_answers() -> None:
    evening = cooking()
    assert evening.text("running late") == "How long?"
    assert "18:10" in evening.text("15")
    evening.text("running late")
    assert "18:15" in evening.tap("5 min")


def test_an_unreasonable_delay_changes_nothing() -> None:
    evening = cooking()
    state = evening.state
    assert "4 hours" in evening.text("300 min late")
    assert evening.state == state


def test_not_done_looks_again_and_moves_the_table() -> None:
    evening = cooking()
    evening.wait(54)
    text = evening.tap("Not done yet")
    assert "check again at 17:59" in text
    assert evening.wait(5)[0].startswith("▶ Check the chicken")


def test_still_hard_before_its_time_is_as_it_should_be() -> None:
    evening = cooking()
    evening.wait(30)
    state = evening.state
    assert "As it should be: carrot" in evening.text("carrot still hard")
    assert "As it should be" in evening.text("still hard")
    assert evening.state == state


def cooking_later(minutes: float) -> Evening:
    evening = cooking()
    evening.wait(minutes)
    return evening


def test_a_probe_reading_at_the_goal_is_done() -> None:
    assert cooking_later(50).text("chicken is 75").startswith("75 °C: done")


@pytest.mark.parametrize("read", ["73.8", "73", "69"])  # 165 °F, USDA FSIS, is 73.9 °C
def test_a_probe_reading_short_of_the_goal_is_not_done(read: str) -> None:
    assert "done" not in cooking_later(50).text(f"chicken is {read}").replace("not done", "")


def test_a_probe_reading_below_says_how_much_longer_and_when_to_measure() -> None:
    evening = cooking_later(35)
    text = evening.text("chicken is 60")
    assert "Measure again at" in text
    assert "74 °C" in text


def test_a_probe_reading_without_a_food_means_the_only_one_that_is_measured() -> None:
    assert "for chicken" in cooking_later(35).text("probe says 60")


def test_an_impossible_reading_is_asked_back() -> None:
    evening = cooking_later(35)
    state = evening.state
    assert "can't be" in evening.text("chicken is 900")
    assert evening.state == state
    assert "knife" in evening.text("carrot is 60")


def test_done_early_asks_for_the_safe_temperature_first() -> None:
    assert "must show 74 °C" in cooking_later(45).text("chicken done early")
    assert "Turn the heat down" in cooking_later(45).text("burning")


def test_what_burns_long_before_it_is_done_stays_in() -> None:
    text = cooking_later(25).text("chicken done early")
    assert "stays in" in text
    assert "heat down" in text
    assert "out now" not in text


@pytest.mark.parametrize("words", ["chicken is 60", "chicken done early"])
def test_what_by_the_clock_is_not_in_is_asked_about(words: str) -> None:
    evening = cooking_later(5)
    before = evening.state
    assert "the time to put chicken in is 17:15" in evening.text(words)
    assert evening.state == before


def test_dinner_is_not_served_on_a_low_reading_without_a_word() -> None:
    evening = cooking_later(56)
    evening.text("chicken is 60")
    assert "Don't eat yet: chicken last read below 74 °C" in evening.text("done")
    assert evening.state.cook is not None
    evening.text("chicken is 75")
    assert evening.text("done").startswith("Enjoy your meal")


def test_after_a_low_reading_a_second_done_serves() -> None:
    evening = cooking_later(56)
    evening.text("chicken is 60")
    evening.text("done")
    assert evening.text("done").startswith("Enjoy your meal")


def test_a_question_about_food_of_another_dinner_is_answered() -> None:
    assert "FSIS" in cooking_later(20).text("is the turkey pink?")


@pytest.mark.parametrize(
    ("words", "aid"),
    [
        ("I burnt myself!", "running water for 20 minutes"),  # NHS, burns and scalds
        ("the pan is ON FIRE", "Never water on burning fat"),  # fire services' common advice
        ("ouch, cut my finger", "Press a clean cloth"),
    ],
)
def test_an_accident_comes_before_dinner(words: str, aid: str) -> None:
    evening = cooking_later(20)
    state = evening.state
    assert aid in evening.text(words)
    assert evening.state == state


def test_the_vessel_of_a_running_cook_stays() -> None:
    evening = cooking_later(20)
    state = evening.state
    assert "in its vessel" in evening.text("use the pot")
    assert evening.state == state


def test_a_change_that_changes_nothing_asks_nothing() -> None:
    evening = cooking_later(20)
    text = evening.text("make it 6")
    assert text.startswith("That changes nothing")
    assert evening.state.asked == ""


def test_the_answers_to_a_reminder_mean_the_cook_when_there_is_none() -> None:
    assert "Nothing is cooking" in text_of(send(START, "later"))


def test_a_step_shown_short_keeps_its_last_word_and_one_stop() -> None:
    text = "Cut 4 carrots into 25 mm chunks and 500 g potatoes into 25 mm chunks."
    step = replace(plan_step(), do=Do.PREP, text=text)
    assert cooks.short(step, []).endswith("potatoes into 25 mm chunks")
    long = cooks.short(replace(step, text="word " * 40), [])
    assert cooks.next_up(long, NOW, NOW, 0).endswith(" …")


def plan_step() -> Step:
    cook = cooking().state.cook
    assert cook is not None
    return cook.plan.steps[0]


def test_a_food_is_left_out_but_a_safety_step_is_not() -> None:
    evening = cooking_later(16)
    assert "Left out: pea in" in evening.text("skip the pea")
    assert not [r for r in evening.rows.values() if r.step_id == "add-pea"]
    evening.wait(37.4)
    assert "keeps dinner safe" in evening.text("skip the check")
    assert evening.state.cook is not None
    check = next(s for s in evening.state.cook.steps if s.step_id == "check")
    assert check.status is not StepStatus.SKIPPED


def test_stop_ends_all_reminders_and_can_be_taken_back() -> None:
    evening = cooking_later(20)
    assert "Stopped" in evening.text("stop the reminders")
    assert not evening.rows
    assert "On we go" in evening.tap("Carry on")
    assert evening.wait(5)[0].startswith("▶ Put the carrot in.")


def test_an_oven_that_is_not_hot_holds_everything() -> None:
    evening = cooking_later(10)
    text = evening.text("oven not hot")
    assert "everything moves" in text
    assert "force" not in text
    assert {r.due_at for r in evening.rows.values() if r.step_id == "serve"} == {at(18, 0)}


def test_a_forgotten_food_goes_in_now_and_one_not_due_is_not_lost() -> None:
    evening = cooking_later(20)
    assert "17:25 before you put carrot in" in evening.text("forgot the carrot")
    assert "Carrot in now" in cooking_later(30).text("forgot the carrot")


def test_a_food_never_planned_is_figured_in_and_asked() -> None:
    evening = cooking_later(20)
    assert "leek" in evening.text("forgot the leek")
    evening.text("yes")
    assert evening.state.cook is not None
    assert "leek" in [i.food for i in evening.state.cook.plan.items]
    # Its knife work lay before now in the new plan; the cook is told of it all the same.
    assert any("Cut the leek" in say.text for _, say in evening.heard)


def test_a_cold_oven_counts_from_now() -> None:
    evening = cooking_later(25)
    assert "more than 2 hours" in evening.text("forgot the oven")
    assert {r.due_at for r in evening.rows.values() if r.step_id == "serve"} == {at(18, 15)}


def test_a_swap_while_cooking_is_asked_and_taken() -> None:
    evening = cooking_later(16)
    evening.text("parsnip for carrot")
    text = evening.text("yes")
    assert "parsnip" in text
    assert evening.state.cook is not None
    assert [i.food for i in evening.state.cook.plan.items] == ["chicken", "parsnip", "pea"]
    assert not [r for r in evening.rows.values() if r.step_id == "add-carrot"]
    assert [r for r in evening.rows.values() if r.step_id == "add-parsnip"]


def test_one_late_reminder_says_how_late_it_is() -> None:
    evening = cooking()
    (text,) = evening.sleep(20)
    assert text.startswith("▶ (5 min late) Put the chicken in.")


def test_several_missed_reminders_come_as_one_message_with_a_question() -> None:
    evening = cooking()
    (text,) = evening.sleep(54)
    assert "How do things stand?" in text
    for words in (
        "Put the chicken in.",
        "Put the carrot in.",
        "Put the pea in.",
        "❗ 17:53 Check the chicken",
    ):
        assert words in text
    again = evening.tap("Go on from here")
    assert "later" in again
    assert "Put the chicken in." in again
    # 17:54 now; the table was 40 min after the chicken went in.
    assert {r.due_at for r in evening.rows.values() if r.step_id == "serve"} == {at(18, 34)}


def test_all_done_after_an_outage_goes_on_with_the_rest() -> None:
    evening = cooking()
    evening.sleep(36)
    assert "Next at 17:53" in evening.tap("All done")


def test_a_cook_left_alone_closes_itself_once() -> None:
    evening = cooking()
    evening.wait(55 + 46)
    closing = [say.text for _, say in evening.heard if "I take it you have eaten" in say.text]
    assert len(closing) == 1
    assert "within 2 hours" in closing[0]
    assert evening.state.cook is None
    assert evening.wait(600) == []


def test_a_step_ticked_off_long_after_asks_when_it_happened() -> None:
    evening = cooking_later(15)
    evening.wait(6)
    assert "just now, or at 17:15" in evening.tap("Done")
    text = evening.tap("Just now")
    assert "On the table at 18:01" in text
    state = evening.state
    evening.tap("Just now")
    assert evening.state == state


def test_a_step_done_on_time_though_ticked_off_late_moves_nothing() -> None:
    evening = cooking_later(21)
    before = dict(evening.rows)
    evening.tap("Done")
    evening.tap("On time")
    assert evening.rows == before


def test_food_in_the_heat_starts_the_clock_at_zero() -> None:
    evening = Evening()
    evening.text("chicken carrot")
    text = evening.text("tray is in")
    assert "17:40" in text  # 40 min from food in to the table
    assert "17:55" in evening.tap("No, from the top")


def test_a_step_done_early_moves_the_rest_forward() -> None:
    evening = cooking_later(5)
    evening.tap("Done")
    assert "earlier" in evening.text("done")  # chicken in at 17:05
    assert {r.due_at for r in evening.rows.values() if r.step_id == "serve"} == {at(17, 45)}


def test_a_start_far_ahead_of_the_deadline_can_wait() -> None:
    evening = Evening()
    evening.text("chicken carrot by 18:30")
    evening.text("start")
    # 55 min from the first step to the table: 18:30 less 55 min.
    assert "17:35" in evening.tap("Not yet: start at 17:35")
    assert evening.wait(34) == []
    assert "Heat the oven" in evening.wait(1)[0]
    assert {r.due_at for r in evening.rows.values() if r.step_id == "serve"} == {at(18, 30)}


def test_a_second_start_says_it_runs_already() -> None:
    evening = cooking_later(5)
    state = evening.state
    assert "running since 17:00" in evening.text("start")
    assert "running since 17:00" in evening.tap("Start")
    assert evening.state == state


def test_starting_a_second_cook_asks_about_the_first() -> None:
    evening = cooking_later(20)
    assert "goes on" in evening.text("potato")
    assert "Stop that one?" in evening.text("start")
    first = evening.state.cook
    evening.tap("Keep cooking")
    assert evening.state.cook == first
    evening.text("start")
    evening.tap("Stop that, start this")
    assert evening.state.cook is not None
    assert [i.food for i in evening.state.cook.plan.items] == ["potato"]
    assert {r.cook_id for r in evening.rows.values()} == {evening.state.cook.cook_id}


@pytest.mark.parametrize(
    "words", ["10 min late", "chicken is 60", "still hard", "skip the pea", "oven not hot"]
)
def test_stove_events_without_a_cook_get_a_kind_sentence(words: str) -> None:
    idle = Evening()
    assert "Nothing is cooking" in idle.text(words)
    idle.text("chicken carrot")
    state = idle.state
    assert "haven't started" in idle.text(words)
    assert idle.state == state


def test_reminders_of_an_ended_cook_are_silent() -> None:
    evening = cooking()
    reminders = tuple(evening.rows.values())
    evening.text("stop")
    evening.now = at(18, 30)
    assert evening.event(RemindersDue(reminders=reminders)) == []


def test_buttons_of_an_ended_cook_change_nothing() -> None:
    evening = cooking_later(15)
    data = evening.heard[-1][1].buttons[0][0].data
    evening.text("stop")
    state = evening.state
    (say,) = evening.event(ButtonPressed(data=data))
    assert "over" in say.text
    assert evening.state == state


def test_every_waiting_step_has_exactly_one_row() -> None:
    evening = cooking()
    for words in ("10 min late", "oven not hot", "skip the pea"):
        evening.text(words)
        cook = evening.state.cook
        assert cook is not None
        want = {schedule.key(cook, s): s.due_at for s in schedule.waiting(cook)}
        got = {k: r.due_at for k, r in evening.rows.items() if r.step_id != "close"}
        assert got == want


def test_reminders_come_before_the_words_about_them() -> None:
    outcome = send(cooking().state, "10 min late")
    kinds = [isinstance(a, Remind) for a in outcome.actions]
    assert kinds == sorted(kinds, reverse=True)

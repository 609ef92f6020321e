"""What holds for any order of messages, taps, waits, outages and repeats."""

from __future__ import annotations

from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule

from bot.core import schedule
from bot.core.events import ButtonPressed, OddMessage, RemindersDue
from bot.core.questions import DATA_MAX_BYTES
from bot.core.state import StepStatus, from_json, to_json
from tests.unit.core.evening import Evening
from tests.unit.core.kitchen import READINGS

LISTS = ["chicken carrot", "chicken carrot pea potato", "leek", "chicken oca", "carrot leek parsnip"]
COMMANDS = ["start", "/start", "stop", "done", "later", "not yet", "yes", "no", "undo", "why", "show"]
MESSAGE_MAX = 4096  # what the tightest transport takes in one message


class AnyEvening(RuleBasedStateMachine):
    """A chat that is told anything at any time."""

    def __init__(self) -> None:
        super().__init__()
        self.evening = Evening()
        self.last_due: RemindersDue | None = None

    @initialize(foods=st.sampled_from(LISTS), cooking=st.booleans())
    def begin(self, foods: str, cooking: bool) -> None:
        self.evening.text(foods)
        if cooking:
            self.evening.text("start")

    @rule(words=st.sampled_from([*LISTS, *COMMANDS, *READINGS]))
    def write(self, words: str) -> None:
        assert self.evening.text(words), "every message gets an answer"

    @rule(words=st.text(max_size=60))
    def write_anything(self, words: str) -> None:
        assert self.evening.text(words)

    @rule(data=st.data())
    def tap(self, data: st.DataObject) -> None:
        buttons = [b.data for _, say in self.evening.heard[-12:] for row in say.buttons for b in row]
        if buttons:
            assert self.evening.event(ButtonPressed(data=data.draw(st.sampled_from(buttons))))

    @rule(data=st.data())
    def tap_twice(self, data: st.DataObject) -> None:
        """The second tap on a button under a step changes nothing."""
        buttons = [b.data for _, say in self.evening.heard[-4:] for row in say.buttons for b in row]
        steps = [d for d in buttons if d.split(":")[2] in ("done", "later", "more", "yes", "just")]
        if steps:
            event = ButtonPressed(data=data.draw(st.sampled_from(steps)))
            self.evening.event(event)
            state, rows = self.evening.state, dict(self.evening.rows)
            self.evening.event(event)
            after = self.evening.state
            if state.cook is not None and after.cook is not None:
                assert after.cook == state.cook
                assert self.evening.rows == rows

    @rule(kind=st.sampled_from(["photo", "voice", "game"]))
    def send_odd(self, kind: str) -> None:
        self.evening.event(OddMessage(kind=kind))

    @rule(minutes=st.floats(0, 40))
    def wait(self, minutes: float) -> None:
        self.evening.wait(minutes)

    @rule(minutes=st.floats(1, 400))
    def away(self, minutes: float) -> None:
        self.last_due = RemindersDue(reminders=tuple(self.evening.rows.values()))
        self.evening.sleep(minutes)

    @rule()
    def repeat_old_reminders(self) -> None:
        """Reminders told before come again: nothing is said twice."""
        if self.last_due is not None:
            stale = tuple(r for r in self.last_due.reminders if r.key in self.evening.fired)
            state = self.evening.state
            said = self.evening.event(RemindersDue(reminders=stale)) if stale else []
            assert said == []
            assert self.evening.state == state

    @invariant()
    def every_waiting_step_has_its_one_row(self) -> None:
        cook = self.evening.state.cook
        rows = {k: (r.cook_id, r.due_at) for k, r in self.evening.rows.items()}
        if cook is None:
            assert not rows
            return
        want = {schedule.key(cook, s): (cook.cook_id, s.due_at) for s in schedule.waiting(cook)}
        want[schedule.close_key(cook)] = (cook.cook_id, schedule.closes_at(cook))
        assert rows == want

    @invariant()
    def nothing_is_told_under_a_used_key(self) -> None:
        assert self.evening.repeats == 0

    @invariant()
    def a_safety_step_is_never_left_out(self) -> None:
        cook = self.evening.state.cook
        if cook is None:
            return
        for live in cook.steps:
            if schedule.step_of(cook, live).safety:
                assert live.status is not StepStatus.SKIPPED

    @invariant()
    def messages_fit_and_say_something(self) -> None:
        for _, say in self.evening.heard[-3:]:
            assert 0 < len(say.text.strip()) <= MESSAGE_MAX
            for row in say.buttons:
                for button in row:
                    assert button.label
                    assert len(button.data.encode()) <= DATA_MAX_BYTES

    @invariant()
    def state_survives_json(self) -> None:
        assert from_json(to_json(self.evening.state)) == self.evening.state


AnyEvening.TestCase.settings = settings(max_examples=400, stateful_step_count=50, deadline=None)
test_any_evening = AnyEvening.TestCase

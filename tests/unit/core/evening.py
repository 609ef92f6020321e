"""A small evening: a chat whose reminders are kept in a dictionary, as the runtime keeps rows."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime, timedelta

from bot.core.actions import CancelReminders, Outcome, Remind, Say
from bot.core.conversation import step
from bot.core.events import ButtonPressed, DueReminder, Event, RemindersDue, TextReceived
from bot.core.state import Chat, from_json, to_json
from knowledge import Knowledge
from tests.unit.core.kitchen import NOW, PANTRY, START


@dataclass
class Evening:
    """Time moves only by `wait`; what is due on the way is told when it is due."""

    state: Chat = START
    now: datetime = NOW
    knowledge: Knowledge = PANTRY
    rows: dict[str, DueReminder] = field(default_factory=dict)
    fired: set[str] = field(default_factory=set)
    heard: list[tuple[datetime, Say]] = field(default_factory=list)
    keys: set[str] = field(default_factory=set)
    repeats: int = 0

    def event(self, event: Event) -> list[Say]:
        outcome = step(self.state, event, self.now, self.knowledge)
        return self._keep(outcome)

    def _keep(self, outcome: Outcome) -> list[Say]:
        self.state = from_json(to_json(outcome.state))
        says: list[Say] = []
        for action in outcome.actions:
            match action:
                case Remind(key=key):
                    if key not in self.fired:
                        self.rows[key] = DueReminder(
                            key=key, cook_id=action.cook_id, step_id=action.step_id, due_at=action.due_at
                        )
                case CancelReminders(cook_id=cook_id, keys=keys):
                    self.rows = {
                        k: r
                        for k, r in self.rows.items()
                        if r.cook_id != cook_id or (keys is not None and k not in keys)
                    }
                case Say():
                    if action.key:
                        if action.key in self.keys:
                            self.repeats += 1
                            continue
                        self.keys.add(action.key)
                    says.append(action)
        self.heard += [(self.now, say) for say in says]
        return says

    def text(self, words: str) -> str:
        return "\n".join(say.text for say in self.event(TextReceived(text=words)))

    def tap(self, label: str) -> str:
        """Press a button of the latest message that has one whose label begins so."""
        data = next(
            b.data
            for _, say in reversed(self.heard)
            for row in say.buttons
            for b in row
            if b.label.startswith(label)
        )
        return "\n".join(say.text for say in self.event(ButtonPressed(data=data)))

    def fire(self) -> list[Say]:
        """Everything due now comes in one event."""
        due = sorted((r for r in self.rows.values() if r.due_at <= self.now), key=lambda r: (r.due_at, r.key))
        for reminder in due:
            del self.rows[reminder.key]
            self.fired.add(reminder.key)
        return self.event(RemindersDue(reminders=tuple(due))) if due else []

    def wait(self, minutes: float) -> list[str]:
        """Let time pass; returns what was said on the way."""
        until = self.now + timedelta(minutes=minutes)
        said: list[str] = []
        while self.rows and (due_at := min(r.due_at for r in self.rows.values())) <= until:
            self.now = max(self.now, due_at)
            said += [say.text for say in self.fire()]
        self.now = until
        return said

    def sleep(self, minutes: float) -> list[str]:
        """The bot is away: what came due meanwhile comes together."""
        self.now += timedelta(minutes=minutes)
        return [say.text for say in self.fire()]


def cooking(foods: str = "chicken carrot pea") -> Evening:
    """An evening with a cook just begun. Zero is at 17:15, the table at 17:55."""
    evening = Evening()
    evening.text(foods)
    evening.text("start")
    return evening

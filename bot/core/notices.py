"""What the cook reads when the conversation itself cannot speak: failures, repeats, delays."""

from __future__ import annotations

from bot.core.events import DueReminder
from bot.core.state import Chat


def trouble(reference: str) -> str:
    """An event could not be handled; nothing was changed by it."""
    return (
        f"That went wrong on my side (note {reference}), and nothing was changed. "
        "A cook that is running goes on; please put it another way."
    )


def bare_reminder(chat: Chat | None, due: tuple[DueReminder, ...], reference: str) -> str:
    """Due steps in their plain words, when the conversation could not put them better."""
    steps = {step.id: step.text for step in chat.cook.plan.steps} if chat is not None and chat.cook else {}
    texts = [steps[reminder.step_id] for reminder in due if reminder.step_id in steps]
    return "\n".join(texts or ["A step of your cook is due; look at the plan."]) + f"\n(note {reference})"


def started_over(reference: str) -> str:
    """The saved conversation could not be read; it was put aside and a new one begun."""
    return (
        f"I lost the thread of our conversation (note {reference}) and had to begin a new one. "
        "If something is on the heat, go by the plan above."
    )


def as_delivered(text: str, *, maybe_repeat: bool, late_s: float) -> str:
    """A message as it goes out: one held up says so, and one that may have arrived before says that."""
    if late_s > 0.0:
        text = f"{late_s / 60.0:.0f} min late: {text}"
    return f"(you may have this already) {text}" if maybe_repeat else text

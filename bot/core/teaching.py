"""A food that nobody knows: the one question about it, the answer, and the list of lessons."""

from __future__ import annotations

import re
from dataclasses import replace

from bot.core.actions import Button, Outcome, Say
from bot.core.questions import Asked, ask, turn_button
from bot.core.replies import plans, talk
from bot.core.state import Chat
from knowledge import Knowledge

TAUGHT_MAX = 200  # lessons kept for one cook

# Two taps: what kind of thing it is, then what it cooks like. Names of the tables.
FAMILIES: dict[str, tuple[str, ...]] = {
    "Root": ("carrot", "potato", "beet"),
    "Leaf": ("spinach", "cabbage", "kale"),
    "Other vegetable": ("zucchini", "bell pepper", "broccoli"),
    "Meat": ("chicken thigh", "pork chop", "stew beef"),
    "Fish": ("cod", "salmon", "shrimp"),
    "Bean or grain": ("lentil", "rice", "chickpea"),
}
LEAVE_OUT = "Leave it out"
NONE_OF_THESE = "None of these"


def unknown_question(state: Chat, knowledge: Knowledge) -> tuple[Chat, str, tuple[tuple[Button, ...], ...]]:
    """Ask about the first unplaced food: near names if there are any, else what kind of thing it is."""
    phrase = state.unplaced[0].phrase
    near = knowledge.near(phrase)
    asked = ask(state, Asked.FOOD)
    if near:
        rows = (
            tuple(turn_button(name.capitalize(), asked.asked_no, "is", name) for name in near),
            (
                turn_button(NONE_OF_THESE, asked.asked_no, "kinds"),
                turn_button(LEAVE_OUT, asked.asked_no, "leave"),
            ),
        )
        return asked, plans.unknown(phrase, near), rows
    return asked, plans.unknown(phrase, ()), _families(asked.asked_no)


def _families(number: int) -> tuple[tuple[Button, ...], ...]:
    names = list(FAMILIES)
    rows = [
        tuple(turn_button(n, number, "kind", n) for n in names[i : i + 3]) for i in range(0, len(names), 3)
    ]
    return (*rows, (turn_button(LEAVE_OUT, number, "leave"),))


def kinds(state: Chat) -> Outcome:
    """None of the near names: what kind of thing is it?"""
    phrase = state.unplaced[0].phrase
    return Outcome(
        state=state, actions=(Say(text=plans.unknown(phrase, ()), buttons=_families(state.asked_no)),)
    )


def of_kind(state: Chat, family: str, knowledge: Knowledge) -> Outcome:
    """The kind is known: which of its kind does it cook like?"""
    known = [food for name in FAMILIES.get(family, ()) if (food := knowledge.named(name)) is not None]
    row = tuple(turn_button(food.name.capitalize(), state.asked_no, "is", food.name) for food in known)
    rows = (row, (turn_button(LEAVE_OUT, state.asked_no, "leave"),)) if row else _families(state.asked_no)
    return Outcome(
        state=state, actions=(Say(text=plans.unknown_kind(state.unplaced[0].phrase), buttons=rows),)
    )


def learned(state: Chat, name: str, food_id: str) -> Chat:
    """The lesson, kept for this cook; a later one about the same name replaces it."""
    kept = tuple(pair for pair in state.profile.taught if pair[0] != name)
    taught = (*kept, (name, food_id))[-TAUGHT_MAX:]
    return replace(state, profile=replace(state.profile, taught=taught))


_FORGET = re.compile(
    r"^\W*(?:please |now )?(?:forget|unlearn|delete|remove)(?: about| what| the (?:food|lesson)(?: about)?)? "
    r"(?P<name>.+?)(?: is| means| please| again)?\W*$",
    re.IGNORECASE,
)


def to_forget(state: Chat, text: str) -> str | None:
    """The lesson that a text asks to forget, by its name as it was taught; None if it asks for none."""
    match = _FORGET.match(text)
    named = match["name"].lower().strip(" “”\"'") if match is not None else ""
    return next((name for name, _ in state.profile.taught if name.lower() == named), None)


def forgotten(state: Chat, name: str) -> Outcome:
    """A lesson, forgotten."""
    kept = tuple(pair for pair in state.profile.taught if pair[0] != name)
    state = replace(state, profile=replace(state.profile, taught=kept))
    return Outcome(state=state, actions=(Say(text=talk.lesson_forgotten(name)),))

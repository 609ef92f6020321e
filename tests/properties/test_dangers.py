"""Each cue of each danger of the table, in whatever frame it is asked, is answered as the danger asks."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import cycle

from knowledge.answers import ask
from knowledge.answers.dangers.net import HELP, Danger, dangers, deals_with, met_by
from knowledge.answers.reading.question import question_of
from knowledge.foods.store import Store
from knowledge.planner.model import Kitchen

FRAMES = ("{} is that safe", "what do you say to {} then", "well {}")
OF_A_KIND = {"@meat": "pork", "@animal": "salmon"}


def cues(danger: Danger) -> Iterator[str]:
    """The words of each wanted clause, the others by their first word."""
    wanted = [[_plain(word) for word in words] for is_wanted, words in danger.when if is_wanted]
    for place, clause in enumerate(wanted):
        for word in clause:
            yield " ".join(word if place == n else other[0] for n, other in enumerate(wanted))


def _plain(word: str) -> str:
    return OF_A_KIND.get(word, word).replace("_", " ").strip()


def test_no_cue_of_a_danger_is_passed_over(store: Store) -> None:
    passed_over: list[tuple[str, str, str]] = []
    met = 0
    for danger in dangers(store):
        for cue, frame in zip(cues(danger), cycle(FRAMES), strict=False):  # in turn: all take minutes
            text = frame.format(cue)
            found = met_by(question_of(text, store=store, kitchen=Kitchen()))
            if danger not in found:
                continue  # a cue that rules the danger out: "tin" and "baking tin"
            met += 1
            said = ask(text, store=store)
            if not (said.known and _worst_is_dealt_with(found, said.answer.lower())):
                passed_over.append((danger.id, text, said.answer))
    assert met > 1000
    assert passed_over == []


def _worst_is_dealt_with(found: tuple[Danger, ...], said: str) -> bool:
    """One answer deals with the worst danger that it did not deal with before; none is left unspoken."""
    return any(call in said for call in HELP) or any(deals_with(danger, said) for danger in found)

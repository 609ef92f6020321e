"""A core that was read is judged first, whoever eats and whatever else is named; what is cold and sealed.

Figures: USDA FSIS minima and Appendix A, FDA on fish in packs without air; the wordings are our own.
"""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store

# what was asked, how the answer begins, what it holds
VERDICTS = [
    ("veal chop hit 146F and has rested 4 minutes, rosy, may we eat it?", "Yes", "3 min rest"),
    ("beef joint was 62C when i rested it, is that enough", "No", "63 °C"),
    ("pull the venison at 54C for medium rare, it will coast up", "No", "71 °C"),
    ("thermometer says 58 °C, take the lamb rack off for medium?", "No", "63 °C"),
    ("thickest bit of my turkey crown reads 71C done?", "No", "74 °C"),
    ("pork steak is 57C and my wife is pregnant, all right?", "No", "63 °C"),
    ("cod at 64C for my grandma, safe?", "Yes", "63 °C"),
    ("goat on the bone in big cubes for a stew, what temperature is done", "Goat", "63 °C"),
    ("turkey breast core 64C for 30 minutes, safe?", "Yes", "Appendix A"),
    ("turkey breast core 60C for 2 minutes, safe?", "No", "74 °C"),
    (
        "haddock thawed in the fridge still sealed in its vacuum pack, can we eat it",
        "Throw it away",
        "otulism",
    ),
    ("where do i put raw mince in the fridge", "Raw meat", "lowest shelf"),
]


@pytest.mark.parametrize(("text", "begins", "holds"), VERDICTS)
def test_the_verdict_comes_first(store: Store, text: str, begins: str, holds: str) -> None:
    answer = ask(text, store=store)
    assert answer.known
    assert answer.answer.startswith(begins), answer.answer
    assert holds in answer.answer


NEAR_MISSES = [
    ("lamb chop at 63C, can i serve it straight away without a rest", "Yes"),
    ("how long should a gammon rest once it is 64C inside", "enough"),
    ("how do i thaw salmon in a vacuum pack", "Throw it away, unless"),
    ("cooked duck held at 64C for 30 minutes at the buffet", "Appendix A"),
    ("which oven shelf for a raw chicken", "lowest shelf"),
    ("oven at 180C, turkey for grandma, how many hours", "below the safe minimum"),
]


@pytest.mark.parametrize(("text", "must_not"), NEAR_MISSES)
def test_what_only_sounds_alike_is_answered_for_itself(store: Store, text: str, must_not: str) -> None:
    assert must_not not in ask(text, store=store).answer

"""What a dish, a cut or a thing of the kitchen is, as it is asked from Lagos to Lima."""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store

TOLD = [
    ("what is a china cap used for", "conical sieve"),
    ("what's oyster blade called in Britain", "feather blade"),
    ("us equivalent of topside please", "top (inside) round"),
    ("what do americans call silverside", "bottom (outside) round"),
    ("what is entrana in english", "diaphragm"),
    ("explain autolyse", "before salt and yeast"),
    ("what is twarog, is it similar to ricotta", "curd cheese"),
    ("what does docking mean in baking", "fork"),
    ("what is a denver steak", "shoulder blade"),
    ("difference between praline and nougat", "caramel"),
    ("is rump cap the same as picanha", "Two names of one kind"),
    ("whats a flame tamer", "spreads the heat"),
    ("what is black seed", "not cumin"),
    ("tell me about uruli", "diffuser"),
    ("what is quark", "sour curd"),
]


@pytest.mark.parametrize(("asked", "said"), TOLD)
def test_a_term_is_explained(store: Store, asked: str, said: str) -> None:
    answer = ask(asked, store=store)
    assert answer.known
    assert said in answer.answer


def test_two_things_are_told_side_by_side(store: Store) -> None:
    told = ask("onglet vs picanha", store=store).answer
    assert "hanger steak" in told
    assert "rump cap" in told


OF_OTHER_THINGS = [
    ("what is the safe temperature for brisket", "63 °C"),
    ("what is the best swap for double cream", "Instead of"),
    ("what is in marzipan that could hurt a nut allergy", "nut"),
    ("how long does rump steak keep", "fridge"),
]


@pytest.mark.parametrize(("asked", "said"), OF_OTHER_THINGS)
def test_a_name_in_another_question_is_not_explained(store: Store, asked: str, said: str) -> None:
    answer = ask(asked, store=store).answer
    assert said in answer
    assert "Britain" not in answer

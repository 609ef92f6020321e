"""Thawed, frozen again, or frozen with no time to wait."""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store


@pytest.mark.parametrize(
    ("question", "first"),
    [
        ("Can I put defrosted raw duck back into the freezer?", "Only if it thawed in the fridge"),
        ("raw squid thawed in the fridge, may it be frozen again", "By USDA FSIS yes"),
        ("I thawed kangaroo under the tap, freeze it again?", "Cook it first"),
        ("defrosted mince in the microwave then cooked it and want to freeze it again", "Yes: once cooked"),
        ("refreeze gelato that melted?", "No"),
    ],
)
def test_frozen_again_by_how_it_thawed(store: Store, question: str, first: str) -> None:
    assert ask(question, store=store).answer.startswith(first)


def test_raw_meat_to_be_frozen_once_is_no_question_of_freezing_again(store: Store) -> None:
    assert "months in the freezer" in ask("can you freeze raw duck breast", store=store).answer


@pytest.mark.parametrize(
    "question",
    [
        "forgot to take the lamb chops out of the freezer, fastest way to thaw them?",
        "pork tenderloin is frozen solid and it's for dinner tonight, still frozen, what now",
    ],
)
def test_no_time_to_thaw_gets_cold_water_first(store: Store, question: str) -> None:
    assert ask(question, store=store).answer.startswith("Quickest and safe: in cold water")


def test_thawing_in_water_goes_by_the_weight_30_minutes_a_pound(store: Store) -> None:
    said = ask("How long does a 4 kg goose take to defrost?", store=store).answer
    assert "about 4.5 hours" in said  # 8.8 lb at 30 minutes (USDA FSIS)


@pytest.mark.parametrize(
    ("question", "first"),
    [
        ("May I freeze lamb chops on the day of their use-by?", "Yes, up to midnight"),
        ("use by was two days ago, freeze the turkey mince?", "No: after its use-by"),
        ("sausages have a use by of today, cook them tonight ok?", "Yes, until midnight"),
    ],
)
def test_the_use_by_day_counts_until_midnight(store: Store, question: str, first: str) -> None:
    assert ask(question, store=store).answer.startswith(first)

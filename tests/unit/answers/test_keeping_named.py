"""How long it keeps: of what was named, opened or not, and nothing from a neighbour's row."""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store


@pytest.mark.parametrize(
    ("question", "begins"),
    [
        ("moussaka in the freezer, how long", "Moussaka"),
        ("how many days do curry leaves last", "Curry leaves"),
        ("coriander prawns how long in the fridge", "Prawns"),
        ("how long do rolled oats keep", "Rolled oats: dry"),
        ("does ghee need refrigeration", "No: ghee"),
        ("unopened kefir how long", "Kefir, unopened: to the date"),
        ("opened tub of ricotta how many days", "Ricotta, once opened"),
        ("can you freeze tamales", "Yes: tamales"),
        ("may I freeze iceberg lettuce", "Better not: iceberg"),
    ],
)
def test_the_answer_is_of_what_was_named(store: Store, question: str, begins: str) -> None:
    assert ask(question, store=store).answer.startswith(begins)


@pytest.mark.parametrize(
    "question", ["where to keep shallots", "how long does stockfish keep", "pierogi freezer how long"]
)
def test_no_figure_of_another_row(store: Store, question: str) -> None:
    said = ask(question, store=store).answer
    assert "soups" not in said
    assert not ("not in the fridge" in said and "In the fridge" in said)


def test_what_was_cooked_long_ago_is_not_told_the_shelf_life_of_the_packet(store: Store) -> None:
    assert ask("cooked my lentils a week ago, still ok to eat?", store=store).answer.startswith("No")

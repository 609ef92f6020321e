"""Every swap of the table against the allergen answers: none is offered that they do not clear."""

from __future__ import annotations

import re
from functools import cache

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store

# EU 1169/2011 annex II, as people say it
ALLERGENS = ("milk", "egg", "fish", "shellfish", "nut", "peanut", "gluten", "soy", "sesame", "celery",
             "mustard", "sulphite")  # fmt: skip


@pytest.mark.parametrize("allergen", ALLERGENS)
def test_no_swap_is_offered_that_the_allergen_answer_does_not_clear(store: Store, allergen: str) -> None:
    @cache
    def verdict(name: str) -> str:
        """ "Yes", "No" or "Not surely", in the answer's own word."""
        said = ask(f"is {name} ok for {allergen} allergy", store=store)
        return re.split(r"[:,.]| \w+ free", said.answer)[0] if said.known else "unknown"

    names = sorted({row["food_id"] for row in store.table("substitutions")})
    for food_id in names:
        name = store.food(food_id).name
        said = ask(f"{allergen} allergy, what can i use instead of {name}", store=store).answer
        if not said.startswith("Instead of"):
            continue  # told in words of its own
        ideas = said.split(". ")[0].partition(": ")[2]
        only = re.search(r"Only one labelled free of [\w ,]+: ([^.]+)\.", said)
        labelled = set(only[1].split(", ")) if only else set()
        for idea in re.sub(r" \([^)]*\)", "", ideas).split("; "):
            for offered in idea.split(", "):
                food = store.named(offered)
                if food is None or food.id == food_id:
                    continue
                found = verdict(offered)
                assert found != "No", (name, offered, said)
                assert found != "Not surely" or offered in labelled, (name, offered, said)


@pytest.mark.parametrize(
    ("text", "never", "must"),
    [  # miso and doenjang are often brewed with barley or wheat, margarine with soy (allergens_said.csv)
        ("my wife is allergic to fish: what can stand in for oyster sauce", r"\bmiso \(", "label"),
        ("wheat allergy, replacement for miso please", r"doenjang \(", "label"),
        ("swap for butter, he reacts to soya", r"margarine \(", "olive oil"),
        ("fish allergy: would miso do in place of salt", r"Miso \(has", "Not miso: it may hold fish"),
    ],
)
def test_what_may_hold_it_is_no_swap(store: Store, text: str, never: str, must: str) -> None:
    said = ask(text, store=store).answer
    assert not re.search(never, said), said
    assert must in said, said


def test_what_may_be_in_a_swap_is_told_to_everybody(store: Store) -> None:
    assert "margarine has milk and may hold soybeans" in ask("what instead of butter", store=store).answer


def test_a_thing_that_is_missing_is_not_ruled_out_of_its_own_swap(store: Store) -> None:
    for text in ("no yogurt, what can i use", "no eggs in the house, what can i use to bind burgers"):
        said = ask(text, store=store).answer
        assert said.startswith("Instead of"), said
        assert "leave out" not in said

"""A direction of flavour in one line: from one family, what most kitchens have, nothing that is not eaten."""

from __future__ import annotations

from dataclasses import replace

import pytest

from bot.commands.plan import plan_json
from knowledge.flavours import families_for
from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.model import Have, Plan, Request
from knowledge.text.normalise import key


def hinted(store: Store, *foods: str, **more: object) -> Plan:
    request = replace(Request(have=tuple(Have(food_id=f) for f in foods)), **more)  # type: ignore[arg-type]
    made = plan(request, store=store)
    assert isinstance(made, Plan)
    return made


def named(line: str, store: Store) -> set[str]:
    """Ids of the foods that a line names."""
    return {
        row["id"]
        for row in store.table("cupboard")
        if f" {key(store.food(row['id']).name)} " in f" {key(line)} "
    }


@pytest.mark.parametrize(
    "foods",
    [
        ("chicken-thigh", "potato", "carrot"), ("lentil", "carrot", "celery"),
        ("ground-beef", "onion", "tomato"), ("pork-chop", "apple", "cabbage"),
    ],
)  # fmt: skip
def test_two_or_three_things_of_one_family(store: Store, foods: tuple[str, ...]) -> None:
    line = hinted(store, *foods).flavour
    assert line.startswith("If you have them: ")
    told = named(line, store) - {*foods}  # "with the onion" names what is there
    assert 2 <= len(told) <= 3
    families = [{*f.aromatics, *f.spices, *f.acids, *f.finish} for f in families_for(foods, store=store)]
    assert any(told <= family for family in families)


def test_what_is_not_eaten_is_not_suggested(store: Store) -> None:
    foods = ("ground-beef", "tomato", "onion")
    bare = named(hinted(store, *foods).flavour, store)
    for request in ({"allergies": ("milk",)}, {"diets": ("vegan",)}, {"excluded": tuple(bare)}):
        told = named(hinted(store, *foods, **request).flavour, store)
        assert not any("milk" in store.food(f).allergens for f in told) or "excluded" in request
        assert "excluded" not in request or not told & bare


def test_a_cook_with_a_direction_hears_nothing(store: Store) -> None:
    assert hinted(store, "shrimp", "pasta", "garlic", "chili-flakes", "lemon", "parsley").flavour == ""


def test_it_is_no_step_and_no_assumption(store: Store) -> None:
    made = hinted(store, "chicken-thigh", "potato", "carrot")
    for food_id in named(made.flavour, store):
        name = store.food(food_id).name
        assert not any(name in s.text for s in made.steps)
        assert not any(name in a for a in made.assumed)
    assert plan_json(made)["flavour"] == made.flavour


@pytest.mark.parametrize(
    ("foods", "bars"),
    [
        (("tofu", "bok-choy", "soy-sauce", "ginger", "garlic"), {"thyme", "mustard", "parmesan", "oregano"}),
        (("ground-beef", "bean", "onion", "cumin"), {"parmesan", "mustard"}),
        (("chickpea", "spinach", "onion", "turmeric"), {"parmesan", "oregano", "thyme", "soy-sauce"}),
    ],
)
def test_the_line_goes_on_where_the_cook_is_going(
    store: Store, foods: tuple[str, ...], bars: set[str]
) -> None:
    assert not named(hinted(store, *foods).flavour, store) & bars

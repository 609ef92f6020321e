"""Swaps by the name said, dishes made without, and where allergens hide.

Yeast by weight, self-raising flour, fat of creams: common practice of bakers and dairies.
"""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store


@pytest.mark.parametrize(
    ("text", "names"),
    [
        ("we've no buttermilk, what could i use for scones", "lemon juice or vinegar"),
        ("no yeast for focaccia", "sourdough"),
        ("i'm short of double cream, chicago", "heavy cream (36 %)"),
        ("golden syrup equivalent for an American", "corn syrup"),
        ("couldn't find caster sugar for the curd", "superfine"),
        ("what is icing sugar called in america", "powdered"),
        ("replacement for self raising flour?", "baking powder"),
        ("no makrut lime leaves here, substitute?", "zest of half a lime"),
        ("alternative to habanero or what instead of scotch bonnet", "habanero"),
        ("can't get ogbono, what could stand in for it", "okra"),
        ("egusi substitute please", "pumpkin seed"),
        ("out of palm sugar", "brown sugar"),
        ("what can be used instead of pandan leaves", "vanilla"),
    ],
)
def test_the_nearest_is_told_first_by_the_name_said(store: Store, text: str, names: str) -> None:
    answer = ask(text, store=store).answer
    assert names in answer, answer
    assert "By what you said" not in answer


@pytest.mark.parametrize(
    ("text", "never"),
    [
        ("sesame allergy: substitute for nigella seeds", "sesame ("),
        ("vegan swap for double cream", "heavy cream"),
        ("her shellfish allergy, belacan replacement", "Instead of belacan: nothing"),
        ("can i sub leek for onion", "Instead of leek"),
        ("no nuts for the toddler's cake", "Instead of nuts: almond"),
        ("no cream of tartar, what can i use", "Instead of cream"),
    ],
)
def test_what_is_near_but_not_meant_is_not_told(store: Store, text: str, never: str) -> None:
    assert never not in ask(text, store=store).answer


@pytest.mark.parametrize(
    ("text", "names"),
    [
        ("eggless pavlova", "tinned chickpeas"),
        ("how would you make a nut free frangipane", "sunflower"),
        ("gluten-free gravy recipe", "cornstarch"),
        ("macaroni cheese without dairy", "nutritional yeast"),
        ("mayo with no egg", "soy milk"),
        ("ran out of eggs, making meatballs", "breadcrumbs"),
        ("instead of egg in french toast", "gram flour"),
        ("dairy free butter", "Instead of butter: olive oil"),
    ],
)
def test_a_dish_without_it_is_a_wish(store: Store, text: str, names: str) -> None:
    answer = ask(text, store=store).answer
    assert names in answer, answer
    assert not answer.startswith("No")


def test_a_verdict_on_the_dish_comes_before_the_way_to_make_it(store: Store) -> None:
    answer = ask("is romesco nut free", store=store).answer
    assert answer.startswith("No, not safe: romesco has tree nuts")
    assert "Without nuts:" in answer


def test_chickpea_foam_is_told_with_its_kin(store: Store) -> None:
    answer = ask("egg free meringues, and the guest reacts to peanuts", store=store).answer
    assert "legume" in answer
    assert "doctor" in answer


@pytest.mark.parametrize(
    ("text", "names"),
    [
        ("where does celery hide", "stock cubes"),
        ("hidden mustard in foods?", "curry powder"),
        ("my lad has a sesame allergy, which foods should we avoid", "tahini"),
        ("what foods contain lupin", "gluten-free"),
        ("other names for milk on labels", "casein"),
        ("unexpected sources of gluten for a coeliac", "soy sauce"),
    ],
)
def test_where_an_allergen_hides(store: Store, text: str, names: str) -> None:
    assert names in ask(text, store=store).answer


@pytest.mark.parametrize("text", ["which fish to avoid in pregnancy", "does pesto hide in the fridge well"])
def test_what_to_avoid_for_another_reason_is_no_list_of_labels(store: Store, text: str) -> None:
    assert "On the label look for" not in ask(text, store=store).answer


def test_each_of_the_fourteen_has_its_hidden_sources(store: Store) -> None:
    """EU 1169/2011 annex II: fourteen groups."""
    barred = {row["barred"] for row in store.table("hidden_sources")}
    assert barred >= {
        "no gluten", "no crustacean", "no egg", "no fish", "no peanut", "no soy", "no dairy", "no tree nut",
        "no celery", "no mustard", "no sesame", "no sulphite", "no lupin", "no mollusc",
    }  # fmt: skip

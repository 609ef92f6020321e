"""Nothing that is asked or told is dropped: both halves, both units, the amounts, how thin the meat is."""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        # USDA FSIS: a closed fridge holds 4 hours, what has ice in the freezer may be refrozen.
        (
            "current was off for 8 hours, the freezer still has ice. and the refrigerator?",
            ("freezer: Yes", "fridge: No"),
        ),
        ("200 c in fahrenheit and gas mark please", ("392 °F", "gas mark 6")),
        ("how many teaspoons and ml are in a quarter cup", ("12 teaspoons", "59.1 millilitres")),
        ("how many tsp in half a cup and in ml", ("24 teaspoons", "118 millilitres")),
        ("dish serves 6, I need 15, 4 tins of beans", ("by 2.50", "4 tins becomes 10 tins")),
        ("12 people instead of 4, 2 tins of tomatoes and 500 g of lamb", ("500 g becomes 1500 g",)),
        ("scale 5 servings to 12, 400 g chicken", ("400 g becomes 960 g",)),
    ],
)
def test_both_halves_are_answered(store: Store, text: str, wanted: tuple[str, ...]) -> None:
    said = ask(text, store=store).answer
    assert all(word in said for word in wanted), said


@pytest.mark.parametrize(
    ("text", "never"),
    [
        ("my mother wants to try the cod pie", "Weevils"),
        ("time for split peas on the hob, no pressure cooker", "pressure"),
        ("how long do I simmer haricot beans without an instant pot", "pressure"),
        ("a freezer that was off for 5 hours, still icy", "The fridge:"),
        ("two 9 inch rounds into a 9x13 inch tin for 12 people", "From 9 to 12"),
    ],
)
def test_a_word_does_not_decide_alone(store: Store, text: str, never: str) -> None:
    assert never not in ask(text, store=store).answer


@pytest.mark.parametrize("cut", ["thin strips of beef", "thinly sliced pork", "velveted chicken"])
def test_meat_in_thin_strips_takes_minutes(store: Store, cut: str) -> None:
    said = ask(f"how many minutes in the wok for {cut}", store=store).answer
    assert "3 mm 1" in said  # a stir-fry's usual 1-4 minutes at 3-8 mm (common practice)
    assert "h (" not in said


def test_a_pork_chop_is_not_in_strips(store: Store) -> None:
    assert "3 mm" not in ask("how long to fry pork chops", store=store).answer


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("paysanne vs brunoise", ("flat pieces", "3 mm")),
        ("brunoise or julienne, whats the difference", ("dice of 3 mm", "sticks of 3 mm")),
        ("is gochugaru the same as gochujang", ("flakes", "paste")),
        ("are polenta and grits the same thing", ("yellow", "white")),
        ("how is a macaron different from a macaroon", ("almond flour", "coconut")),
        ("difference between tempering and blooming spices in a dal", ("crackled", "at the start")),
        ("distinction between use by and best before", ("safety", "quality")),  # UK FSA; one card for both
    ],
)
def test_two_things_are_told_side_by_side(store: Store, text: str, wanted: tuple[str, ...]) -> None:
    said = ask(text, store=store).answer.lower()
    assert all(word in said for word in wanted), said


def test_two_names_of_one_food_are_one(store: Store) -> None:
    assert "also called camote" in ask("is camote the same as sweet potato", store=store).answer


def test_a_difference_for_an_eater_is_of_what_is_in_it(store: Store) -> None:
    said = ask("is malt vinegar different from vinegar for a coeliac", store=store).answer
    assert said.startswith("No, not safe")


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("3 leaves of gelatine in agar powder, how much", "1/4 tsp"),  # 2-3 g for 4-5 leaves, common practice
        ("use gelatin powder for agar in a jelly", "1 tbsp"),
        ("cornstarch in place of flour for a gravy", "1 tbsp for 2 tbsp"),
        ("teff batter has no bubbles after 24 hours at 16 degrees", "4-5 days"),
        ("how wet is ciabatta dough in percent", "water 75-85"),
        ("can light cream be whipped, or do I need another", "30 %"),
        ("no tagine at home, don't have a tagine, how do I cook it", "lidded|lid"),
        ("how long to velvet pork with cornflour", "20-30 minutes"),
        ("mole poblano is bitter, how to save it", "sugar"),
        ("my loaf is dense and heavy, 400 g flour, 250 g water, what went wrong", "Too little rise"),
        ("how do I stop dill from going slimy", "damp paper"),
        ("roast turkey 2 days in the fridge, still good for sandwiches", "turkey"),
        ("tagliatelle of 300 g flour, how many eggs", "3 eggs"),
        ("baguette hydration? 65? 70?", "water 65-75"),
    ],
)
def test_the_thing_asked_decides_the_way(store: Store, text: str, wanted: str) -> None:
    said = ask(text, store=store).answer
    assert any(word in said for word in wanted.split("|")), said


@pytest.mark.parametrize(
    "text", ["what did I put in the stew last friday", "how much salt did my gran use in the ham"]
)
def test_what_was_done_is_not_known(store: Store, text: str) -> None:
    assert not ask(text, store=store).known


@pytest.mark.parametrize(
    "text",
    [
        "halfway through a cake and there's no buttermilk in the house, need 2 cups",
        "making soda bread there is no buttermilk left",
    ],
)
def test_what_is_not_in_the_house_is_replaced(store: Store, text: str) -> None:
    assert "lemon juice or vinegar" in ask(text, store=store).answer


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("no calamansi here, what can I use", "lime juice"),
        ("replacement for zereshk", "cranberries"),
        ("how many days does chicken adobo keep in the fridge", "2 days"),  # UK FSA: cooked dishes
        ("fridge life of doenjang jjigae", "2 days"),
        ("my sauerkraut is not sour after a week", "Give it time"),
        ("varenyky dough flour to water ratio", "250-280 ml"),
        ("tahdig came out soft", "fat"),
        ("jollof vs fried rice", "one pot"),
        ("time for pork belly, I have no pressure cooker", "lid"),
    ],
)
def test_questions_of_other_kitchens(store: Store, text: str, wanted: str) -> None:
    assert wanted in ask(text, store=store).answer


@pytest.mark.parametrize(
    ("text", "never"),
    [
        ("how much water for chicken tinola for 6 people", "of drink"),
        ("spring roll wrappers keep cracking", "in the fridge"),
        ("time for pork belly, I have no pressure cooker", "pressure"),
    ],
)
def test_neither_a_drink_nor_a_fridge_is_meant(store: Store, text: str, never: str) -> None:
    assert never not in ask(text, store=store).answer


def test_a_pudding_is_kept(store: Store) -> None:
    assert "fridge" in ask("how long can I keep rice pudding", store=store).answer

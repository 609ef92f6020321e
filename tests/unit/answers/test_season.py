"""Seasons, places to store, slips of spelling and other ways to ask."""

from __future__ import annotations

import re

import pytest

from knowledge.answers import ask
from knowledge.answers.lore.season import in_words
from knowledge.answers.reading.spelling import corrected
from knowledge.foods.model import Role
from knowledge.foods.store import Store


@pytest.mark.parametrize(
    ("months", "words"),
    [("6-9", "June to September"), ("11-3", "November to March"), ("all year", "all year")],
)
def test_months_are_said_in_words(months: str, words: str) -> None:
    assert in_words(months) == words


def test_vegetables_and_fruit_have_a_season(store: Store) -> None:
    fresh = ("root", "tender leaf", "tough leaf", "squash", "summer squash", "brassica", "cabbage", "fruit")
    for food in store.foods():
        if food.group in fresh and food.start_state == "fridge":
            assert food.season, food.id
            assert dict(food.sources)["season"]


@pytest.mark.parametrize(  # temperate north, common practice, no source
    ("food", "inside", "outside"),
    [
        ("asparagus", "may", "november"),
        ("leeks", "january", "july"),
        ("strawberries", "june", "december"),
        ("pumpkin", "october", "may"),
        ("corn", "august", "march"),
    ],
)
def test_a_month_is_in_season_or_not(store: Store, food: str, inside: str, outside: str) -> None:
    assert ask(f"are {food} in season in {inside}", store=store).answer.startswith("Yes")
    assert ask(f"are {food} in season in {outside}", store=store).answer.startswith("No")


def test_a_month_lists_its_foods(store: Store) -> None:
    answer = ask("what is in season in may", store=store)
    assert answer.known
    assert "asparagus" in answer.answer
    assert "pumpkin" not in answer.answer


@pytest.mark.parametrize(
    ("text", "word"),
    [("where should i keep potatoes", "dark"), ("do tomatoes go in the fridge", "room temperature"),
     ("how should i store fresh basil", "glass of water"), ("where to store mussels", "damp cloth")],
)  # fmt: skip
def test_a_place_is_named_when_a_place_is_asked(store: Store, text: str, word: str) -> None:
    assert word in ask(text, store=store).answer


def test_slips_are_put_right_and_strange_words_stay(store: Store) -> None:
    assert corrected(["temprature", "chikcen", "parsnps"], store) == ["temperature", "chicken", "parsnip"]
    assert corrected(["flonkroot", "parsnip", "rigatoni"], store) == ["flonkroot", "parsnip", "rigatoni"]


def test_every_food_s_own_name_is_left_as_it_is(store: Store) -> None:
    for food in store.foods():
        words = re.findall(r"[a-z]+", food.name)
        assert corrected(words, store) == words, food.id


def test_two_weekdays_give_an_age(store: Store) -> None:
    old = ask("i cooked the chicken on monday, it's friday now, is it ok", store=store).answer
    fresh = ask("i cooked the chicken on thursday, it's friday, ok to eat?", store=store).answer
    assert old.startswith("No")
    assert fresh.startswith("Yes, if")


@pytest.mark.parametrize("name", ["kidney beans", "cassava", "chicken", "pork", "potato", "eggs", "taro"])
def test_what_must_be_cooked_is_not_called_fit_to_eat_raw(store: Store, name: str) -> None:
    answer = ask(f"can you eat {name} raw", store=store).answer
    assert not answer.startswith("Yes"), answer


def test_no_animal_food_is_ever_called_fit_to_eat_raw(store: Store) -> None:
    for food in store.foods():
        if food.safety and food.role is Role.COOK and food.doneness != "warm_through":
            answer = ask(f"is raw {food.name} safe to eat", store=store).answer
            assert not answer.startswith("Yes"), (food.id, answer)


# Ready-made food differs from maker to maker: no promise is made for it.
@pytest.mark.parametrize("food", ["miso", "sausages", "curry paste", "stock cube", "ketchup", "meatballs"])
def test_ready_made_food_is_never_promised_free_of_gluten(store: Store, food: str) -> None:
    assert not ask(f"is {food} gluten free", store=store).answer.startswith("Yes")


@pytest.mark.parametrize(
    "name", ["yogurt", "butter", "sour cream", "creme fraiche", "paneer", "mascarpone", "kefir"]
)
def test_a_swap_without_milk_never_offers_milk(store: Store, name: str) -> None:
    answer = ask(f"dairy free swap for {name} in curry", store=store).answer
    offered = answer.split(":", 1)[-1].split(". ")[0].replace("without milk", "")
    for food in sorted(store.foods(), key=lambda food: -len(food.name)):  # "coconut yogurt" is none
        if "milk" not in food.allergens:
            offered = offered.replace(food.name, "")
    for food in store.foods():
        if "milk" in food.allergens and food.name != name:
            assert not re.search(rf"(?<![\w-]){re.escape(food.name)}(?![\w-])", offered), answer


@pytest.mark.parametrize("name", ["roast potatoes", "mashed potatoes", "grilled chicken", "boiled carrots"])
def test_cooked_food_never_gets_the_days_of_raw_food(store: Store, name: str) -> None:
    days = re.search(r"(\d+) (day|week)s? in the fridge", ask(f"how long do {name} keep", store=store).answer)
    assert days
    assert days[2] == "day"
    assert int(days[1]) <= 2  # UK FSA: leftovers within two days


@pytest.mark.parametrize("name", ["pine nuts", "almonds", "walnuts", "cashews", "peanut butter", "tahini"])
@pytest.mark.parametrize(
    "way", ["nut free alternative to {}", "substitute for {}, nut allergy", "instead of {} without nuts"]
)
def test_a_swap_without_nuts_never_offers_nuts(store: Store, name: str, way: str) -> None:
    answer = ask(way.format(name), store=store).answer
    offered = answer.split(":", 1)[-1].split(". ")[0]
    own = store.named(name)
    for food in store.foods():
        if food.group == "nut" and food is not own:
            assert not re.search(rf"(?<![\w-]){re.escape(food.name)}(?![\w-])", offered), answer


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("mango season in the philippines", "March to June"),
        ("when is strawberry season in wales", "May to September"),
        ("are avocados in season in may in peru", "Yes"),
        ("cherries season chile", "November to January"),
        ("are tomatoes in season in july in new zealand", "No"),
        ("leek season south africa", "March to October"),
        ("which month is ilish best in bangladesh, what month", "July to October"),
        ("what fruit is in season in january in argentina", "peach"),
        ("best month for ramsons", "flowers"),
    ],
)
def test_a_season_is_that_of_the_place(store: Store, asked: str, said: str) -> None:
    answer = ask(asked, store=store)
    assert answer.known
    assert said in answer.answer


def test_a_month_lists_what_every_market_has_first(store: Store) -> None:
    told = ask("what veg is in season in november in scotland", store=store).answer
    assert {"kale", "parsnip"} <= set(re.findall(r"[a-z]+", told))
    assert "arrowhead" not in told


@pytest.mark.parametrize(
    "asked", ["how do i season mango salad", "how to season a wok", "season the lamb how"]
)
def test_to_season_is_no_season(store: Store, asked: str) -> None:
    assert "June" not in ask(asked, store=store).answer

"""One food that is said twice is one, and every amount goes to the food it was said of."""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.text import read


def said(store: Store, text: str) -> list[tuple[str, float | None, str | None, float | None]]:
    return [(i.name, i.qty, i.unit, i.grams) for i in read(text, store=store).items]


@pytest.mark.parametrize(
    ("text", "qty", "grams"),
    [
        ("3 trout fillets, 140 g apiece, leeks", 3, 420),
        ("5 duck breasts of about 180 g each, leeks", 5, 900),
        ("2 hake fillets of 150 g, leeks", 2, 300),
        ("lamb steaks 2 (170g ea), leeks", 2, 340),
        ("4 sausages at 90 g per piece, leeks", 4, 360),
        ("3 burgers à 120 g, leeks", 3, 360),
        ("200 g steaks x3, leeks", 3, 600),
        ("4 tuna steaks 600 g, leeks", 4, 600),  # LABELS: count and weight together, the weight is the total
    ],
)
def test_a_weight_of_each_is_multiplied(store: Store, text: str, qty: float, grams: float) -> None:
    first = read(text, store=store).items[0]
    assert (first.qty, first.grams) == (qty, grams)


def test_each_of_a_list(store: Store) -> None:
    read_as = said(store, "120g each of peas, corn and spinach, leeks")
    assert [(name, grams) for name, _, _, grams in read_as] == [
        ("pea", 120), ("corn", 120), ("spinach", 120), ("leek", None),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("a white cabbage half, rice", ("cabbage", 0.5)),
        ("celeriac (half), rice", ("celery root", 0.5)),
        ("an onion half a leek, rice", ("onion", 1)),
    ],
)
def test_a_part_said_behind_the_food(store: Store, text: str, expected: tuple[str, float]) -> None:
    first = read(text, store=store).items[0]
    assert (first.name, first.qty) == expected


@pytest.mark.parametrize(
    ("text", "rough"),
    [
        ("a splash of wine, leeks", "little"),
        ("drizzle of honey, leeks", "little"),
        ("a little cream, leeks", "little"),
        ("loads of spinach, leeks", "plenty"),
        ("little gem 2, leeks", None),
        ("some rice, leeks", None),
    ],
)
def test_a_little_and_a_lot_are_told_apart(store: Store, text: str, rough: str | None) -> None:
    assert read(text, store=store).items[0].rough == rough


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("no crust: 4 eggs, leeks", ["egg", "leek"]),
        ("not allowed: peanuts. tofu, rice", ["tofu", "rice"]),
        ("missing: milk, eggs\nhave: rice", ["rice"]),
        ("no eggs, no milk: rice and peas", ["rice", "pea"]),
    ],
)
def test_a_no_ends_with_its_clause(store: Store, text: str, expected: list[str]) -> None:
    assert [i.name for i in read(text, store=store).items] == expected


@pytest.mark.parametrize("face", [":(", ":-(", ":)", ";-)", ":D", "xD", ":'(", "^^", ":/"])
def test_faces_are_no_brackets(store: Store, face: str) -> None:
    expected = [("split pea", 300), ("leek", None), ("bacon", None)]
    read_as = said(store, f"300g split peas {face}, leeks {face} and bacon {face}")
    assert [(name, grams) for name, _, _, grams in read_as] == expected


def test_a_bracket_behind_a_colon_is_one(store: Store) -> None:
    assert [i.name for i in read("in the fridge:(leeks, 2 eggs)", store=store).items] == ["leek", "egg"]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("meatballs (home made, raw pork, 400g), leeks", ["meatball", "leek"]),
        ("zucca (pumpkin) 600g, leeks", ["pumpkin", "leek"]),
        ("aubergine (eggplant), leeks", ["eggplant", "leek"]),
        ("fish (rohu), leeks", ["rohu", "leek"]),
        ("orzo pearl barley, leeks", ["barley", "leek"]),
        ("beef sirloin, leeks", ["steak", "leek"]),
        # near misses: two foods
        ("pasta (or rice), leeks", ["pasta", "rice", "leek"]),
        ("trout (2 lemons), leeks", ["trout", "lemon", "leek"]),
        ("sausages bacon leeks", ["sausage", "bacon", "leek"]),
        ("stir fry veg (leeks, pak choi), tofu", ["leek", "bok choy", "tofu"]),
    ],
)
def test_a_bracket_or_a_second_name_says_what_it_is(store: Store, text: str, expected: list[str]) -> None:
    assert [i.name for i in read(text, store=store).items] == expected


def test_the_weight_in_a_bracket_is_of_the_food_before(store: Store) -> None:
    first = read("meatballs (home made, raw pork, 400g), leeks", store=store).items[0]
    assert (first.grams, first.state) == (400, "raw")


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("250g green lentils, 2 leeks. lentil stew for 3", ["green lentil", "leek"]),
        ("toor dal 300g, spinach. dal for 5 of us", ["split pigeon pea", "spinach"]),
        ("haddock 500g, okra. fish curry tonight please", ["haddock", "okra"]),
        ("want proper slow roast pork. 900g pork shoulder, apples", ["pork shoulder", "apple"]),
        ("make a chicken veg soup. 800g chicken drumsticks, leeks", ["chicken drumstick", "leek"]),
        ("400g turkey mince, turkey burgers please, an onion", ["ground turkey", "onion"]),
        ("500g lamb mince, make koftas, mint", ["ground lamb", "mint"]),
        ("chilli con carne, 450g beef mince, leeks", ["ground beef", "leek"]),
        # near misses: foods of their own
        ("leftover chilli con carne, beef mince, leeks", ["chili con carne", "ground beef", "leek"]),
        ("4 burgers, buns, tomatoes", ["ground beef", "bun", "tomato"]),
        ("chicken soup, toast. and 2 leeks", ["chicken", "bread", "leek"]),
        ("beef mince, beef stock, carrots", ["ground beef", "beef stock", "carrot"]),
    ],
)
def test_the_word_for_the_dish_is_no_second_food(store: Store, text: str, expected: list[str]) -> None:
    assert [i.name for i in read(text, store=store).items] == expected


@pytest.mark.parametrize(
    ("text", "foods"),
    [
        (
            "1.2 kg turkey (legs and breast), leeks",
            {"turkey leg": 600.0, "turkey breast": 600.0, "leek": None},
        ),
        ("600 g lamb mince for kofta, mint", {"ground lamb": 600.0, "mint": None}),
        ("veal meatballs, orzo", {"ground veal": None, "orzo": None}),
        ("fried fish tonight, got 300 g hake, peas", {"hake": 300.0, "pea": None}),
    ],
)
def test_a_general_name_is_no_second_food(store: Store, text: str, foods: dict[str, float | None]) -> None:
    assert {item.name: item.grams for item in read(text, store=store).items} == foods


def test_what_was_left_in_the_freezer_is_frozen_under_its_exact_name(store: Store) -> None:
    reading = read("forgot to take the turkey out of the freezer, 3 turkey legs, leeks", store=store)
    assert [(item.name, item.state) for item in reading.items] == [("turkey leg", "frozen"), ("leek", None)]


def test_the_meat_of_a_dish_from_yesterday_stays_meat(store: Store) -> None:
    items = read("chilli from last night (beef and black beans), tortillas", store=store).items
    assert [item.name for item in items] == ["beef", "black bean", "tortilla"]


@pytest.mark.parametrize(
    "joint", ["pork leg", "pork neck", "pork shoulder", "lamb leg", "lamb rump", "lamb shoulder"]
)
def test_steaks_of_a_joint_are_steaks_and_no_joints(store: Store, joint: str) -> None:
    (steak,) = read(f"2 {joint} steaks", store=store).items
    assert steak.food_id in ("pork-steak", "lamb-steak")

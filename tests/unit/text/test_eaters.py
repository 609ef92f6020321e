"""Who eats: said in many ways, in several languages, with the ages of children."""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.text import read
from knowledge.text.model import Kind


@pytest.mark.parametrize(
    ("said", "people"),
    [
        ("seven of us", 7),
        ("feeding 10", 10),
        ("for 5 very hungry people", 5),
        ("3 persone", 3),
        ("para 6 personas", 6),
        ("5 personnes", 5),
        ("6 Personen", 6),
        ("für 3", 3),
        ("pour 5", 5),
        ("we are 3", 3),
        ("wir sind 4", 4),
        ("dinner for a dozen", 12),
        ("serves 3-4", 4),
        ("me, my wife and two kids (3 and 6)", 4),
        ("two adults and three little ones (1, 4 and 7)", 5),
        ("my 4 year old and me", 2),
        ("5 people, one kid with a nut allergy", 5),
        ("only one little tray, 3 people", 3),
        ("for 5, 1 child is allergic to milk", 5),
        ("for five - one child allergic to milk", 5),
        ("3 adults 2 kids", 5),
        ("3 people and a kid", 4),
    ],
)
def test_eaters(store: Store, said: str, people: float) -> None:
    reading = read(f"trout, leeks, rice. {said}", store=store)
    assert reading.people == people
    assert [i.name for i in reading.items] == ["trout", "leek", "rice"]
    assert all(i.qty is None for i in reading.items)


@pytest.mark.parametrize(
    ("text", "people"),
    [
        ("trout, egg noodles, fish stock. 3", 3),
        ("trout, leeks\n4", 4),
        ("1. trout\n2. leeks\n3. rice", None),
        ("leeks 2. trout 4", None),
    ],
)
def test_a_number_left_alone_at_the_end_is_the_eaters(store: Store, text: str, people: float | None) -> None:
    assert read(text, store=store).people == people


@pytest.mark.parametrize(
    ("said", "age"),
    [
        ("us two and two kids (2 and 5)", 2),
        ("kids aged 9 and 4, and me", 4),
        ("me and a baby", 0.5),
        ("my 3 year old and me", 3),
        ("son is 8 months old", 8 / 12),
        ("two adults", None),
        ("3 kids and me", None),
    ],
)
def test_the_youngest_eater(store: Store, said: str, age: float | None) -> None:
    assert read(f"trout, leeks. {said}", store=store).youngest == (age and pytest.approx(age))


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("meatballs, cream, dill. Sweden, family of 4", ["meatball", "heavy cream", "dill"]),
        ("eggs, tomatoes, something turkish tonight", ["egg", "tomato"]),
        ("hake, leeks, May, Lisbon", ["hake", "leek"]),
        # near misses: foods that share their name with a place
        ("swede, leeks", ["rutabaga", "leek"]),
        ("brussels sprouts, swiss chard", ["brussels sprout", "swiss chard"]),
        ("turkey, leeks", ["turkey", "leek"]),
    ],
)
def test_places_and_months_are_no_foods(store: Store, text: str, expected: list[str]) -> None:
    reading = read(text, store=store)
    assert [i.name for i in reading.items] == expected
    assert reading.asks == ()


@pytest.mark.parametrize(
    ("said", "wish"),
    [
        ("something soupy", "soup"),
        ("NO CHOPPING", "less chopping"),
        ("want it CRISPY", "crisp"),
        ("no faff please", None),
        ("something french", None),
    ],
)
def test_a_wish_is_never_an_unknown_food(store: Store, said: str, wish: str | None) -> None:
    reading = read(f"{said}. trout, leeks, rice", store=store)
    assert reading.kind is Kind.PLAN
    assert reading.unknown == ()
    assert wish is None or wish in reading.wishes


def test_a_tin_of_soup_is_no_wish_for_soup(store: Store) -> None:
    assert read("chicken, rice, can of cream of mushroom soup. for 2", store=store).wishes == ()


@pytest.mark.parametrize(
    ("text", "people"),
    [
        ("one of us is vegetarian. halloumi, leeks, rice. 6 of us", 6),
        ("two of us dont eat pork. halloumi, leeks", None),
        ("halloumi, leeks, just one of us tonight", 1),
    ],
)
def test_some_of_us_are_not_all_of_us(store: Store, text: str, people: float | None) -> None:
    assert read(text, store=store).people == people


@pytest.mark.parametrize("text", ["we live at 1900m. halloumi, leeks", "leeks, halloumi, up at 850 m here"])
def test_metres_are_no_minutes(store: Store, text: str) -> None:
    assert read(text, store=store).ready_by is None


def test_the_size_of_a_vessel_is_no_amount_of_food(store: Store) -> None:
    reading = read("halloumi, leeks. ribollita in a 4 litre pressure cooker", store=store)
    assert all(i.qty is None for i in reading.items)


@pytest.mark.parametrize(
    ("text", "people"),
    [
        ("leeks, ham, eggs for me and the twins", 3),
        ("my parents' place: mum and dad plus us three. lamb leg, potatoes", 5),
    ],
)
def test_twins_and_us_are_counted(store: Store, text: str, people: float) -> None:
    assert read(text, store=store).people == people


@pytest.mark.parametrize(
    ("text", "clock"),
    [
        ("leeks, ham, rice. back at 5, dinner at 6.30", "18:30"),
        ("dinner at 6.30, the match starts 8. leeks, ham, rice", "18:30"),
        ("guests at the door 7:15, I finish work 5.30. leeks, ham, rice", "19:15"),
        ("Reis, Lauch, Schinken um 19 Uhr", "19:00"),
        ("riz, poireaux, jambon, prêt à 20h", "20:00"),
    ],
)
def test_of_several_times_the_one_at_which_it_is_eaten_counts(store: Store, text: str, clock: str) -> None:
    ready = read(text, store=store).ready_by
    assert ready is not None
    assert ready.clock == clock

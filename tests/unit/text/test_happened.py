"""Events, swaps and settings in wording of our own, and what only sounds like them."""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.text import read
from knowledge.text.model import EventType, Kind


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("carrots are tough as old boots", EventType.NOT_DONE),
        ("chickpeas in 50 min and theyre still like pebbles", EventType.NOT_DONE),
        ("the onions refuse to soften", EventType.NOT_DONE),
        ("parsnips black as coal on the edges", EventType.TOO_FAST),
        ("the salmon is done with 10 min still on the clock, burnt underneath", EventType.TOO_FAST),
        ("15 min on and the hob is hardly warm", EventType.OVEN_NOT_HOT),
        ("the oven has packed in", EventType.OVEN_NOT_HOT),
        ("clean forgot the potatoes", EventType.FORGOT),
        ("the leeks never made it into the pot", EventType.FORGOT),
        ("have to nip out to fetch the kids, 20 min", EventType.DELAY),
        ("bear with me, on the phone", EventType.DELAY),
        ("giving the parsley a miss", EventType.SKIP),
        ("abandoning this, toast tonight", EventType.STOP),
        ("in it goes", EventType.STARTED),
    ],
)
def test_what_happened_is_told_by_its_words(store: Store, text: str, kind: EventType) -> None:
    reading = read(text, store=store)
    assert reading.kind is Kind.COOK_EVENT
    assert reading.event is not None
    assert reading.event.type is kind


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("if it ran half an hour late would the chicken be overcooked? just wondering", Kind.QUESTION),
        ("suppose the oven was off for ten minutes, would the fish still be safe?", Kind.QUESTION),
        ("is turkey ok at 70", Kind.QUESTION),
        ("everything in ounces from today on", Kind.SETTING),
        ("no creme fraiche in the fridge, what else could i use", Kind.SWAP),
        ("palak nahi mila, kale chalega?", Kind.SWAP),
        ("turns out what i thought was cod is haddock", Kind.SWAP),
        ("hard cheese, leeks, rice", Kind.PLAN),
        ("out of the oven by 7: potatoes, leeks, bacon", Kind.PLAN),
        ("can it be done in one pot? chicken thighs, 300g rice, leeks", Kind.PLAN),
    ],
)
def test_what_only_sounds_like_it(store: Store, text: str, kind: Kind) -> None:
    assert read(text, store=store).kind is kind


def test_a_temperature_is_no_number_of_pieces(store: Store) -> None:
    assert read("is veal ok at 63", store=store).items[0].qty is None


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("5 Würstchen, 2 Dosen Linsen, Senf, Kartoffeln 1 kg und Sahne",
         [("sausage", 5, "piece"), ("lentil", 2, "can"), ("mustard", None, None), ("potato", 1, "kg"),
          ("heavy cream", None, None)]),
        ("saumon 400 g, 3 carottes, poireaux avec du beurre",
         [("salmon", 400, "g"), ("carrot", 3, "piece"), ("leek", None, None), ("butter", None, None)]),
    ],
)  # fmt: skip
def test_the_plain_words_of_other_kitchens(
    store: Store, text: str, expected: list[tuple[str, float | None, str | None]]
) -> None:
    assert [(i.name, i.qty, i.unit) for i in read(text, store=store).items] == expected


def test_a_list_for_soft_food_is_not_refused(store: Store) -> None:
    reading = read("gran had a tooth out so mushy only: split peas 200g, carrots", store=store)
    assert [i.name for i in reading.items] == ["split pea", "carrot"]
    assert reading.diet == ("soft food",)


def test_a_short_word_is_not_bent_into_a_food(store: Store) -> None:
    assert [i.name for i in read("leeks, rice, peas, all in the boot", store=store).items] == [
        "leek", "rice", "pea",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("the beans went on at twenty past, it's ten to now and they are hard", 30.0),
        ("rice was due on at quarter to, it's five past, I forgot it", 20.0),
        ("the bus is late, can we eat at 7.45 not 7.10", 35.0),
        ("peas went in a minute ago", 1.0),
        ("hold everything, 15ish min", 15.0),
        ("gimme six more for the carrots", 6.0),
    ],
)
def test_minutes_are_worked_out_where_hours_are_left_away(store: Store, text: str, minutes: float) -> None:
    reading = read(text, store=store)
    assert reading.event is not None
    assert reading.event.minutes == minutes


def test_a_temperature_spelled_by_its_tens_is_read_whole(store: Store) -> None:
    reading = read("probe in the pork says one forty five", store=store)
    assert reading.event is not None
    assert reading.event.temp_c == 62.8  # (145 - 32) * 5 / 9

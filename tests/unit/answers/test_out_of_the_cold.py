"""Perishable food that was out of the cold is thrown away, in whatever words the time and the place are said.

USDA FSIS: 2 hours at room temperature in all, 1 hour above 32 °C / 90 °F; a closed fridge without
current 4 hours, a full freezer 48, a half full one 24; ice crystals or 4 °C / 40 °F: refreeze or cook.
"""

from __future__ import annotations

import re

import pytest

from knowledge.answers import ask
from knowledge.answers.reading.hours import hours_said
from knowledge.answers.reading.question import question_of
from knowledge.foods.store import Store
from knowledge.planner.model import Kitchen

# whatever is planned with it, whatever it smells or feels like
TOO_LONG = [
    "the pork chops lay on the passenger seat of my car for six hours, grill them well?",
    "Prawns were dropped at the front door at 10 and i only came back at 4, boil them hard?",
    "veg box with minced lamb sat in the hallway from 9 till 3, still cool, bolognese tonight?",
    "cod fillets in my gym bag since half the day, smells fine, fry it now?",
    "beef strips on the draining board overnight how long do I stir fry them",
    "grandma always left the stew on the veranda all night and nobody got sick, why not me",
    "I forgot the raw turkey in the boot from noon to 5, roast it to 90?",
    "parcel with sausages waiting at the reception since 9am, its 2pm now. bbq them?",
    "egg fried noodles in my desk drawer since this morning, microwave ok?",
    "sardines on the kitchen table for three and a half hours, can I grill them",
    "milk stood on the porch from 6 in the morning to 11, boil it for custard?",
    "Ham and cheese quiche on the windowsill the whole night, freeze it?",
    "bought minced veal at 10, got home at half past two, no ice with it, burgers?",
    "forgot the streaky bacon in the boot last night, fry it?",
    "lunchbox packed at 7 am with egg mayo, eaten at 3 pm",
    "nihari on the gas top overnight, boil it up",
    "efo riro was outside from morning till night, warm it?",
    "slept off and forgot to chill the pepper soup on the stove",
]


@pytest.mark.parametrize("text", TOO_LONG)
def test_what_lay_in_the_warm_is_thrown_away(store: Store, text: str) -> None:
    answer = ask(text, store=store).answer
    assert re.match("(?:No: throw|Not safe)", answer), answer


KEEPS = [
    "salted butter on the worktop overnight",
    "rhubarb tart no, apple pie, left out overnight",
    "a wedge of parmesan out on the table all night",
    "sourdough loaf left out overnight",
]


@pytest.mark.parametrize("text", KEEPS)
def test_what_needs_no_fridge_is_not_thrown_away(store: Store, text: str) -> None:
    answer = ask(text, store=store).answer
    assert answer.startswith("Yes: butter, hard cheese, bread"), answer
    assert "2 hours" in answer


def test_butter_under_ham_is_no_butter_alone(store: Store) -> None:
    assert ask("ham and butter rolls left out overnight", store=store).answer.startswith("No: throw it away")


THAWED = [
    "pork belly thawed in cold water overnight, nobody changed the water, same water",
    "turkey crown thawed on the garage floor all night, its core is still hard",
    "I left the lamb mince to defrost on the bench for seven hours, feels cool",
    "squid defrosted in the kitchen since breakfast, now it's 4 pm, still half frozen",
    "frozen burgers were thawing by the window for 5 hours, grill?",
]


@pytest.mark.parametrize("text", THAWED)
def test_an_icy_middle_saves_nothing_that_thawed_in_the_warm(store: Store, text: str) -> None:
    answer = ask(text, store=store).answer
    assert answer.startswith("No: throw it away")
    assert "icy middle" in answer


NO_CURRENT = [
    ("lights have been off for 11 hours, goat meat in the fridge", "No: throw"),
    ("eskom cut us from 6 to 1, are the chicken livers in the fridge fine", "No: throw"),
    ("the breaker tripped overnight, yoghurt and ham in the fridge", "No: throw"),
    ("my refrigerator packed up 7 hours ago, cook the fish now?", "No: throw"),
    ("somebody unplugged the fridge yesterday, is the curry ok", "No: throw"),
    ("no light for 3 hours, fish in fridge, door shut", "Yes, if the door stayed shut"),
    ("outage of two hours, milk in the fridge", "Yes, if the door stayed shut"),
    ("deep freezer stopped for a day, beef has ice crystals in it", "Yes: what still has ice"),
    ("chest freezer was dead for four days, everything lukewarm, cook it?", "No: throw"),
    ("half full freezer, current gone for 30 hours", "No: throw"),
    ("fridge door was left open, chicken inside", "Throw away meat, fish"),
]


@pytest.mark.parametrize(("text", "verdict"), NO_CURRENT)
def test_a_fridge_without_current_is_told_by_the_hours(store: Store, text: str, verdict: str) -> None:
    answer = ask(text, store=store).answer
    assert answer.startswith(verdict), answer
    assert "USDA FSIS" in answer


COOKER_OFF = [
    "my crock pot went off by itself at some point, beans inside feel warm",
    "slow cooker never came on, the pork sat in it for 7 hours",
    "Came home and the oven had tripped, lamb shoulder half cooked inside, carry on?",
    "power failed during the night with a brisket in the slow cooker",
]


@pytest.mark.parametrize("text", COOKER_OFF)
def test_food_in_a_cooker_that_went_off_is_thrown_away(store: Store, text: str) -> None:
    assert ask(text, store=store).answer.startswith("No: throw it away")


def test_a_cooker_that_was_off_for_less_than_two_hours_is_finished_at_once(store: Store) -> None:
    answer = ask("slow cooker was off for one hour with chicken stew in it, finish on the hob?", store=store)
    assert answer.answer.startswith("Finish it now")


WARM_FOR_HOURS = [
    ("stew kept warm in a blanket for 6 hours", "No, unless a thermometer"),
    ("rice porridge in a thermos 8 hours", "No, unless a thermometer"),
    ("goat soup on a low flame the whole day", "Only if it stays steaming hot"),
]


@pytest.mark.parametrize(("text", "first"), WARM_FOR_HOURS)
def test_food_kept_warm_for_hours_is_told_the_holding_rule(store: Store, text: str, first: str) -> None:
    answer = ask(text, store=store).answer
    assert answer.startswith(first), answer
    assert "60 °C / 140 °F" in answer


NEAR_MISSES = [
    "chicken was in the fridge overnight, how long to roast it",
    "pork shoulder in the slow cooker for 8 hours on low, how do i shred it",
    "how long does beef stew simmer on the stove, 3 hours?",
    "turkey came out of the oven after 3 hours at 160, is it done",
    "thawed the salmon overnight in the fridge, how long to bake",
    "the beans were soaking on the counter overnight, how long do they boil",
    "borscht on the balcony overnight at 2 degrees",
    "oven broke, can i do the potatoes in a pan",
    "does light cream go off quickly",
    "the fridge is full, can flour live in the cupboard",
    "is milk in the fridge gone off after 2 days",
    "dinner at 7 for 4 people, chicken takes how long",
    "reheating yesterday's rice in the pan",
    "yoghurt setting in the oven overnight with the lamp on",
    "prawns thawed under running water for 40 minutes",
]


@pytest.mark.parametrize("text", NEAR_MISSES)
def test_what_was_cold_or_on_the_heat_is_not_thrown_away(store: Store, text: str) -> None:
    assert not ask(text, store=store).answer.startswith("No: throw it away"), text


CLOCKS = [
    ("left at 8 on the side, back at 6", 10.0),
    ("on the bench from 22:00 to 7 am", 9.0),
    ("out at noon and now its 3.30", 3.5),
    ("taken out this morning, now it is 5 pm", 9.0),
    ("in the car nine hours", 9.0),
    ("roasted for 3 hours then out for 40 minutes", 40 / 60),
    ("in the fridge overnight", None),
    ("with 2 onions and 3 eggs", None),
]


@pytest.mark.parametrize(("text", "hours"), CLOCKS)
def test_the_hours_are_read_off_words_and_clocks(store: Store, text: str, hours: float | None) -> None:
    assert hours_said(question_of(text, store=store, kitchen=Kitchen())) == hours

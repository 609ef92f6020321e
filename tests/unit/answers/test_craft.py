"""What went wrong at the stove, how it is saved, and why a step is done."""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store

TOLD = [
    ("my pilau came out like baby food, all mush", "too much water"),
    ("the pot of rice caught at the bottom, what now", "do not stir or scrape"),
    ("spaghetti glued to itself in the colander", "first two minutes"),
    ("mash turned into wallpaper paste", "Overworked potato"),
    ("how do i make oven wedges crunchy", "220 °C"),
    ("khaki coloured beans after boiling", "lid off"),
    ("our borscht went brownish", "acid keeps it"),
    ("brinjal slices suck up all the oil", "salt the slices"),
    ("bhindi gets gooey", "fry them hot"),
    ("ampalaya too bitter for my kids", "rub with salt"),
    ("I oversalted the lentil soup", "take the salt with them"),
    ("the vindaloo is too fiery for my mother", "Fat and dairy"),
    ("our stew is tangy as vinegar, rescue", "pinch of sugar"),
    ("gravy runny as tea", "lid off"),
    ("chocolate seized when steam got in", "teaspoon at a time"),
    ("my bearnaise curdled", "fresh yolk"),
    ("santan separated in the laksa", "Harmless"),
    ("mutton still like a boot after two hours of stewing", "not done yet"),
    ("beef patties shrink into balls", "dimple"),
    ("kofta crumbling in the sauce", "binder"),
    ("panko drops off my cutlets", "pat the food dry"),
    ("phulka does not puff", "Even rolling"),
    ("first dosa sticks to the tava", "tawa"),
    ("idli batter is flat, no bubbles in cold weather", "Warmth"),
    ("boiled eggs lose half their white when I peel", "ice water"),
    ("caramel went sandy", "crystals"),
    ("one thread syrup for barfi, which stage", "104-110 °C"),
    ("cold or hot syrup on hot basbousa", "One hot, one cold"),
    ("pav bread came out dense like a brick", "old yeast"),
    ("what is the point of pulling and resting dough", "relaxes"),
    ("lid on or off to reduce a jus", "Lid off"),
    ("night before, should I salt the turkey", "salt it ahead"),
    ("how can I tell the frying oil is ready with no thermometer", "cube of bread"),
    ("couscous full of clumps", "Fork it"),
    ("dahi did not set", "too cold"),
]


@pytest.mark.parametrize(("asked", "said"), TOLD)
def test_a_mishap_is_answered_whatever_the_words(store: Store, asked: str, said: str) -> None:
    answer = ask(asked, store=store)
    assert answer.known
    assert said in answer.answer


OF_OTHER_THINGS = [
    ("probe says 66 in the chicken, can I carve", "No, not yet"),
    ("pork dumplings read 60 C in the middle, enough?", "No, not yet"),
    ("how long does hollandaise keep", "fridge"),
    ("steamed green beans, how many minutes", "min"),
    ("does milk chocolate contain milk", "has milk"),
    ("is my soggy rice from yesterday left out overnight safe", "throw it away"),
    ("what is cornflour", "Cornstarch"),
]


@pytest.mark.parametrize(("asked", "said"), OF_OTHER_THINGS)
def test_what_is_asked_about_something_else_is_left_to_its_answer(
    store: Store, asked: str, said: str
) -> None:
    assert said.lower() in ask(asked, store=store).answer.lower()


def test_a_sure_danger_comes_before_the_craft(store: Store) -> None:
    assert "10 minutes" in ask("kidney beans still hard, slow cooker all day", store=store).answer
    assert "lid" in ask("oil in my wok is on fire, why did it burn the bottom", store=store).answer


def test_nothing_is_made_up_for_a_thing_without_a_note(store: Store) -> None:
    assert not ask("my neighbour's accordion sounds too thin", store=store).known
    assert not ask("why does the bus never come", store=store).known


@pytest.mark.parametrize(
    ("asked", "never"),
    [
        ("boiled eggs smell of sulphur and feel slimy", "Harmless"),
        ("the yogurt I made is thin and pink", "fresh starter"),
        ("shrimps went soft after a day in the car", "opaque"),
        ("duck skin is flabby, may the breast be pink", "uncovered"),
        ("salmon fillet raw with white bits that move", "harmless"),
    ],
)
def test_no_mishap_is_explained_where_the_food_may_be_bad_or_raw(
    store: Store, asked: str, never: str
) -> None:
    assert never not in ask(asked, store=store).answer

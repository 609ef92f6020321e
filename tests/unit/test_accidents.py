"""Accidents are heard in any words, and kitchen talk that sounds like one is not taken for one."""

from __future__ import annotations

import pytest

from knowledge.accidents import first_aid
from knowledge.answers import ask
from knowledge.foods.store import Store


@pytest.mark.parametrize(
    ("text", "first"),  # after the advice of the NHS and of fire services, from memory
    [
        ("there is a fire in the oven", "Never water on burning fat"),
        ("grease fire help", "Never water on burning fat"),
        ("the pan is ON FIRE", "Never water on burning fat"),
        ("burned my finger", "20 minutes"),
        ("i burnt my arm on the oven", "20 minutes"),
        ("my son scalded his hand", "20 minutes"),
        ("sliced my thumb with the knife", "for 10 minutes"),
        ("cut the tip of my finger", "for 10 minutes"),
        ("i can smell gas", "light nothing"),
        ("he's choking on a bone", "between the shoulder blades"),
        ("her lips are swelling and she can't breathe", "emergency number"),
        # botulism: CDC, symptoms; NHS for the others, from memory
        ("her eyelids keep drooping since the pickled garlic", "botulism"),
        ("legs feel weak after eating tinned sardines", "botulism"),
        ("everything looks double after the fermented fish", "botulism"),
        ("i can't swallow properly since eating home bottled asparagus", "botulism"),
        ("there is a tight feeling in my chest", "heart"),
        ("toddler is choking, it was a cherry", "between the shoulder blades"),
        ("baby drank some of the dishwasher liquid", "poison control"),
        ("splashed oven cleaner in my eye", "poison control"),
        ("my husband fainted in the kitchen", "on the side"),
        ("there's a bit of bone stuck in my throat", "doctor"),
        # a person at 37-42 °C is no core temperature
        ("is it bad that my baby is 39.2 degrees after the egg", "doctor"),
        ("her temp is 40 since the oysters", "doctor"),
        ("the kids are sick since lunch, it was chicken", "doctor"),
        ("grandma has bloody stools since the burger", "doctor"),
        ("do we have food poisoning", "doctor"),
        ("our one year old is at 39.8 since the yogurt", "doctor"),
        ("belly ache and bloody stools, ate rare mince", "doctor"),
        ("it went down the wrong pipe and her lips are blue", "between the shoulder blades"),
        ("there was drain cleaner in the pot and we ate from it", "poison control"),
    ],
)
def test_an_accident_gets_first_aid(text: str, first: str) -> None:
    said = first_aid(text)
    assert said is not None
    assert first in said


@pytest.mark.parametrize(
    "text",
    [
        "carrots, fire roasted tomatoes, rice",
        "the onions are burning",
        "burnt the toast",
        "i burned the bottom of the pot",
        "cut my carrots too thick",
        "sliced the meat, chopped my onions",
        "gas hob, no oven",
        "fire pit tonight: sausages and corn",
        "ladies fingers 200 g, potatoes",
        "fish fingers and peas",
        "burn off the alcohol",
        "the steak is still bleeding juice",
        "my chicken is at 40 degrees",
        "the souffle collapsed",
        "eggs make her vomit so none of those",
        "milk gives me diarrhoea",
        "can you get salmonella from eggs",
        "how do i avoid food poisoning",
        "is grape a choking hazard",
        "cut grapes to stop choking",
        "sick of chicken, what else",
        "i am sick of rice after yesterday",
        "i cant move the lid of the cooker",
        "it tastes weak after adding tinned tomatoes",
        "i have a fever and a cold, chicken and carrots for soup",
        "i have 40 g butter and 2 kids",
        "hake, cod, double cream",
        "my dough is 38 degrees",
        "the garlic is going blue",
        "a 3 year old cheddar, 40.5 g",
        "stomach ache, want something gentle: rice and chicken",
        "chest freezer: chicken in it",
    ],
)
def test_kitchen_talk_is_no_accident(text: str) -> None:
    assert first_aid(text) is None


def test_a_question_gets_the_same_first_aid_as_a_message(store: Store) -> None:
    for text in ("my gran is slurring her words since the bottled peppers", "39.5 fever after the clams"):
        answer = ask(text, store=store)
        assert answer.known
        assert answer.sources
        assert answer.answer == first_aid(text)


# NHS and fire services: the signs in any order of words, each with its first step.
@pytest.mark.parametrize(
    ("text", "step"),
    [
        ("boiling stock ran down her leg", "cool running water"),
        ("the knife slipped and his thumb won't stop, blood on the board", "clean cloth"),
        ("grandad has bread in his windpipe", "blows between"),
        ("the curtain by the stove is ablaze", "everybody out"),
        ("there is a gas smell near the hob", "gas emergency line"),
        ("we feel drowsy and have a headache, the charcoal grill is indoors", "carbon monoxide"),
        ("hand trapped in the dough mixer", "Pull the plug"),
        ("my cousin got an electric shock off the kettle", "fuse"),
        ("he threw up blood after the meal", "emergency number"),
        ("the toadstools we picked: ate some, feeling sick", "poison control"),
        ("dry ice stuck to my fingers", "lukewarm"),
        ("she slipped on the floor and hit her head on the oven", "confused"),
        ("can not keep anything down since the mussels", "sips"),
    ],
)
def test_signs_of_an_accident_count_in_any_order(text: str, step: str) -> None:
    said = first_aid(text)
    assert said is not None
    assert step in said


@pytest.mark.parametrize(
    "text",
    [
        "the leg of lamb is burning hot and done",
        "sear the steak, still bleeding inside",
        "how do i stop the onions burning my eyes",
        "black pudding and bloody mary for brunch",
        "hand mixer or whisk for the batter",
        "the souffle fell and i slipped it back in the oven",
        "picked mushrooms from the market, 300 g",
        "limp celery in the soup for the baby",
        "gas mark 6 for the kitchen oven",
        "skin side down in hot oil, chicken legs",
    ],
)
def test_signs_near_by_are_no_accident(text: str) -> None:
    assert first_aid(text) is None

"""An allergen is kept out in whatever words it is ruled out, and no name is taken for another.

Groups: EU 1169/2011 annex II and the US nine (FALCPA, FASTER Act). That mammals' milks, the
celery family, mustard and horseradish, lupin and peanut may cross-react is said by the
allergy services of several countries (from memory).
"""

from __future__ import annotations

import re

import pytest

from knowledge.answers import ask
from knowledge.answers.eaters.eaters import ruled_out
from knowledge.diets import bars
from knowledge.foods.store import Store

NUTS = "pecan|hazelnut|almond|cashew|walnut|pistachio|macadamia|brazil|peanut"
MILK = "butter|ghee|cream|yogurt|cheese|milk|paneer|halloumi|feta"
WHEAT = "bulgur|couscous|pasta|semolina|flour|seitan|barley|cracker"
# How people say that someone must not have something, and of what.
WAYS_TO_RULE_OUT = [
    "my guest can't have {}, what can replace {}",
    "he cannot have {} - what instead of {}",
    "no {} please, what do i use instead of {}",
    "my niece avoids {}. substitute for {}?",
    "{} free swap for {}",
    "swap {1} for someone intolerant to {0}",
    "she isn't allowed {}, what replaces {}",
    "school bans {}, alternative to {}",
    "allergic to {}; instead of {}",
    "{} make me ill, replace the {}",
    "they don't eat {}, what to use rather than {}",
    "i'm off {} - in place of {}?",
    "we must keep out {}, replacement for {}",
    "without {}: substitute for {}",
]
RULED_OUT = [
    ("nuts", "walnuts", NUTS),
    ("nuts", "almonds", NUTS),
    ("nuts", "pistachios", NUTS),
    ("dairy", "butter", MILK.replace("butter|", "")),
    ("dairy", "heavy cream", "creme|evaporated|yogurt|half"),
    ("gluten", "couscous", WHEAT),
    ("gluten", "bulgur", WHEAT),
    ("shellfish", "prawns", "scallop|squid|mussel|crab|lobster"),
    ("sesame", "tahini", "sesame"),
    ("eggs", "mayonnaise", r"\beggs?\b"),
    ("fish", "fish sauce", "anchov|worcester|fish"),
    ("soy", "soy sauce", "tamari|miso|soy|worcester"),
]


def offered(text: str) -> str:
    """What is held out to take instead; the warnings that follow name what is left out."""
    after = re.search(r"Instead of [^:]+: (.*?)(?:\. (?:Mind|Left|Not|Read)|\.$)", text)
    return after[1] if after else text


@pytest.mark.parametrize("way", WAYS_TO_RULE_OUT)
@pytest.mark.parametrize(("barred", "food", "never"), RULED_OUT)
def test_what_is_ruled_out_is_never_offered(
    store: Store, way: str, barred: str, food: str, never: str
) -> None:
    answer = ask(way.format(barred, food), store=store)
    assert answer.known
    ideas = re.sub(r"\((?:without|no|in place of|not)[^)]*\)|without \w+", "", offered(answer.answer))
    assert not re.search(rf"(?i)(?<![\w-])(?:{never})", ideas), answer.answer
    assert "doctor" in answer.answer


@pytest.mark.parametrize(
    ("text", "kin"),
    [
        ("celery allergy: what instead of celery", "fennel"),
        ("carrot allergy, swap for carrots", "parsnip"),
        ("can't have mustard, what replaces mustard", "horseradish"),
        ("guest avoids lupin, substitute for flour", "chickpea flour"),
        ("egg free swap for egg noodles", "ramen"),
        ("sulphite allergy, instead of white wine", "vinegar"),
    ],
)
def test_what_may_cross_react_is_left_out(store: Store, text: str, kin: str) -> None:
    answer = ask(text, store=store).answer
    assert kin not in offered(answer)
    assert "doctor" in answer


TOKENS = {
    "nuts": "no nuts", "dairy": "no dairy", "gluten": "no gluten", "shellfish": "no shellfish",
    "fish": "no fish", "eggs": "no egg", "soy": "no soy", "sesame": "no sesame", "celery": "no celery",
    "mustard": "no mustard",
    "sulphites": "no sulphite", "wheat": "no wheat", "peanuts": "no peanut",
}  # fmt: skip
WAYS = [
    "my guest can't have {0}, what can i use instead of {1}",
    "substitute for {1}, {0} allergy",
    "he reacts to {0}, swap for {1}",
    "{1} replacement without {0}",
    "what replaces {1} for my {0} intolerant son",
]


def test_no_food_of_the_table_is_offered_against_any_allergen(store: Store) -> None:
    ids = sorted({row["food_id"] for row in store.table("substitutions")})
    for at, food_id in enumerate(ids):
        for turn, (said, token) in enumerate(TOKENS.items()):
            text = WAYS[(at + turn) % len(WAYS)].format(said, store.food(food_id).name)
            ideas = re.sub(r"\([^)]*\)", "", offered(ask(text, store=store).answer))
            foods = [store.named(idea.strip()) for idea in re.split("[;,]", ideas)]
            assert not [food.id for food in foods if food and bars(food, token)], text


def test_no_food_that_holds_an_allergen_is_called_free_of_it(store: Store) -> None:
    """Nor when a strange word stands before its name or after it."""
    for food in store.foods():
        for said, token in TOKENS.items():
            if not bars(food, token):
                continue
            for name in (food.name, f"zanzibar {food.name}", f"{food.name} paste"):
                answer = ask(f"is {name} ok with a {said} allergy", store=store).answer
                assert not answer.startswith("Yes"), (name, said, answer)


def test_every_food_offered_comes_with_its_allergens(store: Store) -> None:
    assert "tree nuts" in ask("what can replace walnuts", store=store).answer
    assert "ghee has milk" in ask("what can i use instead of butter", store=store).answer


# What is asked of a food whose name is only partly that of another food.
NOT_FREE = [
    "is goat milk ok with a milk allergy",
    "is camel's milk safe for a cow's milk allergy",
    "is sheep yogurt dairy free",
    "is goat butter dairy free",
    "is soy flour ok for a soy allergy",
    "is lupin flour ok with a peanut allergy",
    "is malt vinegar ok for a coeliac",
    "is tom yum ok with a shellfish allergy",
    "is a prawn cracker ok with a shellfish allergy",
    "is ramen ok with an egg allergy",
    "is soup mix ok for a celery allergy",
    "is kuli kuli ok with a peanut allergy",
    "is marzipan ok with an almond allergy",
    "is peanut soup ok for a peanut allergy",
    "is miso ok for a coeliac",
    "is yak butter dairy free",
    "is mystery curry gluten free",
    "is bison cheese lactose free",
    "is walnut oil ok for a nut allergy",
    "is mashed potato dairy free",
    "does fennel set off a celery allergy",
]


@pytest.mark.parametrize("text", NOT_FREE)
def test_nothing_is_called_free_by_one_word_of_its_name(store: Store, text: str) -> None:
    answer = ask(text, store=store)
    assert not answer.answer.startswith("Yes"), answer.answer
    assert re.search("doctor|label", answer.answer)


@pytest.mark.parametrize(
    "text",
    [
        "does goat milk contain dairy",
        "does soy flour contain soy",
        "does malt vinegar contain gluten",
        "is there shrimp in tom yum",
    ],
)
def test_what_holds_an_allergen_is_said_to_hold_it(store: Store, text: str) -> None:
    assert ask(text, store=store).answer.startswith("Yes")


@pytest.mark.parametrize(
    "text",
    [
        "is coconut milk dairy free",
        "is buckwheat gluten free",
        "is butternut squash ok for a nut allergy",
        "is rice flour gluten free",
        "is cream of tartar dairy free",
    ],
)
def test_a_name_known_as_a_whole_gets_its_all_clear(store: Store, text: str) -> None:
    assert ask(text, store=store).answer.startswith("Yes")


@pytest.mark.parametrize(
    ("text", "law"),
    [  # EU 1169/2011 annex II; US FDA, guidance on allergen labelling (January 2025), from memory
        ("my niece has a nut allergy, may she eat roasted chestnuts", "EU and UK"),
        ("are chestnuts tree nuts", "EU and UK"),
        ("is coconut cream all right with a nut allergy", "EU and UK"),
        ("are coconuts tree nuts", "US list"),
        ("does coconut water count as a nut", "US list"),
        ("is pine nut ok with nut allergy", "US lists them"),
        ("can someone with a nut allergy have nutmeg", "no list of tree nuts"),
        ("is water chestnut ok for a nut allergy", "no list of tree nuts"),
    ],
)
def test_contested_nuts_get_the_law_the_label_and_a_doctor(store: Store, text: str, law: str) -> None:
    answer = ask(text, store=store)
    assert answer.known
    assert not re.match("Yes|No", answer.answer.replace("Not a plain yes or no", "")), answer.answer
    assert law in answer.answer, answer.answer
    assert "label" in answer.answer
    assert "doctor" in answer.answer


@pytest.mark.parametrize(
    ("text", "must"),
    [
        ("peanut free satay sauce", "sunflower seed"),
        ("milk free bechamel", "oat milk|soy milk"),
        ("gluten free bechamel", "cornstarch"),
        ("egg free mayonnaise", "yogurt|chickpea"),
        ("nut free pesto", "pumpkin seed"),
        ("mustard free vinaigrette", "honey|lemon juice"),
        ("dairy free mashed potato", "olive oil"),
    ],
)
def test_a_dish_named_without_something_gets_a_way_to_make_it(store: Store, text: str, must: str) -> None:
    assert re.search(must, ask(text, store=store).answer)


def test_the_eaters_of_a_kitchen_are_honoured_or_refused(store: Store) -> None:
    tokens, problems = ruled_out({"allergens": ["tree nuts"], "diets": ["vegan"], "bogus": 3}, store=store)
    assert set(tokens) == {"no nuts", "vegan"}
    assert not problems
    answer = ask("what can replace walnuts", store=store, ruled_out=tokens).answer
    assert not re.search(NUTS.replace("walnut|", ""), offered(answer))
    tokens, problems = ruled_out({"allergens": ["plutonium"], "avoid": 7}, store=store)
    assert not tokens
    assert len(problems) == 2
    assert "plutonium" in problems[0]


@pytest.mark.parametrize(
    ("text", "barred", "left"),
    [
        ("i avoid gluten: how do i thicken a stew", "flour", "cornstarch"),
        ("how do i thicken the sauce, my guest is coeliac", "flour", "cornstarch"),
        ("the dal is far too hot, peanut allergy here, how to calm it", "nut butter", "coconut milk"),
        ("my stew is too spicy, no dairy please", "cream|yogurt", "coconut milk"),
    ],
)
def test_ways_this_eater_must_not_have_are_cut(store: Store, text: str, barred: str, left: str) -> None:
    answer = ask(text, store=store).answer
    assert not re.search(barred, answer), answer
    assert left in answer.lower(), answer


def test_where_there_is_one_way_what_takes_its_place_stands_before_it(store: Store) -> None:
    answer = ask("my soup is bland, he can't have dairy", store=store).answer
    assert re.match("For what you said: [^.]* for cheese", answer), answer


@pytest.mark.parametrize(
    ("text", "never"),
    [
        ("lodger allergic to nuts. does baklava have nuts in it and what goes instead of walnuts", "pecan"),
        ("a coeliac comes. is miso ok? and can i thicken the soup with flour?", "flour mashed|flour rubbed"),
        ("allergic to milk. is ghee fine? and what do i use instead of cream?", "yogurt|half and half"),
        ("friend allergic to egg. is tofu ok? what do i use instead of mayonnaise", "aioli"),
    ],
)  # fmt: skip
def test_what_the_eater_must_not_have_holds_for_each_question(store: Store, text: str, never: str) -> None:
    answer = ask(text, store=store).answer
    assert not re.search(never, answer), answer


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("can my son who is allergic to fish eat oyster sauce", "^(?!Yes)"),
        ("can coeliacs have polenta", "^Yes"),
        ("will someone allergic to mussels be ok with prawns", "^Not surely"),
        ("can people with a peanut allergy have almonds", "^Not surely"),
    ],
)
def test_who_may_eat_what_is_read_in_either_order(store: Store, text: str, verdict: str) -> None:
    answer = ask(text, store=store).answer
    assert re.search(verdict, answer)
    assert "doctor" in answer

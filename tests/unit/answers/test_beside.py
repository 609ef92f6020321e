"""A food named beside an allergy or a diet is judged, whatever is done with it.

What holds what: EU 1169/2011 annex II and the US nine (FALCPA, FASTER Act). That cashew and
pistachio, walnut and pecan set off one another, and that an allergen stays on gear and in oil,
is said by the allergy services of several countries (from memory).
"""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("coeliac at the table: bulk out the stew with pearl couscous", "No, not safe: pearl couscous has"),
        (
            "my aunt has a hazelnut allergy, enrich the sauce with walnut",
            "No, not safe: walnut has tree nuts",
        ),
        ("milk allergy, can I finish the risotto with mascarpone", "No, not safe: mascarpone has milk"),
        (
            "allergic to pecans: swap the pecans for walnuts in the pie?",
            "No, not safe: walnuts have tree nuts",
        ),
        ("fish allergy, stock with cod bones", "No, not safe: cod has fish"),
        ("wheat allergy, if I change to kamut is it fine", "No, not safe: kamut has wheat"),
        ("coeliac lodger: how long does rye keep and may he have it", "No, not safe: rye has gluten"),
        ("vegan friend, glaze the carrots with honey", "No: honey is of animal origin"),
        ("milk allergy: margarine or sunflower oil for frying", "No, not safe: margarine has milk"),
        ("muslim colleague, finish the glaze with mirin", "No: mirin is made with alcohol"),
        ("halal table, deglaze the pan with sherry", "No: sherry is made with alcohol"),
    ],
)
def test_what_the_eater_must_not_have_is_refused_first(store: Store, text: str, first: str) -> None:
    assert ask(text, store=store).answer.startswith(first), ask(text, store=store).answer


@pytest.mark.parametrize(
    "text",
    [
        "egg allergy, how long do I boil potatoes",
        "my son is coeliac, how do I store rice",
        "vegan lodger, how long do lentils take",
        "nut allergy: bulk out the stew with barley",
        "milk allergy, thicken the soup with coconut milk",
        "how long does spelt keep",
    ],
)
def test_what_the_eater_may_have_is_not_refused(store: Store, text: str) -> None:
    assert "not safe" not in ask(text, store=store).answer


def test_a_swap_is_kept_from_every_eater_of_the_message(store: Store) -> None:
    answer = ask(
        "one guest is allergic to nuts. has pesto nuts in it and can i swap the pine nuts for hazelnuts",
        store=store,
    ).answer
    assert "hazelnuts have tree nuts" in answer
    assert "walnut" not in answer


@pytest.mark.parametrize(
    ("text", "barred"),
    [
        ("i avoid gluten: how do i thicken a stew", "flour"),
        ("how do i thicken the sauce, my guest is coeliac", "flour"),
        ("milk allergy, how do i thicken a soup", "butter"),
    ],
)
def test_a_way_that_needs_what_is_ruled_out_is_not_told(store: Store, text: str, barred: str) -> None:
    answer = ask(text, store=store).answer
    assert "cornst" in answer
    assert barred not in answer


@pytest.mark.parametrize(
    "text",
    [
        "will the cornflour of this brand be free of soy",
        "is the paprika we bought peanut free",
        "is the rice in my cupboard free of nuts",
    ],
)
def test_the_cooks_own_packet_is_never_called_free(store: Store, text: str) -> None:
    answer = ask(text, store=store).answer
    assert answer.startswith("Not surely"), answer
    assert "label" in answer


def test_brandy_is_no_brand(store: Store) -> None:
    assert ask("is brandy nut free", store=store).answer.startswith("Yes")


@pytest.mark.parametrize(
    "text",
    [
        "sesame allergy: I rinsed the wok after the tahini noodles, enough?",
        "can coeliacs have chips from the same fryer as the scampi",
        "may I label the flapjacks nut free, same tin as the almond slices",
        "can I call them egg free if the same whisk did the meringue",
        "does frying destroy peanut protein",
        "deep fryer used for calamari, chips for a guest with a mollusc allergy",
        "is the toaster for the wheat bread ok for a coeliac",
    ],
)
def test_shared_gear_and_heat_leave_the_allergen(store: Store, text: str) -> None:
    assert ask(text, store=store).answer.startswith("No"), ask(text, store=store).answer


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("can a coeliac eat gluten free bread", "Yes"),
        ("is lactose free cream fine for a milk allergy", "No, not safe"),
        ("my mum is lactose intolerant, is lactose free yogurt ok", "Yes, for the intolerance"),
        ("does gluten free flour contain lupin", "Not surely"),
        ("gluten free oats for a coeliac, ok?", "Not surely"),
        ("does gluten free flour suit a lupin allergy", "Not surely"),
        ("wheat allergy, is gluten free bread fine", "Not surely"),
        ("are rolled oats safe for a coeliac", "No, not safe"),
    ],
)
def test_the_words_in_front_of_a_food_count(store: Store, text: str, says: str) -> None:
    assert ask(text, store=store).answer.startswith(says), ask(text, store=store).answer

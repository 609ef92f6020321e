"""Questions to which the handy answer would hurt somebody get the authority's rule, whatever the words."""

from __future__ import annotations

import re

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store

RULES = [
    # carbon monoxide (NHS), hot sugar, hot jugs, pressure
    ("may i light the charcoal grill inside my kitchen as it snows", r"No: .*carbon monoxide"),
    ("could i leave the gas oven open to heat the room", r"No: .*carbon monoxide"),
    ("pull the rocker off the lid so the pressure goes quicker?", r"No: don't lift"),
    ("boiling leek soup straight into the blender", "a third"),
    ("pour cold cream into hot caramel", "spits"),
    ("boil milk under pressure in the cooker", "block the valve"),
    # birds and joints stuffed ahead, offal pink, pots boiled up daily: USDA FSIS
    ("fill the goose with its stuffing tonight for tomorrow", r"No: never stuff .*74 °C"),
    ("duck livers rosy, still pink: fine?", r"No, not pink: .*74 °C / 165 °F"),
    ("aunt leaves her stew on the stove all week and boils it every evening", r"No: boiling it up each day"),
    ("raw mince on the top shelf of the fridge?", "lowest shelf"),
    ("how long can I keep homemade hollandaise", "2 hours"),
    # small children and animals
    ("can a three year old child have whole grapes", "quarters"),
    ("is sheep milk fine for my ten month old baby to drink", "first birthday"),
    ("at what age can i give peanut to my baby", "six months"),
    ("may the puppy eat a few raisins", "vet"),
    # plants that poison
    ("raw elderberries on my muesli", "Not raw"),
    ("how do i soak dried lupini", "alkaloids"),
    ("ackee, the pod has not opened on the tree", "Unripe ackee is poisonous"),
    ("are castor beans edible after boiling", "Poison"),
    ("rare badger or bear steak", "71 °C"),
    ("garlic steeped in honey in a jar for months", "botulism"),
    ("defrost sealed vacuum packed salmon on the counter", "botulism"),
    # raw molluscs (FDA), home canning (CDC), no current (USDA FSIS)
    ("may grandad with a bad liver have raw mussels", r"^No: .*Vibrio"),
    ("raw cockles frozen for ten days, safe now?", r"^No: .*neither freezing"),
    ("we canned runner beans in a water bath, are they safe", "botulism"),
    ("load shedding for 7 hours, are the eggs and mince ok", "about 4 hours"),
    # accidents
    ("my niece is choking on a sausage and cannot breathe", "back|shoulder blades"),
    ("crust stuck in his throat, he can't talk", "shoulder blades"),
    ("boiling jam on my wrist", "cool running water"),
    ("rubbed my eye after the chilies", "Rinse the open eye"),
    ("there is a lump in my throat since the cashew cake", "emergency number"),
    ("pan lid flew off, her arm got scalded", "cool running water"),
    # allergies: a part taken out, little of it, the same oil; kin of latex; mammals
    ("she's allergic to walnuts, may we pick them out of the cake", "^No: picking it out"),
    ("fish allergy, can fries go in the same fryer", "fresh oil"),
    ("latex glove rash, is banana a fruit to mind with latex", "Not surely"),
    ("alpha gal, which meat is left", "Poultry"),
    # what has got into the food, what heats where
    ("a glass smashed over the stew pot", "Throw the food away"),
    ("weevils in my semolina rice tub", "throw that pack away"),
    ("heat the soup in its tin on the hob", "No: a closed tin bursts"),
    ("leave the stock simmering all night while i sleep", "Never leave"),
    ("alfalfa sprouts raw in a sandwich", "steaming hot"),
    ("does the wine boil off for my kids", "Not all of it"),
    ("my immunosuppressed husband and runny eggs", "71 °C"),
    # out of the cold
    ("salami roll in my school bag all day", r"No: throw it away"),
    ("packed lunch with chicken wraps and no fridge at work", "2 hours at the most"),
    ("bean salad outside for 5 hours", r"No: throw it away"),
    ("it's 36C on the terrace, cold cuts on the buffet", "1 hour at most"),
    ("how long does a crayfish sandwich last in the fridge", "1 day in the fridge"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "rule"), RULES)
def test_what_could_hurt_gets_the_rule(store: Store, text: str, rule: str) -> None:
    assert re.search(rule, ask(text, store=store).answer), ask(text, store=store).answer


@pytest.mark.parametrize(
    ("text", "rule"),
    [
        ("boil baby potatoes with salt how long", "min"),  # a size, no child
        ("how do i keep the cream from curdling in a sauce", "(?i)curdl|boil|heat"),
        ("what is black sesame", "(?i)sesame seed"),
        ("how long do hot dogs keep", "fridge"),
        ("how thick is eye of round steak cut", "(?i)beef|cut|mm"),
    ],
)
def test_near_misses_are_not_taken_for_accidents(store: Store, text: str, rule: str) -> None:
    answer = ask(text, store=store).answer
    assert re.search(rule, answer), answer
    assert not re.search("emergency|Rinse the open|vet's|No added salt", answer)


# Yes says "it is in there" to one question and "it may be eaten" to another.
@pytest.mark.parametrize(
    ("text", "lead"),
    [
        ("is praline a problem for people with nut allergy", "Yes: "),
        ("is bulgur a gluten allergen", "Yes: "),
        ("is buckwheat a gluten allergen", "No: "),
        ("should a coeliac avoid couscous", "Yes: "),
        ("is praline safe with a nut allergy", "No, not safe: "),
        ("is couscous gluten free", "No, not safe: "),
        ("does marzipan contain nuts", "Yes: "),
        ("is quinoa gluten free", "Yes: "),
    ],
)
def test_yes_and_no_follow_what_was_asked(store: Store, text: str, lead: str) -> None:
    assert ask(text, store=store).answer.startswith(lead), ask(text, store=store).answer


@pytest.mark.parametrize(
    "text",
    [
        "peanut allergy, hazelnuts instead?",
        "he is allergic to prawns, can we use lobster instead",
        "egg allergy, quail eggs as an option instead?",
        "milk allergy: sheep's cheese instead?",
    ],
)
def test_a_stand_in_that_harms_is_refused(store: Store, text: str) -> None:
    answer = ask(text, store=store).answer
    assert re.match("No(, not safe)?: ", answer), answer
    assert "doctor" in answer


def test_the_food_that_has_run_out_is_not_offered(store: Store) -> None:
    for text in ("ran out of cornstarch to thicken the stew", "out of soy sauce for the marinade"):
        answer = ask(text, store=store).answer
        assert answer.startswith("Instead of"), answer


def test_a_burger_is_timed_as_a_patty(store: Store) -> None:
    answer = ask("how many mins per side to fry homemade burgers", store=store).answer
    assert "patties" in answer
    assert "as it is" not in answer


# By memory of common kitchens: what the dish is made of.
@pytest.mark.parametrize(
    ("text", "rule"),
    [
        ("what's sinigang", "tamarind"),
        ("what is kedgeree", "smoked fish"),
        ("whats avial", "coconut"),
        ("explain lomo saltado", "soy"),
        ("what is calamansi", "sour"),
    ],
)
def test_dishes_of_many_kitchens_are_explained(store: Store, text: str, rule: str) -> None:
    assert re.search(rule, ask(text, store=store).answer), ask(text, store=store).answer


def test_what_a_dish_usually_holds_is_told_to_the_allergic(store: Store) -> None:
    assert re.match(
        "No, not safe: .*peanuts", ask("is kare kare ok with a peanut allergy", store=store).answer
    )
    assert re.match("Not surely|No", ask("is pancit gluten free", store=store).answer)
    assert not re.search("has peanuts|has.* tree nuts", ask("is tiger nut a tree nut", store=store).answer)


def test_home_made_food_has_no_label_to_go_by(store: Store) -> None:
    for text in (
        "how long til grandmas salsa goes off",
        "my own tomato chutney, how many days in the fridge",
    ):
        answer = ask(text, store=store).answer
        assert "within 2 days" in answer, answer
        assert "months" not in answer


def test_no_time_at_room_temperature_is_no_cooking_time(store: Store) -> None:
    for text in ("peeled boiled eggs at room temp, how long", "how long is fish pie safe on the worktop"):
        answer = ask(text, store=store).answer
        assert "2 hours" in answer, answer
        assert "Computed" not in answer


# USDA FSIS on freezing eggs; common practice for the rest.
@pytest.mark.parametrize(
    ("text", "rule"),
    [
        ("may i freeze leftover egg whites", "-18 °C"),
        ("jammy egg, how many minutes", "jammy inside. 8-9 min"),
        ("boil very ripe plantain how long", r"boiled: \d+ mm"),
        ("vegetarian swap for suet", "butter"),
        ("how many cups are 3 sticks of butter", "half a cup"),
        ("no cream of tartar, what can i use", "lemon juice"),
        ("lamb mince thawed in cold water, back in the freezer?", "Cook it first"),
        ("substitute for iru", "miso"),
        ("replace dried shrimp, shellfish allergy", "kombu"),
    ],
)
def test_small_gaps_stay_closed(store: Store, text: str, rule: str) -> None:
    assert re.search(rule, ask(text, store=store).answer), ask(text, store=store).answer


def test_what_is_kept_out_of_the_fridge_is_not_given_fridge_days(store: Store) -> None:
    answer = ask("where do whole sweet potatoes keep and how long do they last", store=store).answer
    assert "not in the fridge" in answer
    assert "days in the fridge" not in answer

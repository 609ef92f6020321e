"""No plan holds what an allergy bars, however it is said: the one property that must never break."""

from __future__ import annotations

from datetime import datetime

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from knowledge.foods.store import Store, open_store
from knowledge.names import key
from knowledge.planner import plan
from knowledge.planner.model import Kitchen, NoPlan, Plan
from knowledge.requests import request_of
from knowledge.text import read

NOW = datetime(2026, 3, 4, 17, 10)  # noqa: DTZ001  the cook's own clock
STORE: Store = open_store()

# What a cook calls it, and the allergens of Regulation (EU) No 1169/2011, annex II, that are meant.
ALLERGENS = {
    "peanuts": {"peanuts"},
    "shellfish": {"crustaceans", "molluscs"},
    "crustaceans": {"crustaceans"},
    "milk": {"milk"},
    "dairy": {"milk"},
    "egg": {"eggs"},
    "eggs": {"eggs"},
    "fish": {"fish"},
    "sesame": {"sesame"},
    "mustard": {"mustard"},
    "celery": {"celery"},
    "nuts": {"tree nuts"},
    "cashews": {"tree nuts"},
    "soya": {"soybeans"},
    "gluten": {"gluten"},
    "wheat": {"wheat"},
}
PHRASES = (
    "allergic to {}", "I'm allergic to {}", "my son's badly allergic to {}", "allergies: {}",
    "allergies - {}",
    "one of us is intolerant to {}", "{} allergy", "she has a {} allergy", "we can't have {}",
    "{} allergies in the house", "Allergens: {}", "he can't eat {} (allergy)",
)  # fmt: skip
LAST = (" and ", " or ", " & ", ", ", " / ", " and also ", ", and ")
FRIDGE = (
    "400 g chicken breast", "300 g prawns", "4 salmon fillets", "a jar of satay sauce", "peanut butter",
    "tahini", "200 ml cream", "egg noodles", "4 eggs", "rice", "potatoes", "carrots", "sugar snap peas",
    "soy sauce", "dijon mustard", "fish sauce", "parmesan", "cashews", "celery", "pesto", "leeks", "onion",
    "firm tofu", "feta", "oyster sauce", "butter", "spaghetti", "couscous",
)  # fmt: skip


@st.composite
def messages(draw: st.DrawFn) -> tuple[str, frozenset[str]]:
    """A fridge and an allergy, in either order, with the allergens that must stay out."""
    named = draw(st.lists(st.sampled_from(sorted(ALLERGENS)), min_size=1, max_size=4, unique=True))
    joint = draw(st.sampled_from(LAST))
    between = joint if joint in (" / ", " & ", ", ") else ", "
    said = named[0] if len(named) == 1 else f"{between.join(named[:-1])}{joint}{named[-1]}"
    allergy = draw(st.sampled_from(PHRASES)).format(said)
    fridge = ", ".join(draw(st.lists(st.sampled_from(FRIDGE), min_size=3, max_size=7, unique=True)))
    stop = draw(st.sampled_from([". ", "\n", "! "]))
    in_front = draw(st.booleans())
    text = f"{allergy}{stop}{fridge}. for 3" if in_front else f"{fridge}{stop}{allergy}{stop}for 3"
    return text, frozenset[str]().union(*(ALLERGENS[name] for name in named))


@settings(max_examples=120, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(messages())
def test_nothing_barred_is_cooked_served_or_suggested(message: tuple[str, frozenset[str]]) -> None:
    text, barred = message
    reading = read(text, store=STORE)
    made = plan(request_of(reading, store=STORE, kitchen=Kitchen(), now=NOW), store=STORE)
    shown = made.nearest if isinstance(made, NoPlan) else made
    if shown is None:
        return
    assert not held(shown) & barred, text
    for line in (*shown.advice, shown.flavour, shown.liquid.what if shown.liquid else ""):
        named = foods_named(line)
        assert "stock" in line or not named & barred, (text, line)


def held(made: Plan) -> set[str]:
    """The allergens of every food that the plan touches, and of what it says to contain."""
    ids = {item.food_id for item in made.items} | {food for step in made.steps for food in step.foods}
    found = {token for food in ids for token in STORE.food(food).allergens}
    for caution in made.cautions:
        if caution.text.startswith("Contains "):
            found |= set(
                caution.text.removeprefix("Contains ").rstrip(".").replace(" and ", ", ").split(", ")
            )
    return found


def foods_named(line: str) -> set[str]:
    """The allergens of all foods that single words of a line name."""
    words = [key(word) for word in line.replace(",", " ").replace(".", " ").split()]
    foods = [STORE.food(STORE.names()[word][0]) for word in words if STORE.names().get(word)]
    return {token for food in foods for token in food.allergens}

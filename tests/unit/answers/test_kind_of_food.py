"""What kind of food something is, and numbers that no oven and no cup has."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from knowledge.answers import ask
from knowledge.foods.store import Store, open_store


@pytest.mark.parametrize(
    ("text", "begins", "says"),
    [
        ("is buckwheat a cereal", "No", "pseudocereal"),
        ("is okra really a fruit", "Yes", "seed pod"),
        ("are lentils a pulse", "Yes", "legume"),
        ("is a pumpkin a fruit or a vegetable?", "By botany", "squash"),
        ("is couscous technically a grain", "No", "wheat"),
        ("is haddock an oily fish", "No", "white fish"),
        ("is thyme a herb", "Yes", "herb"),
        ("is venison a red meat or game", "Venison", "game"),
    ],
)
def test_a_kind_is_told(store: Store, text: str, begins: str, says: str) -> None:
    answer = ask(text, store=store).answer
    assert answer.startswith(begins), answer
    assert says in answer


@pytest.mark.parametrize(
    "text", ["is okra safe for a toddler", "is rhubarb poisonous", "is a lobster shellfish"]
)
def test_what_asks_of_something_else_gets_no_kind(store: Store, text: str) -> None:
    assert "botany" not in ask(text, store=store).answer


def test_grams_of_flour_are_no_gram_flour(store: Store) -> None:
    by_weight = ask("250 gram flour in cups", store=store).answer
    assert by_weight == ask("250 g flour in cups", store=store).answer.replace("gram flour", "flour")
    assert "gram flour" in ask("what does a cup of gram flour weigh", store=store).answer


def test_a_third_is_said_as_a_third(store: Store) -> None:
    assert ask("2/3 cup of sugar in grams", store=store).answer.startswith("2/3 cup of sugar")
    assert ask("1 1/3 cups of sugar in grams", store=store).answer.startswith("1 1/3 cups of sugar")


def test_no_mark_beyond_the_dial(store: Store) -> None:
    assert ask("gas mark 14 in fahrenheit", store=store).answer.startswith("There is no gas mark 14")
    assert "120 °C" in ask("gas mark 1/2 in celsius", store=store).answer


_SAID = st.sampled_from(
    ("set the oven to {} for pork", "my chicken reads {}", "what is {} in gas marks", "{} flour to cups",
     "is {} ok for lamb in the smoker", "how small do carrots go with {} potatoes", "fridge at {}, milk ok?",
     "how long for a {} turkey", "boil eggs at {}", "{} no sorry {} of rice in grams")
)  # fmt: skip
_NUMBER = st.one_of(
    st.integers(-999, 99_999).map(str), st.floats(-500, 5000).map(lambda v: f"{v:.2f}"),
    st.tuples(st.integers(0, 9), st.integers(0, 9)).map(lambda p: f"{p[0]}/{p[1]}"),
)  # fmt: skip
_UNIT = st.sampled_from(
    (
        "",
        "c",
        "f",
        "°C",
        "degrees",
        "g",
        "kg",
        "lb",
        "cups",
        "mm",
        "cm",
        "inch",
        "m",
        "ft",
        "min",
        "hours",
        "%",
    )
)


@pytest.fixture(scope="module")
def opened() -> Store:
    return open_store()


@given(said=_SAID, number=_NUMBER, unit=_UNIT)
@settings(max_examples=150, deadline=None)
def test_no_number_raises(opened: Store, said: str, number: str, unit: str) -> None:
    told = ask(said.replace("{}", f"{number} {unit}".strip()), store=opened)
    assert told.answer

"""Fire, smoking fat and dishes that shatter: what to do first, and what never to do."""

from __future__ import annotations

import re

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store

SHATTERS = "^(?:Not in a dish of glass|No: a dish of glass|Not on anything wet)"
STAYS_PUT = "(?:^Heat off|^No: don't move)"


@pytest.mark.parametrize(
    "text",
    [
        "moussaka in an earthenware dish out of the fridge into a preheated oven, ok?",
        "may i pour boiling stock into a chilled glass pitcher",
        "ceramic baking dish straight from the freezer under the broiler",
        "porcelain ramekins on the gas burner to melt butter",
        "stoneware on an induction ring?",
        "terracotta on the hob?",
        "hot glass lid under the tap to cool it",
        "set the hot crumble down on a damp worktop?",
    ],
)
def test_glass_and_stoneware_shatter_before_anything_is_cooked_from_frozen(store: Store, text: str) -> None:
    answer = ask(text, store=store).answer
    assert re.search(SHATTERS, answer), answer
    assert not answer.startswith("Yes")


@pytest.mark.parametrize(
    "text",
    [
        "can i cook a frozen salmon fillet straight from the freezer in the oven",
        "how long does stew in a stoneware bowl keep in the fridge",
        "how do i clean my ceramic hob",
        "onion rings in the oven from frozen",
    ],
)
def test_frozen_food_without_a_brittle_dish_is_another_matter(store: Store, text: str) -> None:
    assert not re.search(SHATTERS, ask(text, store=store).answer)


@pytest.mark.parametrize(
    "text",
    [
        "lard in the skillet started smoking badly",
        "the wok oil is smoking, do i lift it onto the balcony?",
        "grease overheated and smoking, pour water in?",
        "fat in the fryer is foaming over",
        "wet cloth over a smoking fryer?",
        "dripping smoking in the oven, help",
    ],
)
def test_smoking_fat_stays_where_it_stands(store: Store, text: str) -> None:
    answer = ask(text, store=store).answer
    assert re.search(STAYS_PUT, answer), answer
    assert re.search("no water", answer)
    assert "move the pan off" not in answer


def test_a_question_for_a_smoke_point_is_no_emergency(store: Store) -> None:
    for text in ("when does ghee smoke", "smoke point of rice bran oil", "smoked haddock in a pan with milk"):
        assert not re.search(STAYS_PUT, ask(text, store=store).answer)


@pytest.mark.parametrize(
    ("text", "rule"),
    [
        ("her apron went up, it's alight", "roll over"),
        ("my hair caught fire over the candle", "roll over"),
        ("the oven glove caught fire", "into the sink"),
        ("the tablecloth is burning", "into the sink"),
        ("i have set myself on fire", "roll over"),
        ("flames in the microwave, shall i open it", "door or lid shut"),
        ("kettle is sparking", "door or lid shut"),
        ("his sleeve is caught in the blender", "Pull the plug"),
        ("pan of fat on fire", "Never water"),
    ],
)
def test_each_fire_gets_its_own_first_step(store: Store, text: str, rule: str) -> None:
    assert re.search(rule, ask(text, store=store).answer), ask(text, store=store).answer


@pytest.mark.parametrize(
    "text",
    ["how do i prevent my sleeves from catching fire", "microwave a potato how long", "plug in cooker"],
)
def test_no_fire_is_heard_where_nothing_burns(store: Store, text: str) -> None:
    assert not re.search("roll over|lid shut. Switch", ask(text, store=store).answer)

"""Two things asked at once get two answers; a list of foods gets one for each."""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.answers.several import questions_in
from knowledge.foods.store import Store


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("core temp for duck breast, pork loin and cod?", ("Duck", "Pork loin", "Cod")),
        ("how long do leeks or kale keep in the fridge", ("Leeks", "Kale")),
        ("does pesto, tahini or satay sauce hold nuts", ("pesto", "tahini", "satay")),
        ("is couscous or quinoa gluten free", ("No, not safe: couscous", "Yes: plain quinoa")),
        ("what can I use instead of yogurt and eggs", ("Instead of yogurt", "Instead of eggs")),
        ("what is kohlrabi and what is jicama?", ("Kohlrabi", "Jicama")),
        ("What is the safe temp for lamb mince? And how many days in the fridge?", ("71 °C", "1 day")),
        ("whats an aubergine? my flatmate is from leeds", ("Eggplant",)),
        ("how do i tell pork chops are done and how long do they keep", ("63 °C", "days in the fridge")),
    ],
)  # fmt: skip
def test_each_is_answered(store: Store, text: str, wanted: tuple[str, ...]) -> None:
    said = ask(text, store=store)
    assert said.known
    assert all(part in said.answer for part in wanted), said.answer


@pytest.mark.parametrize(
    "text",
    [
        "how small should I cut parsnips to go with carrots?",  # two foods, one question
        "my son can't have milk or eggs, what cake can he eat",  # a list of what is kept out
        "cashew cream, what can I use",
        "why did my hollandaise split?",
    ],
)
def test_what_is_one_question_stays_one(store: Store, text: str) -> None:
    assert questions_in(text) == (text,)
    assert "rest of what you ask" not in ask(text, store=store).answer


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("core temp for trout, and for scallops?", ("Trout", "Scallops")),
        ("how long to boil eggs and carrots", ("yolk", "Carrots, boiled")),
        ("120 g butter in cups and 300 g flour in cups", ("120 grams of butter", "300 grams of flour")),
        ("375 f in c and gas mark", ("191 °C", "gas mark 5")),
        ("2 kg in lb and oz", ("pounds", "ounces")),
        ("How many g is 0.5 cup of rice? And 1.25 cups sugar?", ("0.5 cups of rice", "1.25 cups of sugar")),
    ],
)  # fmt: skip
def test_no_part_is_dropped(store: Store, text: str, wanted: tuple[str, ...]) -> None:
    said = ask(text, store=store).answer
    assert all(part in said for part in wanted), said


def test_what_is_not_known_of_two_is_said(store: Store) -> None:
    said = ask("How hot must turkey get? And what will turkeys cost at easter in Dublin?", store=store).answer
    assert "74 °C" in said
    assert said.endswith("The rest of what you ask I don't know.")


def test_an_emergency_is_alone(store: Store) -> None:
    said = ask(
        "My girl is choking on a grape! What do I do? And how long do grapes keep?", store=store
    ).answer
    assert "blows between the shoulder blades" in said
    assert "fridge" not in said


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("what is miso made of", "soybeans"),
        ("whats kohlrabi and how do i cook it", "Kohlrabi"),
        ("why must vegetables be blanched before freezing?", "enzymes"),
    ],
)  # fmt: skip
def test_what_it_is_with_a_little_more(store: Store, text: str, wanted: str) -> None:
    assert wanted in ask(text, store=store).answer

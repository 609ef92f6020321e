"""How small to cut foods so that they are ready together, and as a dish asks for it."""

from __future__ import annotations

import re
from itertools import product

import pytest

from knowledge.answers import ask
from knowledge.answers.cooking.heating import minutes
from knowledge.answers.cooking.together import Wanted, is_close, matched
from knowledge.answers.reading.question import question_of
from knowledge.foods.pieces import piece_of
from knowledge.foods.store import Store
from knowledge.planner.model import Kitchen

TRAYS = ("turnips and leeks", "celeriac, carrots and red onions", "pumpkin and cod", "beetroot and sausages")
POTS = (
    "swede and cabbage",
    "potatoes, carrots and cauliflower",
    "parsnips and eggs",
    "kohlrabi and broccoli",
)


@pytest.mark.parametrize(
    ("foods", "way"), [*((foods, "roast") for foods in TRAYS), *((foods, "boil") for foods in POTS)]
)
def test_foods_are_cut_to_be_ready_together_where_any_cut_does_it(store: Store, foods: str, way: str) -> None:
    question = question_of(foods, store=store, kitchen=Kitchen())
    chosen = matched(question, [Wanted(mention=m, is_to_cut=True) for m in question.mentions], way)
    assert chosen is not None
    latest = max(timed.min for timed in chosen)
    if all(is_close(timed.min, latest) for timed in chosen):
        for timed in chosen:  # each piece is timed again on its own
            (alone,) = minutes(question, timed.mention.food, [timed.piece], way)
            assert alone.likeliest == pytest.approx(timed.min)
        return
    by_food = []  # every cut of the tables, not only those that were tried
    for mention in question.mentions:
        cuts = [store.cut(cut_id) for cut_id in mention.food.cuts]
        pieces = [piece_of(mention.food, cut) for cut in cuts if cut.parts or cut.size_mm >= 10]
        taken = [time.likeliest for time in minutes(question, mention.food, pieces, way)]
        by_food.append([time for time in taken if time])
    assert not any(all(is_close(t, max(times)) for t in times) for times in product(*by_food))


@pytest.mark.parametrize(
    ("text", "rule"),
    [
        ("what size swede and leeks to boil so they are ready together", r"swede into \d+ mm.*boiled"),
        ("how big do I cut parsnips to go with peas", r"parsnips into \d+ mm.*ready with peas.*boiled"),
        ("how thick to slice pork and green peppers for a stir fry", r"pork into \d mm.*pan.*63 °C"),
        ("celery and carrot for a ragu, how fine", r"celery and carrot into \d mm.* dice"),
        ("how big for lamb and courgette kebabs", r"lamb into .*grill.*63 °C"),
        ("what size sweet potatoes to roast with trout", r"into 1[02] mm"),
        ("beetroot, parsnips and leeks on one tray, what sizes", r"beetroot.*parsnips.*leeks.*: \d+ min"),
        ("how small for turnips to go with chicken drumsticks", r"ready with chicken drumsticks.*74 °C"),
        ("julienne carrots for chow mein, what size should pork and cabbage be", r"with carrots \(3 mm"),
        ("how small for swede to roast in 40 minutes with carrots", r"ready at 40 min|: 40 min|: 3\d min"),
        ("how big can celeriac be to be soft in 15 min, boiled", r"celeriac into \d+ mm.*1[3-7] min"),
        ("how thin to shred carrots and cabbage for slaw", r"carrots and cabbage into 2-3 mm"),
        ("what size of cauliflower florets with potatoes in curry", r"cauliflower into \d+ mm.*florets"),
        ("do turnips take longer than peas to boil", r"^Yes: turnips take longer"),
        ("does cabbage cook faster than swede in a pot", r"^Yes: swede"),
        ("which goes in first, oxtail or parsnips, for a stew", r"^Oxtail takes longer"),
        ("how thick should a lamb burger be", r"15-20 mm.*71 °C"),
        ("what size lardons", r"5-8 mm"),
        ("cut size for courgette slices on the barbecue", r"8-12 mm"),
        ("will leeks and carrots be done at the same time", r"^(?:Yes|No)\b.*leeks.*min.*carrots.*min"),
        ("do turnips cook as fast as swede", r"^(?:Yes|No)\b"),
        ("can I boil eggs and new potatoes together", r"^Yes"),
        ("how thin should I slice spuds for a potato gratin", r"2-3 mm"),
        ("what size do you dice cucumber for kachumber", r"4-7 mm"),
        ("how thick are aubergine slices for parmigiana, what thickness", r"8-10 mm"),
        ("which size cubes of mutton for goulash", r"30-40 mm"),
    ],
)  # fmt: skip
def test_a_question_of_sizes_is_computed_or_told(store: Store, text: str, rule: str) -> None:
    answer = ask(text, store=store)
    assert answer.known, text
    assert re.search(rule, answer.answer), answer.answer


@pytest.mark.parametrize(
    "text",
    [
        "what size pot for potatoes and leeks",
        "how long do carrots take with potatoes in the oven",
        "can I freeze leeks and carrots together",
        "is it safe to store pork and chicken together",
        "what size turkey for 8 people with potatoes",
    ],
)
def test_what_is_not_cut_gets_no_sizes(store: Store, text: str) -> None:
    assert not re.search(r"\bCut \w+", ask(text, store=store).answer)


@pytest.mark.parametrize(
    ("text", "least"),
    [
        ("how thick should a venison burger be", "71 °C"),
        ("what size of chicken kofta with carrots on a tray", "74 °C"),
        ("how big for pork meatballs", "71 °C"),
    ],
)
def test_what_is_minced_has_the_minimum_of_mince(store: Store, text: str, least: str) -> None:
    answer = ask(text, store=store).answer
    assert least in answer
    assert "63 °C" not in answer


def test_a_given_size_is_kept(store: Store) -> None:
    answer = ask("how small should I cut carrots to boil with 30 mm swede", store=store).answer
    assert "swede (30 mm" in answer

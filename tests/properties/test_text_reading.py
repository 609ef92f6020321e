"""What must hold for every message whatsoever."""

from __future__ import annotations

import json
from functools import lru_cache
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from knowledge.foods.model import Role
from knowledge.foods.store import Store, open_store
from knowledge.text import read
from knowledge.text.model import Context, Kind
from knowledge.text.normalise import flatten, key, singular
from knowledge.text.roles import Role as TextRole
from knowledge.text.seen import look
from knowledge.text.tokens import tokenise
from knowledge.text.vocabulary import vocabulary, words

DATA = Path(__file__).parents[1] / "data"

_QUICK = settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
_KITCHEN = [
    "carrots",
    "rice",
    "no",
    "2",
    "1/2",
    "x",
    "lb",
    "tin",
    "of",
    "for",
    "at",
    "half",
    "six",
    "(",
    ")",
    ",",
    "not",
    "instead",
    "of",
    "swap",
    "the",
    "oven",
    "is",
    "done",
    "burning",
    "🥕",
    "½",
    "9**9**9",
    "\n",
    "-",
    "frozen",
    "?",
]


@lru_cache(maxsize=1)
def store() -> Store:
    return open_store()


@_QUICK
@given(st.text(max_size=400))
def test_no_text_makes_the_reader_fail(text: str) -> None:
    assert read(text, store=store()).text == text


@_QUICK
@given(st.lists(st.sampled_from(_KITCHEN), max_size=60).map(" ".join))
def test_no_kitchen_talk_makes_the_reader_fail(text: str) -> None:
    reading = read(text, store=store())
    if reading.kind is Kind.OTHER:
        assert reading.items == ()
    assert (reading.event is not None) == (reading.kind is Kind.COOK_EVENT)
    assert (reading.swap is not None) == (reading.kind is Kind.SWAP)


@_QUICK
@given(st.text(max_size=40))
def test_keys_are_stable(name: str) -> None:
    assert key(key(name)) == key(name)


@_QUICK
@given(st.from_regex(r"[a-z]{1,12}", fullmatch=True))
def test_the_singular_of_a_singular_is_itself_or_shorter(word: str) -> None:
    assert len(singular(word)) <= len(word)


@_QUICK
@given(
    st.integers(1, 19),
    st.sampled_from(["g", "kg", "lb", "oz"]),
    st.sampled_from(["carrots", "chicken thighs", "basmati rice"]),
    st.booleans(),
)
def test_a_weight_reads_the_same_before_and_after_its_food(
    n: int, unit: str, food: str, before: bool
) -> None:
    grams = {"g": 1.0, "kg": 1000.0, "lb": 453.592, "oz": 28.3495}[unit]
    text = f"{n} {unit} {food}, leeks" if before else f"{food} {n}{unit}, leeks"
    item = read(text, store=store()).items[0]
    assert (item.qty, item.unit, item.grams) == (n, unit, round(n * grams))


@lru_cache(maxsize=1)
def _names() -> tuple[str, ...]:
    """Every name of a food that cooks, as the store calls it; a cooked dish may be what is aimed at."""
    foods = (food for food in store().foods() if food.role is Role.COOK and food.group != "leftover")
    return tuple(food.name for food in foods)


_AMOUNTS = ["", "2 ", "300 g ", "1.5 lb ", "half a ", "a bag of ", "a splash of ", "lots of ", "3 x 120 g "]
_BETWEEN = [", ", "\n", "; ", " and ", " + ", " :( , "]
_LIST = st.lists(
    st.tuples(st.sampled_from(_AMOUNTS), st.integers(0, 10_000), st.sampled_from(_BETWEEN)),
    min_size=3,
    max_size=7,
)


@settings(max_examples=200, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(_LIST)
def test_no_food_of_a_list_vanishes(drawn: list[tuple[str, int, str]]) -> None:
    """Each one is at hand, excluded or named as unknown: all of the list is told in what was read."""
    names = _names()
    foods = [(amount, names[n % len(names)], between) for amount, n, between in drawn]
    named = "".join(f"{amount}{name}{between}" for amount, name, between in foods).rstrip(",;+ \n:(")
    text = f"3 leeks, {named}"  # one that is no plain word as well: "heart" alone is talk
    reading = read(text, store=store())
    told = " ".join([*(i.name for i in reading.items), *(i.phrase for i in reading.items),
                     *reading.excluded, *reading.unknown]).lower()  # fmt: skip
    ids = {item.food_id for item in reading.items}
    for _, name, _ in foods:
        food = store().named(name)
        assert food is not None
        label = vocabulary(store()).named(name).name  # several foods may go by one label
        assert food.id in ids or label in told or set(key(name).split()) & set(key(told).split()), name


@pytest.mark.parametrize("file", ["dev", "own_a", "own_b", "own_c", "own_d", "own_e", "own_f"])
def test_every_food_found_in_a_labelled_dinner_is_told(file: str) -> None:
    """Whatever the reader finds in a dinner is at hand, refused, or told to be the dish aimed at."""
    for line in (DATA / f"messages_{file}.jsonl").read_text(encoding="utf-8").splitlines():
        gold = json.loads(line)
        if gold["kind"] != "plan":
            continue
        reading = read(gold["text"], store=store())
        told = {item.food_id for item in reading.items} | {
            food.id for name in reading.excluded if (food := store().named(name))
        }
        flat = flatten(gold["text"], words().emoji)
        for found in look(flat, tokenise(flat.text), vocabulary(store()), Context()).found:
            if found.role in (TextRole.HAVE, TextRole.REFUSED) and found.named.food_id:
                assert found.named.food_id in told, (gold["text"], found.named.name)


_SWAP_TALK = [
    "swap",
    "instead",
    "of",
    "for",
    "not",
    "no",
    "out",
    "in",
    "carrots",
    "peas",
    "use",
    "got",
    "?",
    ",",
]


@_QUICK
@given(st.lists(st.sampled_from(_SWAP_TALK), max_size=250).map(" ".join))
def test_no_talk_of_swaps_makes_the_reader_fail(text: str) -> None:
    assert read(text, store=store()).kind in Kind


_REPEATED = [
    "and ", "no ", "chicken (thigh ", "((", "one fifty five ", "7:30 ", "me and the twins ", "1/2 ",
    "9**", ",", "leeks, ", "swap leeks for peas ", "allergic to eggs ", "not the ", "🥕", "\u202e",
]  # fmt: skip


@pytest.mark.parametrize("said", _REPEATED)
def test_what_is_said_over_and_over_is_read(said: str) -> None:
    """A pattern that tries every way to read it would not come back; how long it takes is in `bench`."""
    assert read((said * 5000)[:5000], store=store()).kind in Kind

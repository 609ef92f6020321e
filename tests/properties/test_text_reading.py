"""What must hold for every message whatsoever."""

from __future__ import annotations

from functools import lru_cache

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from knowledge.foods.store import Store, open_store
from knowledge.text import read
from knowledge.text.model import Kind
from knowledge.text.normalise import key, singular

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

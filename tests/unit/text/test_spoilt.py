"""What has gone off is seen in any words, and only of the food it is said of. Messages of our own."""

from __future__ import annotations

from datetime import datetime

import pytest

from knowledge.foods.store import Store
from knowledge.text import read
from knowledge.text.model import Context, Kind, Mode

WEDNESDAY = datetime(2026, 3, 4, 18, 0)  # noqa: DTZ001  the cook's own clock


def off(store: Store, text: str) -> set[str]:
    return {one.name for one in read(text, store=store, now=WEDNESDAY).spoilt if not one.eaten}


@pytest.mark.parametrize(
    ("text", "food"),
    [
        ("duck breasts 2, they whiff, leeks", "duck breast"),
        ("turkey steaks (smell a bit odd) 300g, leeks", "turkey breast"),
        ("leeks, the haddock reeks of ammonia, potatoes", "haddock"),
        ("leeks and potatoes, my trout has a strange smell", "trout"),
        ("no idea why it smells sour: turkey mince 300 g, leeks", "ground turkey"),
        ("2 smelly kippers, leeks", "herring"),
        ("the fish smells funky, 300 g haddock, leeks", "haddock"),
        ("veal mince 400 g gone bad, noodles", "ground veal"),
        ("pork chops taste off, leeks", "pork chop"),
        ("squid feels slimy, leeks", "squid"),
        ("duck legs 2 sticky to the touch, leeks", "duck leg"),
        ("bacon looks a bit green, leeks", "bacon"),
        ("leeks, venison steaks with a green sheen", "venison"),
        ("mouldy tortillas, eggs, leeks", "tortilla"),
        ("cream with mould on it, leeks, eggs", "heavy cream"),
        ("2 days past its use by date turkey mince, leeks", "ground turkey"),
        ("haddock, the use by was yesterday, leeks", "haddock"),
        ("expired duck legs, leeks", "duck leg"),
        ("leeks, pork ribs 3 days out of date, carrots", "pork rib"),
        ("ground lamb (best by date was last Friday), leeks", "ground lamb"),
        ("tofu went off, noodles, leeks", "tofu"),
        ("rotten potatoes, leeks, eggs", "potato"),
        ("slimy mushrooms, leeks, eggs", "mushroom"),
    ],
)
def test_a_food_that_is_off_is_seen(store: Store, text: str, food: str) -> None:
    assert off(store, text) == {food}


@pytest.mark.parametrize(
    "text",
    [
        "duck breasts that do not smell bad, leeks",
        "haddock smells fresh, leeks",
        "turkey mince with no sign of going off, leeks",
        "the house smells great, sausages, leeks",
        "leeks past their best before, sausages",
        "wrinkled carrots, wilted chard, sprouting garlic, sausages",
        "best before on the lentils was last month, sausages",
        "make the ribs a bit sticky, pork ribs, honey",
        "use by date is tomorrow: turkey mince, leeks",
        "haddock before it goes off, leeks",
        "slimy okra, sausages",
        "the kids have gone off leeks, sausages, potatoes",
        "green pepper is green, sausages, leeks",
        "day off, turkey mince, leeks",
        "meat falling off the bone please, lamb shanks, leeks",
        "frozen haddock, best before was last month, leeks",
        "blue cheese, leeks, pasta",
        "we have gone off meat, lentils, leeks",
        "boysenberries with mould, sausages, leeks",
        "kids hate fishy smells, sausages, leeks",
    ],
)
def test_what_only_sounds_like_it(store: Store, text: str) -> None:
    assert off(store, text) == set()


def test_only_the_food_it_is_said_of_goes(store: Store) -> None:
    text = "bacon, sausages past their use by, leeks, eggs"
    assert off(store, text) == {"sausage"}
    assert off(store, "bacon and sausages smell sour, leeks") == {"bacon", "sausage"}


@pytest.mark.parametrize(
    ("text", "days"),
    [
        ("leftover rice from sunday, eggs", 3),
        ("rice boiled four days ago, eggs", 4),
        ("cooked pasta (a week old), eggs", 7),
        ("leftover chicken from last saturday, leeks", 4),
        ("potatoes boiled a few days ago, eggs", 3),
        ("pork chops from a week ago, leeks", 7),
        ("3 day old rice, eggs, leeks", 3),
        ("turkey mince in the fridge for 6 days, leeks", 6),
    ],
)
def test_what_was_kept_too_long_is_off(store: Store, text: str, days: float) -> None:
    assert [one.days for one in read(text, store=store, now=WEDNESDAY).spoilt] == [days]


@pytest.mark.parametrize(
    "text",
    [
        "leftover rice from yesterday, eggs",  # UK FSA: rice keeps one day
        "leftover chicken from monday, leeks",  # and other cooked food two
        "cooked rice frozen two weeks ago, eggs",
        "onions from last week, eggs",
        "leftover monday lamb, leeks",
        "tinned beans from last year, eggs",
    ],
)
def test_what_keeps_is_not_off(store: Store, text: str) -> None:
    assert off(store, text) == set()


def test_leftovers_of_no_known_day_are_asked_about(store: Store) -> None:
    (one,) = read("leftover rice, eggs, leeks", store=store, now=WEDNESDAY).spoilt
    assert (one.sign, one.eaten) == ("unknown age", True)


@pytest.mark.parametrize(
    ("text", "name", "eaten"),
    [
        ("mouldy parsnips, sausages", "parsnip", True),
        ("gruyere with a little mould, leeks", "gruyere", True),
        ("feta with a little mould, leeks", "feta", False),
        ("mouldy ricotta, leeks", "ricotta", False),
    ],
)
def test_what_is_hard_is_cut_around_the_mould(store: Store, text: str, name: str, eaten: bool) -> None:
    """USDA FSIS: soft cheese with mould is thrown away, hard cheese and firm vegetables are cut."""
    (one,) = read(text, store=store, now=WEDNESDAY).spoilt
    assert (one.name, one.eaten) == (name, eaten)


@pytest.mark.parametrize(
    "text",
    [
        "300 g turkey mince gone off",
        "think the cod has gone off, 300 g, a leek and noodles for 2",
        "cream's off, eggs, leeks, bacon 100 g",
    ],
)
def test_a_list_with_something_off_is_a_plan_to_warn_of(store: Store, text: str) -> None:
    reading = read(text, store=store, now=WEDNESDAY)
    assert reading.kind is Kind.PLAN
    assert reading.spoilt


@pytest.mark.parametrize(
    ("text", "state"),
    [
        ("duck legs bought yesterday, leeks", None),
        ("duck legs marinated since yesterday, leeks 2, rice", None),
        ("duck legs from yesterday, leeks", "leftover"),
        ("veal came out of the freezer last night and into the fridge, leeks", "raw"),
        ("dry aged sirloin steaks 2, leeks", None),
        ("chestnut mushrooms a bit dry, leeks", None),
        ("dried mushrooms 20 g, leeks", "dried"),
        ("veal moved from the freezer to the fridge yesterday, leeks", "raw"),
        ("veal from the freezer, leeks from the fridge", "frozen"),
    ],
)
def test_what_was_bought_thawed_or_aged_is_in_no_other_state(
    store: Store, text: str, state: str | None
) -> None:
    assert read(text, store=store, now=WEDNESDAY).items[0].state == state


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("the chard went slimy, got leeks", Kind.SWAP),
        ("the cream has gone off, use yoghurt instead", Kind.SWAP),
        ("is 5 day old cooked chicken still good?", Kind.QUESTION),
    ],
)
def test_a_swap_or_question_about_what_is_off_stays_one(store: Store, text: str, kind: Kind) -> None:
    assert read(text, store=store, now=WEDNESDAY).kind is kind


@pytest.mark.parametrize("text", ["the duck smells a bit funny", "oh, the duck has gone off"])
def test_what_is_off_leaves_the_plan_in_hand(store: Store, text: str) -> None:
    context = Context(mode=Mode.PLANNED, foods=("duck leg", "leek"))
    reading = read(text, store=store, context=context, now=WEDNESDAY)
    assert (reading.kind, reading.amends) == (Kind.PLAN, True)
    assert "duck leg" in {one.name for one in reading.spoilt if not one.eaten}


@pytest.mark.parametrize(
    "text",
    [
        "haddock (use by 2nd of march), leeks",
        "haddock, use-by: 28/2, leeks",
        "haddock UB 1.3.26, leeks",
        "haddock, use by date is the 3rd, leeks",
        "haddock, expiry Feb 27, leeks",
        "haddock, best before 30 December, leeks",
    ],
)
def test_a_date_that_has_passed_counts(store: Store, text: str) -> None:
    assert off(store, text) == {"haddock"}


@pytest.mark.parametrize(
    "text",
    [
        "haddock (use by 5th of march), leeks",
        "haddock, use by 4 March, leeks",  # today
        "haddock, use-by 5/3, leeks",
        "haddock, use by the 28th, leeks",
        "haddock, use by 2/4, leeks",  # in April, or in February
        "leeks best before 1 march, haddock",
        "haddock 1/2, use leeks",
    ],
)
def test_a_date_to_come_does_not(store: Store, text: str) -> None:
    assert off(store, text) == set()


def test_a_list_with_something_marinated_is_a_plan(store: Store) -> None:
    reading = read("duck legs marinated since yesterday, rice", store=store, now=WEDNESDAY)
    assert (reading.kind, [item.state for item in reading.items]) == (Kind.PLAN, [None, None])

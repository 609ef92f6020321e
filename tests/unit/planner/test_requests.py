"""From readings to requests, and kitchens as they are described."""

from __future__ import annotations

from datetime import datetime

import pytest

from bot.commands.plan import answer_json
from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.kitchens import described
from knowledge.planner.model import Kitchen, NoPlan, Plan, Request
from knowledge.planner.sizes import size_of
from knowledge.requests import request_of, seconds_until
from knowledge.text import read
from knowledge.text.model import Item, Kind, Reading, ReadyBy
from tests.unit.planner.kitchen import asked as dinner_said

NOW = datetime(2026, 3, 4, 17, 10)  # noqa: DTZ001  the cook's own clock


def item(name: str, **more: object) -> Item:
    fields: dict[str, object] = {
        "name": name, "food_id": name, "qty": None, "unit": None, "grams": None, "state": None,
        "cut": None, "size": None, "phrase": name, "sure": True,
    }  # fmt: skip
    return Item(**{**fields, **more})  # type: ignore[arg-type]


def asked(store: Store, reading: Reading, base: Request | None = None, **more: object) -> Request:
    return request_of(reading, store=store, kitchen=Kitchen(), now=NOW, base=base, **more)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("clock", "minutes"),
    [("18:00", 50), ("17:10", 0), ("17:00", -10), ("12:30", 19 * 60 + 20), ("nonsense", None)],
)
def test_deadline_is_counted_from_the_cooks_clock(clock: str, minutes: int | None) -> None:
    seconds = seconds_until(ReadyBy(clock=clock), NOW)
    assert seconds == (None if minutes is None else minutes * 60)


def test_an_amendment_is_laid_over_the_request_before(store: Store) -> None:
    base = asked(
        store,
        Reading(kind=Kind.PLAN, text="", items=(item("potato", grams=300.0), item("carrot")), people=2.0),
    )
    after = asked(
        store,
        Reading(
            kind=Kind.PLAN,
            text="",
            items=(item("leek"), item("potato", grams=500.0)),
            excluded=("carrot",),
            people=6.0,
            not_vessel=("sheet pan",),
            amends=True,
        ),
        base=base,
    )
    assert {h.food_id for h in after.have} == {"potato", "leek"}
    assert next(h.grams for h in after.have if h.food_id == "potato") == 500.0
    assert after.eaters == 6.0
    assert after.not_vessels == ("sheet pan",)


def test_one_food_named_twice_is_one(store: Store) -> None:
    request = asked(
        store,
        Reading(kind=Kind.PLAN, text="", items=(item("potato", grams=300.0), item("potato", grams=200.0))),
    )
    assert [(h.food_id, h.grams) for h in request.have] == [("potato", 500.0)]


def test_what_nobody_knows_is_kept_by_name(store: Store) -> None:
    request = asked(
        store, Reading(kind=Kind.PLAN, text="", items=(item("flonkroot", food_id=None), item("leek")))
    )
    assert request.unknown == ("flonkroot",)
    assert [h.food_id for h in request.have] == ["leek"]


@pytest.mark.parametrize(
    ("text", "spoiled"),
    [
        ("chicken thighs left out since this morning, potatoes", ("chicken-thigh",)),
        ("potatoes, salmon left on the counter for 5 hours", ("salmon",)),
        ("leave out the chicken, potatoes", ()),
        ("chicken out of the fridge 20 min, potatoes", ()),
    ],
)
def test_what_stood_out_warm_is_not_cooked(store: Store, text: str, spoiled: tuple[str, ...]) -> None:
    """USDA FSIS: perishable food is thrown away after two hours at room temperature."""
    request = asked(store, read(text, store=store, now=NOW))
    assert request.spoiled == spoiled
    if spoiled:
        made = plan(request, store=store)
        assert isinstance(made, Plan)
        assert not {i.food_id for i in made.items} & set(spoiled)
        assert any("throw it away" in out.why for out in made.left_out)


def test_what_is_said_of_a_food_reaches_the_planner(store: Store) -> None:
    request = asked(
        store, read("4 pork chops 150 g each 2 cm thick, a splash of wine, lots of leeks", store=store)
    )
    chop, wine, leek = request.have
    assert (chop.grams, chop.across_mm) == (600.0, 20.0)
    assert (wine.rough, leek.rough) == ("little", "plenty")


def test_burgers_are_what_the_mince_is_shaped_into(store: Store) -> None:
    request = asked(
        store, read("450g lamb mince, lamb burgers please, an onion. two kids (2 and 6), us", store=store)
    )
    assert [(h.food_id, h.cut) for h in request.have] == [("ground-lamb", "patty"), ("onion", None)]
    assert request.youngest == 2.0


@pytest.mark.parametrize(
    ("text", "state"),
    [
        ("300g black beans (dried, soaked overnight), leeks", "soaked"),
        ("300g dried black beans soaked since last night, leeks", "soaked"),
        ("300g black beans (dried, not soaked), leeks", "dried"),
        ("300g black beans (dried), bulgur soaked, leeks", "dried"),
    ],
)
def test_beans_that_were_soaked(store: Store, text: str, state: str) -> None:
    assert asked(store, read(text, store=store)).have[0].state == state


@pytest.mark.parametrize(
    ("text", "word"),
    [("speck 80 g", "speck"), ("porcini 20 g", "porcini"), ("lingonberries", "lingonberry"), ("ceps", "cep")],
)
def test_a_food_keeps_the_cooks_own_word(store: Store, text: str, word: str) -> None:
    assert asked(store, read(f"{text}, leeks, cream", store=store)).have[0].said == word


def test_one_weight_of_two_cuts_is_shared(store: Store) -> None:
    request = asked(store, read("800 g turkey breast and turkey legs, leeks", store=store))
    assert [h.grams for h in request.have] == [400.0, 400.0, None]
    apart = asked(store, read("800 g turkey breast and leeks", store=store))
    assert [h.grams for h in apart.have] == [800.0, None]


@pytest.mark.parametrize(
    ("text", "beside"),
    [
        ("hake, leeks, the rice cooker is doing the basmati rice", ["basmati-rice"]),
        ("hake, leeks, rice. no rice cooker", []),
    ],
)
def test_rice_with_a_cooker_of_its_own_stays_out(store: Store, text: str, beside: list[str]) -> None:
    assert [left.food for left in asked(store, read(text, store=store)).unfit] == beside


def test_a_near_match_is_told_in_the_plan(store: Store) -> None:
    request = asked(store, read("aspargus, 2 hake fillets, potatoes for 2", store=store))
    assert request.read_as == (("aspargus", "asparagus"),)
    told = answer_json(plan(request, store=store))["assumed"]
    assert told[0] == '"aspargus" is asparagus'


def test_a_refused_wish_comes_before_the_reasons_for_no_plan(store: Store) -> None:
    request = asked(
        store, read("300g dried kidney beans not soaked, ready in 20 min. only a frying pan", store=store)
    )
    answer = plan(request, store=store)
    said = answer.reasons[0] if isinstance(answer, NoPlan) else answer.cautions[0].text
    assert "never quick" in said


@pytest.mark.parametrize(
    ("vessel", "said", "size"),
    [
        ("sheet pan", "half", "half sheet"),
        ("sheet pan", "three-quarter", "three-quarter sheet"),
        ("sheet pan", "quarter", "quarter sheet"),
        ("sheet pan", "", "half sheet"),
        ("saute pan", "28 cm", "28 cm"),
        ("saute pan", "11 inch", "28 cm"),
        ("saute pan", "9.5 in", "24 cm"),
        ("lidded pot", "5 litres", "5 l"),
        ("pressure cooker", "6 quart", "6 quart"),
        ("pressure cooker", "8qt", "8 quart"),
    ],
)
def test_sizes_as_a_cook_says_them(store: Store, vessel: str, said: str, size: str) -> None:
    found = size_of(store.vessel(vessel), said)
    assert found is not None
    assert found.id == size


def test_a_kitchen_with_mistakes_names_them_all_and_keeps_the_rest(store: Store) -> None:
    got = described(
        {"vessels": [{"id": "wok"}, {"id": "saute pan", "size": "???"}], "oven_max_degC": 9000,
         "people": "two", "fan_oven": "yes", "units": "stones", "now": "soon", "altitude_m": 1600},
        store=store,
    )  # fmt: skip
    assert len(got.problems) == 7
    assert [v.id for v in got.kitchen.vessels] == ["saute pan"]
    assert got.kitchen.altitude_m == 1600
    assert described("x", store=store).problems
    assert described(None, store=store).kitchen == Kitchen()


@pytest.mark.parametrize(("sheet", "kept"), [("bright", "bright"), (None, "dull"), ("copper", "dull")])
def test_a_kitchen_says_what_its_sheet_is_like(store: Store, sheet: str | None, kept: str) -> None:
    got = described({"sheet": sheet}, store=store)
    assert got.kitchen.sheet == kept
    assert [p for p in got.problems if "kitchen.sheet" in p and "copper" in p] == list(got.problems)
    assert bool(got.problems) is (sheet == "copper")


def test_a_glass_dish_is_for_tonight(store: Store) -> None:
    text = "3 cod fillets and fennel, in a glass baking dish"
    assert asked(store, read(text, store=store)).kitchen.sheet == "glass"
    assert asked(store, read("black bean tray bake with peppers", store=store)).kitchen.sheet == "dull"


def test_the_kitchen_said_with_the_dinner_is_cooked_in(store: Store) -> None:
    text = "2 trout fillets, 400g new potatoes on my quarter sheet pan. we live at 1900m. fan oven"
    kitchen = asked(store, read(text, store=store)).kitchen
    assert next(v.size for v in kitchen.vessels if v.id == "sheet pan") == "quarter sheet"
    assert (kitchen.altitude_m, kitchen.fan_oven) == (1900.0, True)
    assert asked(store, read("trout, potatoes", store=store)).kitchen == Kitchen()


@pytest.mark.parametrize(
    ("text", "warned"),
    [
        ("2 sirloin steaks, rare please, mushrooms; my wife is pregnant", True),
        ("2 sirloin steaks, mushrooms", False),
        ("i am not pregnant: 2 sirloin steaks, mushrooms", False),
    ],
)
def test_nobody_who_is_pregnant_is_invited_to_pink_meat(store: Store, text: str, warned: bool) -> None:
    """NHS, foods to avoid in pregnancy: meat cooked thoroughly, no trace of pink."""
    made = plan(asked(store, read(text, store=store, now=NOW)), store=store)
    assert isinstance(made, Plan)
    said = " ".join(c.text for c in made.cautions)
    assert ("no pink meat" in said) is warned
    assert ("pinker" in said) is not warned


@pytest.mark.parametrize(
    ("text", "foods"),
    [
        (
            "took the mince from the freezer yesterday, it thawed in the fridge, 450 g lamb, leeks",
            {"ground-lamb": 450},
        ),
        ("mince for tonight, leeks, 600 g pork", {"ground-pork": 600}),
        ("400 g mince, 600 g pork, leeks", {"ground-beef": 400, "pork": 600}),
        ("mince, 600 g diced pork, leeks", {"pork": 600}),
        ("mince, pork chunks 600 g, leeks", {"pork": 600}),
        ("turkey mince, 600 g pork, leeks", {"pork": 600}),
    ],
)
def test_an_animal_said_apart_names_the_mince(store: Store, text: str, foods: dict[str, float]) -> None:
    request = asked(store, read(text, store=store))
    assert {h.food_id: h.grams for h in request.have if h.grams} == foods


@pytest.mark.parametrize("text", ["dried chiles 3, pork shoulder, leeks", "3 chillies (dried), pork, leeks"])
def test_dried_chiles_are_a_seasoning(store: Store, text: str) -> None:
    chile = next(h for h in asked(store, read(text, store=store)).have if "chil" in h.food_id)
    assert (chile.food_id, chile.qty) == ("dried-chili", 3)


def test_fresh_chiles_are_not_dried(store: Store) -> None:
    assert "chili-pepper" in {
        h.food_id for h in asked(store, read("3 chillies, dried beans, pork", store=store)).have
    }


@pytest.mark.parametrize(
    ("said", "state"),
    [
        ("250 g dried haricot beans (didn't soak), leeks", "dried"),
        ("dried haricot beans, never soaked, leeks", "dried"),
        ("dried haricot beans, no time to soak, leeks", "dried"),
        ("haricot beans, not had time to soak them", "dried"),
        ("dried haricot beans that I forgot to soak, leeks", "dried"),
        ("dried haricot beans need soaking, leeks", "dried"),
        ("unsoaked haricot beans, leeks", "dried"),
        ("dried haricot beans (to be soaked), leeks", "dried"),
        ("haricot beans soaked overnight, leeks", "soaked"),
        ("I've been soaking haricot beans since breakfast, leeks", "soaked"),
        ("haricot beans I put to soak this morning, leeks", "soaked"),
    ],
)
def test_only_what_was_soaked_is_soaked(store: Store, said: str, state: str) -> None:
    """An unsoaked bean needs about twice the time (common practice, no source)."""
    wanted = asked(store, read(said, store=store))
    assert wanted.have[0].state == state
    assert "leek" not in wanted.excluded


@pytest.mark.parametrize(
    ("said", "food_id", "state"),
    [
        ("sardines in oil", "sardine", "canned"),
        ("pickled beetroot", "beet", "canned"),
        ("fresh sardines", "sardine", None),
        ("beetroot", "beet", None),
    ],
)
def test_a_name_that_means_a_tin_is_a_tin(store: Store, said: str, food_id: str, state: str | None) -> None:
    [have] = [h for h in dinner_said(store, f"{said}, potatoes, for 2").have if h.food_id == food_id]
    assert have.state in ((state,) if state else (None, "fresh", "raw"))

"""Check values as whole plans. Common practice, no source; tolerance 20 % unless a range is given."""

from __future__ import annotations

from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.model import Do, Have, Kitchen, Plan, PlanItem, Request, VesselAt
from tests.unit.planner.kitchen import item


def planned(store: Store, vessel: str, *have: Have) -> Plan:
    kitchen = Kitchen(vessels=(VesselAt(id=vessel),))
    made = plan(Request(have=have, eaters=2.0, eaters_said=True, kitchen=kitchen), store=store)
    assert isinstance(made, Plan)
    return made


def under_heat_min(one: PlanItem) -> float:
    return (one.done.at_s - one.in_s) / 60.0


def test_browned_thighs_simmered_covered_take_half_an_hour(store: Store) -> None:
    made = planned(store, "saute pan", Have(food_id="chicken-thigh", qty=3, unit="piece"))
    brown = next(s for s in made.steps if s.do is Do.BROWN)
    covered = (item(made, "chicken-thigh").out_s - brown.at_s - brown.hands_s) / 60.0
    assert 24 <= covered <= 38


def test_stewing_beef_at_pressure(store: Store) -> None:
    made = planned(store, "pressure cooker", Have(food_id="stew-beef", grams=700))
    lid = next(s.at_s for s in made.steps if s.do is Do.HEAT)
    release = next(s.at_s for s in made.steps if s.do is Do.RELEASE)
    assert 30 * 0.8 <= (release - lid) / 60.0 <= 35 * 1.25


def test_root_chunks_join_a_braise_for_the_last_part(store: Store) -> None:
    made = planned(
        store,
        "lidded pot",
        Have(food_id="chuck-roast", grams=1000, cut="whole"),
        Have(food_id="carrot"),
        Have(food_id="pea", state="frozen"),
    )
    roast, carrot, pea = (item(made, x) for x in ("chuck-roast", "carrot", "pea"))
    assert 100 <= under_heat_min(roast) <= 230
    assert 12 <= (carrot.out_s - carrot.in_s) / 60.0 <= 36
    assert (pea.out_s - pea.in_s) / 60.0 <= 7  # 2-3 min from when it boils again


def test_fish_fillet_joins_a_hot_oven_for_about_a_quarter_of_an_hour(store: Store) -> None:
    made = planned(
        store, "sheet pan", Have(food_id="salmon", qty=2, unit="fillet"), Have(food_id="new-potato")
    )
    fish = item(made, "salmon")
    assert 12 * 0.8 <= (fish.out_s - fish.in_s) / 60.0 <= 15 * 1.3


def test_tough_greens_take_about_half_an_hour_in_all(store: Store) -> None:
    made = planned(
        store, "saute pan", Have(food_id="sausage", qty=4, unit="piece"), Have(food_id="collard-greens")
    )
    assert 22 <= made.cooking_s / 60.0 <= 40


def test_chicken_pieces_with_vegetables_at_pressure(store: Store) -> None:
    """20-25 min from the locked lid to the open one; a cooker that is asked for is locked."""
    made = planned(
        store,
        "pressure cooker",
        Have(food_id="chicken", grams=1000, cut="pieces"),
        Have(food_id="carrot"),
        Have(food_id="potato"),
    )
    assert made.settings.pressure_kPa_gauge
    lid = next(s.at_s for s in made.steps if s.do is Do.LID)
    opened = max(one.out_s for one in made.items)
    assert 20 * 0.8 <= (opened - lid) / 60.0 <= 25 * 1.2

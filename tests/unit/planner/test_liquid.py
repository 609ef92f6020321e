"""What is poured in: by what drinks, what boils away, what lies in it and what others bring.

Ratios are common practice, no source.
"""

from __future__ import annotations

from knowledge.foods.store import Store
from knowledge.planner.model import Have
from tests.unit.planner.kitchen import planned_in


def poured(store: Store, vessel: str, *have: Have) -> float:
    made = planned_in(store, vessel, *have, eaters=4.0)
    return made.liquid.ml if made.liquid is not None else 0.0


DRY = Have(food_id="chickpea", grams=250.0, state="dried")
BEEF = Have(food_id="stew-beef", grams=900.0)
ROOTS = (Have(food_id="potato", grams=600.0), Have(food_id="carrot", grams=300.0))


def test_dried_pulses_get_three_times_their_weight_and_more(store: Store) -> None:
    ml = poured(store, "pressure cooker", DRY, Have(food_id="onion", qty=1.0))
    assert 3.0 * 250.0 <= ml <= 5.0 * 250.0


def test_a_handful_of_grain_in_a_stew_takes_no_liquid_away(store: Store) -> None:
    plain = poured(store, "lidded pot", BEEF, *ROOTS)
    with_grain = poured(store, "lidded pot", BEEF, *ROOTS, Have(food_id="barley", grams=60.0))
    assert with_grain >= plain


def test_what_joins_a_braise_later_is_covered_half_way_too(store: Store) -> None:
    assert poured(store, "lidded pot", BEEF, *ROOTS) > poured(store, "lidded pot", BEEF) + 50.0


def test_vegetables_that_give_their_juice_want_less_water(store: Store) -> None:
    meat = Have(food_id="chicken-thigh", qty=4.0)
    juicy = poured(store, "lidded pot", meat, Have(food_id="mushroom", grams=500.0))
    dry = poured(store, "lidded pot", meat, Have(food_id="new-potato", grams=500.0))
    assert juicy < dry


def test_wine_that_is_boiled_down_counts_for_half(store: Store) -> None:
    less = poured(store, "lidded pot", BEEF) - poured(
        store, "lidded pot", BEEF, Have(food_id="red-wine", qty=300.0, unit="ml")
    )
    assert 0.0 < less <= 0.6 * 300.0


def test_much_meat_under_pressure_has_more_than_the_cookers_least(store: Store) -> None:
    assert poured(store, "pressure cooker", Have(food_id="oxtail", grams=1500.0)) > 500.0


def test_rice_in_the_opened_cooker_has_for_what_boils_away(store: Store) -> None:
    meat = Have(food_id="lamb-shoulder", grams=500.0)
    rice = Have(food_id="rice", grams=200.0)
    assert poured(store, "pressure cooker", meat, rice) >= 1.8 * 200.0


def test_the_fat_of_coconut_milk_is_no_water_for_rice(store: Store) -> None:
    """A tin of it is about three quarters water (USDA 12118); the rest of the ratio is topped up."""
    rice = Have(food_id="rice", grams=300.0)
    plain = poured(store, "lidded pot", rice)
    with_tin = poured(store, "lidded pot", rice, Have(food_id="coconut-milk", qty=400.0, unit="ml"))
    assert 250.0 <= plain - with_tin <= 330.0

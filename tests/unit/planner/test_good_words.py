"""What a strict cook reads in the steps: the right verb, the right moment, nothing that cannot be done."""

from __future__ import annotations

from datetime import UTC, datetime
from itertools import pairwise

import pytest

from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.model import Do, Kitchen, NoPlan, Plan, VesselAt
from knowledge.requests import request_of
from knowledge.text import read
from knowledge.text.model import Context
from tests.unit.planner.kitchen import told

NOW = datetime(2026, 2, 3, 17, 0, tzinfo=UTC)


def answered(text: str, store: Store, *vessels: str) -> Plan | NoPlan:
    kitchen = Kitchen(vessels=tuple(VesselAt(id=v) for v in vessels)) if vessels else Kitchen()
    reading = read(text, store=store, context=Context(), now=NOW)
    return plan(request_of(reading, store=store, kitchen=kitchen, now=NOW), store=store)


def planned(text: str, store: Store, *vessels: str) -> Plan:
    made = answered(text, store, *vessels)
    assert isinstance(made, Plan)
    return made


def test_stock_cubes_are_dissolved_in_water(store: Store) -> None:
    made = planned("300 g orzo, 2 carrots, an onion, beef stock cube, for 3", store, "lidded pot")
    assert "ml water with 1 beef stock cube" in told(made) or "l water with" in told(made)
    assert made.liquid is not None
    assert made.liquid.what == "stock from a beef stock cube"


def test_two_foods_in_one_phrase_keep_their_own_names(store: Store) -> None:
    made = planned("a cauliflower, oil and salt, for 2", store, "saute pan")
    assert "oil and salt" not in told(made)


def test_fish_is_laid_into_an_opened_cooker_and_not_stirred(store: Store) -> None:
    made = planned("600 g beef shin, 350 g hake, 2 onions, for 4", store, "pressure cooker")
    step = next(s for s in made.steps if s.do is Do.ADD and "hake" in s.foods)
    assert "lay hake on top" in step.text
    assert "stir" not in step.text
    assert "lid laid on" in step.text


def test_rice_in_an_opened_cooker_gets_its_lid(store: Store) -> None:
    made = planned("700 g lamb neck, 220 g basmati rice, an onion, for 3", store, "pressure cooker")
    step = next(s for s in made.steps if s.do is Do.ADD and "basmati-rice" in s.foods)
    assert "lid laid on, not locked, low heat" in step.text


def test_nothing_is_stirred_under_what_is_left_alone(store: Store) -> None:
    made = planned("300 g smoked tofu, 2 leeks, 200 g sugar snaps, soy sauce, for 2", store, "saute pan")
    texts = [step.text for step in made.steps]
    laid = next(n for n, text in enumerate(texts) if "do not stir" in text)
    assert not any(text.startswith("Stir in") for text in texts[laid + 1 : -1])
    assert any("round the edge" in text for text in texts[laid:])


def test_no_water_is_splashed_into_eggs(store: Store) -> None:
    made = planned("4 eggs, 200 g fresh chorizo, 350 g potatoes, for 2", store, "saute pan")
    assert "splash of water" not in told(made)


def test_shellfish_in_the_shell_is_not_salted_and_steams_hard(store: Store) -> None:
    made = planned("1.2 kg mussels, 3 shallots, cider, for 3", store, "lidded pot")
    assert "Season the mussels" not in told(made)
    assert "high heat, shake the pot" in told(made)


def test_smoked_fish_is_not_salted(store: Store) -> None:
    made = planned("350 g smoked haddock, 400 g potatoes, 2 leeks, for 2", store, "lidded pot")
    assert "Season the smoked haddock" not in told(made)


def test_dried_herbs_and_limes_are_not_fresh_ones(store: Store) -> None:
    made = planned("500 g lamb shoulder, 2 dried limes, dried mint, an onion, for 3", store, "lidded pot")
    assert "2 pierced dried limes" in told(made)
    assert "Squeeze" not in told(made)
    assert "tsp dried mint" in told(made)
    assert "handful" not in told(made)


def test_paneer_is_golden_before_the_sauce(store: Store) -> None:
    made = planned("225 g paneer, 2 onions, tin of tomatoes, peas, cream, for 3", store, "lidded pot")
    first = next(s for s in made.steps if s.do is Do.BROWN)
    assert "paneer" in first.foods
    assert "turn when golden" in first.text


def test_bacon_is_cut_before_it_is_browned(store: Store) -> None:
    made = planned("120 g bacon, 250 g green lentils, 2 carrots, for 3", store, "lidded pot")
    assert next(i for i in made.items if i.food_id == "bacon").cut == "10 mm strips"
    assert "ut 120 g bacon into 10 mm strips" in told(made)
    lardons = planned("120 g bacon lardons, 250 g green lentils, 2 carrots, for 3", store, "lidded pot")
    assert next(i for i in lardons.items if i.food_id == "bacon").cut == "whole"


def test_burgers_are_shaped(store: Store) -> None:
    made = planned("450 g turkey mince, turkey burgers please. 2 courgettes. 3 of us", store, "saute pan")
    assert "hape 450 g turkey mince into 20 mm patties" in told(made)


def test_dried_mushrooms_are_soaked(store: Store) -> None:
    made = planned("25 g dried porcini, 250 g pearl barley, a leek, for 3", store, "lidded pot")
    assert "oak 25 g dried porcini in hot water" in told(made)


@pytest.mark.parametrize("where", ["on the side", "to serve", "for on top"])
def test_what_is_wanted_beside_is_not_cooked(store: Store, where: str) -> None:
    made = planned(f"200 g brown lentils, 2 onions, 2 carrots, yoghurt {where}, for 3", store, "lidded pot")
    assert "On the side: yoghurt" in made.steps[-1].text
    assert not any("yoghurt" in step.text for step in made.steps[:-1])


def test_butter_waits_until_the_steam_is_gone(store: Store) -> None:
    made = planned("a savoy cabbage, butter, for 2", store, "lidded pot")
    assert made.settings.method == "steam"
    assert "tbsp butter" in made.steps[-1].text
    assert not any("butter" in step.text for step in made.steps[:-1])


def test_gravy_granules_are_made_up(store: Store) -> None:
    made = planned("6 sausages, 500 g potatoes, gravy granules, for 3", store, "sheet pan")
    assert "ml boiling water)" in made.steps[-1].text


def test_more_lemons_than_it_takes_come_as_wedges(store: Store) -> None:
    made = planned("4 chicken legs, 500 g potatoes, 3 lemons, for 2", store, "sheet pan")
    assert "Squeeze 1 lemon over" in told(made)
    assert "the other lemons in wedges" in told(made)


def test_the_oven_is_opened_once_for_one_moment(store: Store) -> None:
    made = planned("5 drumsticks, 2 parsnips, 200 g green beans, bbq sauce, for 2", store, "sheet pan")
    opened = [step.at_s for step in made.steps if "back in:" in step.text]
    assert all(later - earlier > 60.0 for earlier, later in pairwise(opened))


def test_a_thin_sauce_is_bound_by_what_is_in_it(store: Store) -> None:
    made = planned("6 chicken drumsticks, 800 g potatoes, 3 leeks, for 4", store, "lidded pot")
    assert "Crush a few of the potatoes against the side" in told(made)


def test_grain_leaves_no_fat_to_spoon_off(store: Store) -> None:
    made = planned("400 g duck legs, 250 g rice, an onion, for 3", store, "lidded pot")
    assert "Spoon the fat off" not in told(made)


def test_hopelessly_late_is_a_no_with_the_nearest(store: Store) -> None:
    answer = answered("800 g oxtail, 3 carrots, 2 onions, for 4, eat in 40 min", store, "lidded pot")
    assert isinstance(answer, NoPlan)
    assert " late: this takes " in answer.reasons[0]
    assert answer.nearest is not None
    soon = answered("4 bone-in chicken thighs, 400 g potatoes, for 3, eat in 25 min", store, "lidded pot")
    assert isinstance(soon, Plan)
    assert soon.late_s > 0.0


def test_what_an_allergy_bars_is_kept_shut(store: Store) -> None:
    made = planned(
        "my son is allergic to peanuts. chicken thighs 4, peanut butter, rice 200 g, carrots, for 3", store
    )
    assert any("peanut butter: away from here" in caution.text for caution in made.cautions)


def test_ripe_plantain_is_fried_before_it_meets_a_sauce(store: Store) -> None:
    made = planned("2 ripe plantains, tin of kidney beans, 2 tomatoes, an onion, for 2", store, "saute pan")
    first = next(s for s in made.steps if s.do is Do.BROWN)
    assert "plantain" in first.foods


def test_cucumber_is_not_stewed_and_tomato_paste_not_raw(store: Store) -> None:
    made = planned("450 g meatballs, 400 g potatoes, a cucumber, soured cream, for 3", store, "lidded pot")
    assert "On the side: cucumber" in made.steps[-1].text
    assert "tomato paste at the end" not in made.flavour


def test_boned_thighs_have_no_bone_to_look_at(store: Store) -> None:
    said = told(planned("500 g boneless chicken thighs, broccoli, stir fry for 3", store, "saute pan"))
    assert "no pink left, juices clear" in said
    assert "at the bone" not in said

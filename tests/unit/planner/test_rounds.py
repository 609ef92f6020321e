"""What one sheet does not hold goes on in a second round, with its time; assumed amounts just shrink.

How much a sheet holds and how a ham is cooked are common practice, no source; hot holding at 63 °C: UK FSA.
"""

from __future__ import annotations

from knowledge.foods.store import Store
from knowledge.planner import plan, words
from knowledge.planner.gathering.dinner import gather
from knowledge.planner.model import Do, Have, Kitchen, Plan, Request, VesselAt

SHEET = Kitchen(vessels=(VesselAt(id="sheet pan"),))
DRUMSTICKS = (Have(food_id="chicken-drumstick", qty=40.0), Have(food_id="potato", grams=3200.0))


def planned(store: Store, have: tuple[Have, ...], eaters: float, kitchen: Kitchen = SHEET) -> Plan:
    made = plan(Request(have=have, eaters=eaters, eaters_said=True, kitchen=kitchen), store=store)
    assert isinstance(made, Plan)
    return made


def test_a_crowd_eats_in_two_rounds(store: Store) -> None:
    made = planned(store, DRUMSTICKS, 12.0)
    [again] = [s for s in made.steps if s.text.startswith("Second round")]
    assert again.do is Do.HEAT
    assert "on the table" in again.text
    assert "63 °C" in again.text
    assert any(said.startswith("two rounds") for said in made.assumed)
    assert made.serves == 12
    assert not any("put bread" in said for said in made.advice)


def test_potatoes_give_way_before_there_are_two_rounds(store: Store) -> None:
    """A little too much is no second sitting: all the meat goes in, and fewer potatoes."""
    drumsticks, potatoes = Have(food_id="chicken-drumstick", qty=16.0), Have(food_id="potato", grams=2200.0)
    made = planned(store, (drumsticks, potatoes), 6.0)
    taken = {i.food_id: i.grams for i in made.items}
    [asked] = [d for d in gather(made.request, store=store).dishes if d.food.id == "chicken-drumstick"]
    assert taken["chicken-drumstick"] == asked.grams
    assert taken["potato"] < 2200.0
    assert not any(s.text.startswith("Second round") for s in made.steps)


def test_what_fits_is_one_round(store: Store) -> None:
    made = planned(
        store, (Have(food_id="chicken-drumstick", qty=6.0), Have(food_id="potato", grams=600.0)), 3.0
    )
    assert not any("ound" in s.text and s.text.startswith("Second") for s in made.steps)


def test_of_what_was_only_assumed_nothing_is_kept(store: Store) -> None:
    have = (Have(food_id="chicken-drumstick", qty=12.0), Have(food_id="potato", several=True),
            Have(food_id="carrot", several=True), Have(food_id="parsnip", several=True))  # fmt: skip
    made = planned(store, have, 8.0)
    potatoes = next(i for i in made.items if i.food_id == "potato")
    assert not any("potato" in said and "keep the rest" in said for said in made.assumed)
    asked = next(d for d in gather(made.request, store=store).dishes if d.food.id == "potato")
    if potatoes.grams < asked.grams:
        assert words.amount(asked, "metric") not in made.assumed


def test_a_ham_joint_is_simmered_where_there_is_a_pot(store: Store) -> None:
    kitchen = Kitchen(vessels=(VesselAt(id="sheet pan"), VesselAt(id="lidded pot", size="7 l")))
    have = (Have(food_id="gammon", grams=1900.0), Have(food_id="potato", several=True), Have(food_id="leek"))
    made = planned(store, have, 6.0, kitchen)
    assert made.vessel == "lidded pot"
    ham = next(i for i in made.items if i.food_id == "gammon")
    assert ham.grams == 1900.0
    assert ham.label == "gammon"  # one joint


def test_the_time_to_the_table_counts_the_second_round(store: Store) -> None:
    two, one = planned(store, DRUMSTICKS, 12.0), planned(store, DRUMSTICKS, 4.0)
    began_s = min(s.at_s for s in two.steps)
    assert two.total_s > two.cooking_s - began_s + 0.9 * one.cooking_s
    assert one.total_s < two.total_s


def test_meat_goes_in_before_the_vegetables_do(store: Store) -> None:
    """Nobody wants half of the sausages an hour after the other half."""
    have = (
        Have(food_id="sausage", qty=10.0),
        Have(food_id="potato", grams=1000.0),
        Have(food_id="parsnip", qty=5.0),
    )
    small = Kitchen(vessels=(VesselAt(id="sheet pan", size="quarter sheet"),))
    made = planned(store, have, 5.0, small)
    taken = {i.food_id: i.grams for i in made.items}
    meant = {d.food.id: d.grams for d in gather(made.request, store=store).dishes}
    assert taken["sausage"] / meant["sausage"] > taken["potato"] / meant["potato"]


def test_each_of_two_rounds_is_a_dinner_of_its_own(store: Store) -> None:
    """Half of the meat in each, with its potatoes; what is raw waits in the fridge (USDA FSIS, two hours)."""
    small = Kitchen(vessels=(VesselAt(id="sheet pan", size="quarter"),))
    have = (Have(food_id="chicken-thigh", qty=12.0), Have(food_id="turnip", grams=1600.0))
    made = planned(store, have, 6.0, small)
    taken = {i.food_id: i.grams for i in made.items}
    all_of_it = {d.food.id: d.grams for d in gather(made.request, store=store).dishes}
    assert taken["chicken-thigh"] == 0.5 * all_of_it["chicken-thigh"]
    assert 0.35 <= taken["turnip"] / all_of_it["turnip"] <= 0.5
    [again] = [s for s in made.steps if s.text.startswith("Second round")]
    assert "until then in the fridge" in again.text


def test_of_a_joint_that_is_cut_up_as_much_goes_in_as_the_cooker_holds(store: Store) -> None:
    small = Kitchen(vessels=(VesselAt(id="pressure cooker", size="3 l"),))
    have = (Have(food_id="beef-shank", grams=1400.0), Have(food_id="chickpea", grams=300.0, state="soaked"))
    made = planned(store, have, 6.0, small)
    assert 0.0 < next(i.grams for i in made.items if i.food_id == "beef-shank") < 1400.0
    assert made.size == "3 l"
    assert any("keep the rest" in said for said in made.assumed)

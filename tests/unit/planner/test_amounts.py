"""How much, for how many, in whose words: what cooks expect of a fridge without numbers.

Amounts, servings and liquids are common practice, no source, unless one is named.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

import knowledge
from knowledge.foods.store import Store
from knowledge.planner import plan, words
from knowledge.planner.gathering.dinner import Dish
from knowledge.planner.model import Have, Kitchen, Plan, Request, VesselAt
from knowledge.text.normalise import key
from knowledge.units import size
from tests.unit.planner.kitchen import asked, dish
from tests.unit.planner.kitchen import gathered as dinner

DATA = Path(knowledge.__file__).parent / "data"


def pieces(one: Dish) -> float:
    assert one.piece_g is not None
    return one.grams / one.piece_g


# --- for how many -------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("kale, chickpeas (2 tins), sweet potato, onion", 2, 2),  # tins say nothing
        ("2 cod fillets, potatoes, leeks", 2, 2),
        ("3 salmon fillets, green beans, new potatoes", 3, 3),
        ("6 chicken thighs bone in, carrots, potatoes", 3, 5),
        ("8 sausages, butternut squash, red onions", 3, 4),
        ("4 lamb shanks, onions, carrots", 4, 4),
        ("1.6 kg whole chicken, potatoes", 4, 5),
        ("chorizo, white beans, spinach, peppers", 2, 2),  # flavouring says nothing
        ("12 eggs, spinach, potatoes", 2, 2),  # a box is a store
        ("500 g beef mince, tin of tomatoes, tin of kidney beans, rice", 3, 4),
        ("1 chicken breast, rice, broccoli", 1, 2),
        ("spatchcock chicken, lemon, potatoes", 4, 4),  # a bird is a bird
        ("2 duck legs, puy lentils 200g, carrots", 2, 3),
        ("4 burgers, 4 ears of corn", 3, 4),
        ("leftover rice, 2 eggs, peas", 2, 2),
    ],
)
def test_eaters_are_as_many_as_the_counted_protein_feeds(
    store: Store, text: str, low: int, high: int
) -> None:
    assert low <= dinner(store, text).eaters <= high


def test_what_is_said_of_eaters_holds(store: Store) -> None:
    assert dinner(store, "12 chicken thighs, potatoes, for 6").eaters == 6.0


@pytest.mark.parametrize(
    "text",
    [
        "2 cod fillets, half a kilo of potatoes, 2 carrots",
        "kale, chickpeas (2 tins), sweet potato, onion, feta",
        "1 kg mussels, white wine, shallots, garlic, cream",
        "1.5 kg pork shoulder, onions, cider, potatoes, cabbage",
        "3 eggs, spinach, potatoes 400g, onion",
        "8 scallops, peas, bacon, new potatoes",
    ],
)
def test_dinner_is_for_whole_persons_and_says_the_same_everywhere(store: Store, text: str) -> None:
    made = plan(asked(store, text), store=store)
    assert isinstance(made, Plan)
    assert made.serves == int(made.serves)
    assert made.serves >= 2
    line = next(said for said in made.assumed if said.startswith("dinner for"))
    assert line == f"dinner for {made.serves:g}" or f"enough for {made.serves:g}" in line


# --- how much -----------------------------------------------------------------------------------


def test_one_that_is_named_is_one(store: Store) -> None:
    found = dinner(store, "2 chicken breasts, onion, sweet potato, aubergine, broccoli")
    for food_id in ("onion", "sweet-potato", "eggplant", "broccoli"):
        assert pieces(dish(found, food_id)) == pytest.approx(1.0)


@pytest.mark.parametrize("others", ["", ", leeks", ", leeks, celery, potatoes"])
def test_several_without_a_number_are_two_or_three(store: Store, others: str) -> None:
    found = dinner(store, f"2 pork chops, carrots, onions{others}")
    assert 2 <= pieces(dish(found, "carrot")) <= 3
    assert 2 <= pieces(dish(found, "onion")) <= 3


@pytest.mark.parametrize(
    "text",
    [
        "2 chicken breasts, carrots, kale, green beans, mushrooms",
        "4 chicken thighs, courgettes, peppers, aubergine, tomatoes, for 4",
        "kale, chickpeas (2 tins), carrots, spinach, leeks",
    ],
)
def test_no_mountain_of_vegetables_is_invented(store: Store, text: str) -> None:
    found = dinner(store, text)
    each = [d.grams * d.food.edible_frac for d in found.dishes if d.part == "vegetable" and d.assumed]
    assert sum(each) <= 330 * found.eaters
    assert max(each) <= max(200 * found.eaters, 500)


def test_flavour_meat_beside_a_protein_is_a_little(store: Store) -> None:
    assert dish(dinner(store, "4 chicken thighs, chorizo, rice, for 4"), "chorizo").grams <= 250


def test_what_was_bought_for_tonight_is_cooked(store: Store) -> None:
    assert dish(dinner(store, "tomato soup please: 1kg tomatoes, onion, stock"), "tomato").grams == 1000
    assert pieces(dish(dinner(store, "12 chicken thighs, potatoes, for 6"), "chicken-thigh")) == 12
    assert dish(dinner(store, "turkey crown 2 kg, parsnips"), "turkey-breast").grams == 2000


def test_a_store_is_drawn_on(store: Store) -> None:
    found = dinner(store, "2 kg rice, 2 chicken breasts, for 2")
    assert dish(found, "rice").grams < 500
    assert any("keep the other 1.7 kg" in said or "keep the other 1.8 kg" in said for said in found.assumed)


@pytest.mark.parametrize(
    ("text", "food_id", "low", "high"),
    [
        ("coconut milk, red lentils 200g", "coconut-milk", 350, 420),  # a tin
        ("tin of coconut milk, red lentils 200g", "coconut-milk", 350, 420),
        ("passata, 2 cod fillets", "tomato-puree", 400, 700),
        ("red wine, 700 g stewing beef", "red-wine", 100, 200),  # a glass
        ("250 ml cider, 2 pork chops", "hard-cider", 240, 260),
    ],
)
def test_a_liquid_has_an_amount(store: Store, text: str, food_id: str, low: float, high: float) -> None:
    season = next(s for s in dinner(store, text).seasonings if s.food.id == food_id)
    assert season.grams is not None
    assert low <= season.grams <= high


def test_a_vessel_that_holds_it_all_wins(store: Store) -> None:
    vessels = (VesselAt(id="sheet pan", size="half sheet"), VesselAt(id="lidded pot", size="7 l"))
    have = (
        Have(food_id="chicken-thigh", qty=12.0, unit="piece", cut="bone-in"),
        Have(food_id="potato", grams=1500.0),
        Have(food_id="carrot", qty=6.0, unit="piece"),
    )
    request = Request(have=have, eaters=6.0, eaters_said=True, kitchen=Kitchen(vessels=vessels))
    made = plan(request, store=store)
    assert isinstance(made, Plan)
    assert made.vessel == "lidded pot"
    assert made.serves >= 6


# --- the liquid ---------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("food_id", "low", "high"),
    [
        ("rice", 1.4, 2.0),
        ("basmati-rice", 1.4, 2.0),
        ("brown-rice", 1.8, 2.5),
        ("quinoa", 1.6, 2.2),
        ("pasta", 1.9, 2.7),
        ("spaghetti", 1.9, 2.7),
        ("red-lentil", 2.2, 3.5),
        ("barley", 2.3, 3.3),
        ("arborio-rice", 2.5, 4.0),
    ],
)
def test_grain_gets_the_liquid_cooks_give_it(store: Store, food_id: str, low: float, high: float) -> None:
    """Millilitres for a gram of the dry food, in a pot with its lid on."""
    kitchen = Kitchen(vessels=(VesselAt(id="lidded pot"),))
    have = (Have(food_id=food_id, grams=300.0), Have(food_id="onion", qty=1.0, unit="piece"))
    made = plan(Request(have=have, eaters=3.0, eaters_said=True, kitchen=kitchen), store=store)
    assert isinstance(made, Plan)
    assert made.liquid is not None
    assert low * 300 <= made.liquid.ml <= high * 300


def test_what_tins_and_wine_bring_is_not_poured_again(store: Store) -> None:
    kitchen = Kitchen(vessels=(VesselAt(id="lidded pot"),))

    def water(*more: Have) -> float:
        have = (Have(food_id="red-lentil", grams=200.0), Have(food_id="onion"), *more)
        made = plan(Request(have=have, kitchen=kitchen), store=store)
        assert isinstance(made, Plan)
        return made.liquid.ml if made.liquid else 0.0

    assert water() - water(Have(food_id="coconut-milk", qty=1.0, unit="can")) >= 300


def test_a_soup_can_be_spooned(store: Store) -> None:
    made = plan(asked(store, "leek and potato soup: 3 leeks, 4 potatoes, stock"), store=store)
    assert isinstance(made, Plan)
    assert made.liquid is not None
    assert made.liquid.ml >= 300 * made.serves


# --- in the cook's words ------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "food_id", "said"),
    [
        ("aubergines", "eggplant", "aubergine"),
        ("3 courgettes", "zucchini", "courgette"),
        ("a swede", "rutabaga", "swede"),
        ("ox cheek 700g", "beef-cheek", "ox cheek"),
        ("300g prawns", "shrimp", "prawn"),
        ("butter beans tin", "lima-bean", "butter bean"),
        ("lamb's liver 400g", "beef-liver", "lamb's liver"),
        ("2 salmon fillets", "salmon", "salmon fillet"),
        ("chicken thighs boneless 500g", "boneless-chicken-thigh", "boneless chicken thigh"),
        ("collard greens", "collard-greens", "collard greens"),
        ("carots", "carrot", "carrot"),  # a slip is not repeated
    ],
)
def test_the_cook_hears_her_own_word(store: Store, text: str, food_id: str, said: str) -> None:
    have = next(h for h in asked(store, f"{text}, onion").have if h.food_id == food_id)
    assert have.said == said


def test_steps_say_the_cooks_word_and_items_the_name(store: Store) -> None:
    made = plan(asked(store, "stewing steak 800g, a swede, ale"), store=store)
    assert isinstance(made, Plan)
    text = " ".join(step.text for step in made.steps)
    assert "swede" in text
    assert "rutabaga" not in text
    item = next(i for i in made.items if i.food_id == "rutabaga")
    assert (item.food, item.said, item.label) == ("rutabaga", "swede", "swede")


@pytest.mark.parametrize(
    ("text", "food_id", "amount"),
    [
        ("2 cod, peas", "cod", "2 cod fillets"),
        ("2 salmon fillets, peas", "salmon", "2 salmon fillets"),
        ("500g chicken breasts, peas", "chicken-breast", "500 g chicken breasts"),
        ("700g chuck roast, peas", "chuck-roast", "700 g chuck roast"),
        ("500 g monkfish, peas", "monkfish", "500 g monkfish"),
        ("half a cauliflower, peas", "cauliflower", "half a cauliflower"),
        ("half an aubergine, peas", "eggplant", "half an aubergine"),
        ("4 eggs, peas", "egg", "4 eggs"),
        ("2 corn on the cob, 2 pork chops", "corn", "2 corn on the cob"),
        ("garlic, 2 pork chops", "garlic", "2 cloves of garlic"),
        ("beef chuck, potatoes", "chuck-roast", "360 g beef chuck"),  # cut from a larger piece
        ("3 aubergines, peas", "eggplant", "3 aubergines"),
    ],
)
def test_amounts_are_said_as_they_were_said(store: Store, text: str, food_id: str, amount: str) -> None:
    assert words.amount(dish(dinner(store, text), food_id), "metric") == amount


def test_sizes_in_inches_are_ones_a_cook_uses(store: Store) -> None:
    assert size(60, "us") == "2 1/2 inch"
    assert size(20, "us") == "3/4 inch"
    assert size(6, "us") == "1/4 inch"


# --- one food said twice ------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "foods"),
    [
        ("chicken korma with 600g chicken thigh boneless, 2 onions", {"boneless-chicken-thigh", "onion"}),
        ("beef roasting joint topside 1.3kg, carrots", {"beef-roast", "carrot"}),
        ("venison haunch steaks 2, mushrooms", {"venison", "mushroom"}),
        ("chicken, beef, carrots", {"chicken", "beef", "carrot"}),  # two meats are two
        ("1 chicken breast, 4 chicken thighs", {"chicken-breast", "chicken-thigh"}),
    ],
)
def test_a_food_named_broadly_and_precisely_is_one(store: Store, text: str, foods: set[str]) -> None:
    request = asked(store, text)
    assert {have.food_id for have in request.have} == foods
    assert request.unknown == ()


def test_corn_beside_grain_comes_off_the_cob_unless_cobs_are_counted(store: Store) -> None:
    loose = dish(dinner(store, "turkey mince 400g, sweetcorn, rice 150g"), "corn")
    counted = dish(dinner(store, "turkey mince 400g, 2 corn on the cob, rice 150g"), "corn")
    assert loose.food.cuts == ("kernels",)
    assert "kernels" not in counted.food.cuts


# --- states -------------------------------------------------------------------------------------


def test_soaked_beans_are_soaked(store: Store) -> None:
    for text in ("kidney beans soaked overnight 300g", "300 g soaked kidney beans"):
        assert dish(dinner(store, f"{text}, onion"), "kidney-bean").state == "soaked"
    not_soaked = dinner(store, "300 g dried kidney beans, not soaked, onion")
    assert dish(not_soaked, "kidney-bean").state == "dried"


def test_raw_beans_are_dry_beans(store: Store) -> None:
    raw = dish(dinner(store, "half a kilo of raw red kidney beans, onion"), "kidney-bean")
    assert (raw.state, raw.kind) == ("dried", "bean")


def test_a_state_brings_its_own_figures(store: Store) -> None:
    tinned = dish(dinner(store, "tin of sweetcorn, 2 cod fillets"), "corn")
    assert tinned.food.name == "corn"
    assert tinned.food.whole_mm == store.food("canned-corn").whole_mm
    leftover = dish(dinner(store, "leftover chicken, rice"), "chicken")
    assert leftover.food.serving_g == store.food("leftover-chicken").serving_g


def test_no_synonym_leads_from_a_raw_food_to_a_cooked_one() -> None:
    """Both tables of names agree on raw cured meat: a gammon joint is no cooked ham."""
    with (DATA / "names.csv").open(encoding="utf-8", newline="") as file:
        firm = {key(row["name"]): row["food_id"] for row in csv.DictReader(file)}
    with (DATA / "foods.csv").open(encoding="utf-8", newline="") as file:
        rows = {row["id"]: row for row in csv.DictReader(file)}
    by_name = {key(row["name"]): food_id for food_id, row in rows.items()}
    with (DATA / "names_text.csv").open(encoding="utf-8", newline="") as file:
        loose = [row[:2] for row in csv.reader(file)][1:]
    for name, synonyms in loose:
        home = by_name.get(key(name))
        for synonym in synonyms.split(";"):
            other = firm.get(key(synonym)) if synonym else None
            if home in rows and other in rows and rows[home]["doneness"] == "warm_through":
                assert rows[other]["doneness"] == "warm_through", (name, synonym, other)


# --- what may not be eaten ----------------------------------------------------------------------


def test_an_allergy_bars_what_contains_it(store: Store) -> None:
    found = dinner(store, "allergic to sesame seeds. tofu, rice, tahini, pak choi")
    assert "tahini" not in {s.food.id for s in found.seasonings}
    assert any("allergy" in left.why for left in found.left_out)


def test_kosher_keeps_meat_and_milk_apart(store: Store) -> None:
    found = dinner(store, "kosher please: 2 chicken breasts, cream, potatoes")
    assert "chicken-breast" in {d.food.id for d in found.dishes}
    assert not any(s.food.animal == "dairy" for s in found.seasonings)
    assert any("apart" in left.why for left in found.left_out)
    assert dinner(store, "kosher please: 2 cod fillets, cream, potatoes").left_out == ()

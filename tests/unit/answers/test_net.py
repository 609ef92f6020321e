"""No danger that a question tells of is passed over in silence, whichever typed answer took the question."""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.answers.dangers.net import dangers, deals_with, met_by, netted
from knowledge.answers.model import Answer
from knowledge.answers.reading.question import question_of
from knowledge.foods.store import Store
from knowledge.planner.model import Kitchen


def test_what_is_said_of_a_danger_deals_with_it(store: Store) -> None:
    silent = [danger.id for danger in dangers(store) if not deals_with(danger, danger.says.answer.lower())]
    assert silent == []


def test_what_is_said_of_a_danger_names_its_source(store: Store) -> None:
    assert all(danger.says.known and danger.says.sources for danger in dangers(store))


# wordings of our own: what was asked beside, and what the answer must hold
PASSED_OVER = [
    ("how many teaspoons of prague powder go into 4 kg of brisket", "2.5 g"),  # not a conversion
    ("swap for pink curing salt in my bacon brine", "poison control"),
    ("convert 2 tbsp saltpetre to grams for a ham", "poison"),
    ("raw clams with chili for my aunt who has hepatitis", "Vibrio"),
    ("how long do mussels steam when there is a harvest ban on our coast", "algal bloom"),
    ("tin of lentils squirted when i pierced it, do i still rinse them", "botulism"),
    ("the lid of my jar of pesto is domed, use it on pasta?", "botulism"),
    ("temperature of boned and rolled lamb served rosy", "ot pink"),
    ("jaccarded sirloin rare, what core temperature", "not pink"),
    ("toddler has been eating from the hummus tub, how many days does it keep", "saliva"),
    ("stew from our plates, can it be frozen after it was on their plates", "saliva"),
    ("river got into the pantry, which jars keep", "flood"),
    ("can i blanch pork ribs tonight and grill them on saturday", "part-cook"),
    ("grandma pours hot goulash into jars, flips them, cellar for winter, how long does it last", "botulism"),
    ("how many minutes for green beans in a boiling bath, jars", "pressure canner"),
    ("breastfeeding, how is swordfish grilled", "mercury"),
    ("smoked trout pate for my immune suppressed uncle", "smoked"),
    ("my chilli oil with fresh basil stands in a bottle on the shelf, for how many weeks", "botulism"),
    ("rinse off the pink fuzz from my sauerkraut?", "whole jar"),
    ("how hot is butter for deep frying doughnuts", "burns at about 150"),
    ("drain cleaner after bleach in the sink, ok?", "gives off chlorine"),
    ("heat a mug of water in the microwave for tea, how many minutes", "erupt"),
    ("peanut butter with E967 for our beagle", "birch"),
    ("kernels out of peach stones ground in granola", "cyanide"),
    ("sardines taste peppery, is that the spice", "histamine"),
    ("analytical sodium nitrite, 2 kg of brisket, how many grams", "Keep the pure salt locked"),
    ("undiluted potassium nitrate, a spoon for the bresaola?", "Keep the pure salt locked"),
    ("coppa with himalaya salt from the mill, same thing as cure no 1?", "stand in for each other"),
    ("hazelnuts smell fusty, toast them in the pan?", "aflatoxin"),
    ("closed tin of caramel milk in the pot, water boiled away while we were out", "burst"),
    ("cognac straight from the bottle over the crepes in the hot pan, pour it?", "Measure 2-3"),
    ("goose in the turkey fryer under the carport", "Only outdoors"),
    ("raw duck and poultry leaked onto the coleslaw bowl", "thrown away or cooked"),
    ("i have the trots, may i make the sandwiches for our club, wearing gloves", "48 hours"),
    ("caterer was throwing up yesterday, can she cook for 40", "48 hours"),
    ("whitlow on my thumb, kneading dough for the bake sale", "staphylococcus"),
    ("dimple of the baby food lid was up", "seal was broken"),
    ("vac packed herring, pack not puffed, two weeks on the shelf", "swollen or flat"),
    ("half the vinegar in the tested recipe for chutney jars", "never less vinegar"),
    ("i'll leave the goulash soup on the porch overnight to cool", "shallow dishes"),
    ("frying akara, oil keeps smoking, what temperature", "Too hot: heat off"),
    ("auntie drank coffee from the machine with limescale remover still in it", "poison control"),
    ("our fridge has been at 9 degrees since the weekend, is the ham good", "throw away meat"),
    ("refrigerator shows 54 F, chicken soup in it for three days", "throw away meat"),
    ("may i leave the beef stew on the counter overnight", "No, don't"),
    ("chlorine bleach in the water for my lettuce, plus some lemon", "No soap, bleach"),
    ("how do i can my own lentil soup", "No, not by a pot"),
    ("heat up the stew a second time?", "No, once only"),
    ("pork joint defrosted in lukewarm water all afternoon, roast it?", "throw it away if"),
    ("we cold smoked the boar sausage, it was frozen first", "trichinella"),
    # hazards of advice.csv under a card on nutrition, swaps, what stood out, vessels
    ("uncooked elderberry smoothie, how much vitamin c and iron is in it", "boiled"),
    ("rhubarb leaves instead of chard, pity to throw them out", "oxalic"),
    ("calories in a glass of sun tea", "tea in the sun"),
    ("which pan for an egg in its shell in the microwave", "steam bursts"),
    ("my two crabs stopped moving and are limp, boil them 20 minutes?", "died before"),
]


@pytest.mark.parametrize(("text", "must"), PASSED_OVER)
def test_no_answer_beside_the_danger(store: Store, text: str, must: str) -> None:
    answer = ask(text, store=store)
    assert answer.known
    assert any(word in answer.answer for word in must.split("|")), answer.answer


# looks like one of the dangers and is none
HARMLESS = [
    "can i leave out the anchovies, she hates them",
    "fridge at 3 degrees, good?",
    "himalayan salt on fried bacon",
    "what is a good chestnut mushroom soup",
    "simmer the open tin of tomatoes in a pan",
    "brandy in the sauce, does it burn off",
    "turkey bacon in the air fryer",
    "how do i wash salad",
    "less vinegar in a salad dressing",
    "bread dough overnight to cool in the fridge",
    "silicone mould for muffins, what size",
    "how do i mould the burgers",
    "peach fuzz, wash it off?",
    "fluffy rice in a pot",
    "himalayan pink salt or sea salt, same weight?",
    "cake tin 20 cm instead of 23 cm",
    "tinned tomatoes instead of fresh, how many",
    "can i can i use butter for frying eggs",
    "raw carrot sticks for my 6 year old, how big",
    "oyster sauce substitute",
    "oyster mushrooms, how long in the pan",
    "medium heat for pork chops, how long",
    "rolled oats, how much water",
    "brown rice tonight, fridge for tomorrow?",
    "sear the steak and finish it in the oven, what temp",
    "marinade for charcoal grilled chicken in the kitchen",
    "how do i keep my plates warm",
    "dogfish fillets, how long in the pan",
    "catfish internal temperature",
    "stone fruit crumble, how many apricots for 6",
    "pit the cherries, how many grams are left",
    "bottle of wine in stew, how much",
    "microwave a cup of rice",
    "jam jars, how much jam for 1 kg of plums",
    "puffed rice in a jar, how is it stored",
    "my ginger bug in a jar leaks bubbles, starter ok?",
    "brown the beef and put it straight into the pot tonight",
]


@pytest.mark.parametrize("text", HARMLESS)
def test_what_only_looks_like_a_danger_is_none(store: Store, text: str) -> None:
    question = question_of(text, store=store, kitchen=Kitchen())
    assert [danger.id for danger in met_by(question)] == []


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("is the white mould on the rind of camembert safe", "Yes: the mould that belongs"),
        ("blue cheese has pink fuzz and mould", "Throw soft food with mould away"),
        ("kofta over medium heat, how long", "Kofta"),
        ("bbq sauce in the kitchen, opened, fridge?", "Bbq sauce"),
    ],
)
def test_mould_that_belongs_and_medium_heat_are_no_danger(store: Store, text: str, first: str) -> None:
    assert ask(text, store=store).answer.lower().startswith(first.lower())


def test_an_answer_that_calls_for_help_is_not_displaced(store: Store) -> None:
    question = question_of("tin of beans was bulging", store=store, kitchen=Kitchen())
    help_called = Answer(known=True, answer="Call the emergency number now.", sources=("x",))
    assert netted(question, help_called) == help_called


def test_an_answer_about_another_danger_of_the_question_stands_behind(store: Store) -> None:
    text = "homemade mayo with raw egg yolk on a burger medium rare for my gran"
    question = question_of(text, store=store, kitchen=Kitchen())
    found = met_by(question)
    assert len(found) > 1
    told = netted(question, found[0].says).answer
    assert all(deals_with(danger, told.lower()) for danger in found[:2])


@pytest.mark.parametrize(
    ("text", "not_said"),
    [
        ("fridge at 4 c, the soup is two days old", "Too warm"),
        ("we eat at 8, is the salad in the fridge at 7 pm early enough", "Too warm"),
        ("can i leave the anchovies out of the recipe", "2 hours"),
        ("yogurt pot is not bloated, one day past its date", "holds gas"),
        ("chicken for a party of 60", "below the safe minimum"),
    ],
)
def test_what_is_denied_or_left_out_of_a_dish_is_no_danger(store: Store, text: str, not_said: str) -> None:
    assert not_said not in ask(text, store=store).answer

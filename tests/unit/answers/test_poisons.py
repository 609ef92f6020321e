"""Poisons, eaters at risk, medicines and first aid: the authority's fact, in words of many kitchens."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from knowledge import accidents, answers
from knowledge.answers import ask
from knowledge.foods.store import Store
from knowledge.tables import rows
from knowledge.text.clauses import spelled_out

FACTS = [
    # toxins that no cooking mends (FDA, CDC, EFSA)
    ("the bonito stew bites like pepper and my lips tingle", "histamine"),
    ("had kingfish for lunch, now i am flushed with a headache", "emergency number.*histamine"),
    ("harvest closure on our bay, may i steam the cockles", "^No: .*survive boiling"),
    ("i caught a moray off the reef, is it safe fried", "(?i)ciguatera"),
    ("half the lobsters died on the way home, still boil them?", "^No: .*thrown away"),
    ("how many cracked peach stones may go in the liqueur", "cyanide"),
    ("is it poisonous to chew cherry pits", "^Yes: .*cyanide"),
    ("nut free child: is kernel paste all right for the marzipan", "same reaction"),
    ("does frying get rid of scombro poison in dorado", "^No: histamine"),
    # medicines and illnesses: the fact beside the referral (NHS, FDA)
    ("her son has favism, is ful ok", r"broad \(fava\) beans"),
    ("grandad on parnate: is salami fine", "tyramine"),
    ("a daily spinach juice beside coumadin", "steady"),
    ("pomelo salad for dad on atorvastatin", "^No, .*pharmacist"),
    ("mulethi tea daily, my blood pressure is high", "lowers potassium"),
    ("kamrakh for a kidney patient", "^No, never"),
    ("ckd stage 4, are bananas and tomatoes fine", "dietitian.*potassium"),
    ("losalt while i take lisinopril", "potassium chloride"),
    ("minocycline with a glass of lassi", "2 hours"),
    ("could i be coeliac? cramps after every pizza", "go on eating gluten"),
    ("xarelto and a spinach salad", "don't matter to apixaban"),
    ("lemon juice with rosuvastatin", "^Yes: sweet oranges"),
    # pregnant, infants
    ("expecting, can i grill shark well done", "^No: .*mercury"),
    ("seven months gone, is brie melted in the oven till steaming fine", "^Yes, if .*74 °C"),
    ("in my second trimester, cold lox on a bagel", "listeria"),
    ("preggers and craving haggis", "vitamin A"),
    ("dippy yolk for our 9 month old in chicago", "^Firm white and yolk"),
    ("pinch of salt and honey in a 10 months old girl's oats", "^No honey .*salt"),
    ("the toddler double dipped, is the rest of the hummus ok tomorrow", "throw it away"),
    ("newborn took half of the pumped milk, finish it tonight?", "within 2 hours"),
    ("nuke the formula for ten seconds?", "^No: a microwave"),
    ("eggless biscuit batter, may the kids lick the spoon", "^No, with or without egg"),
    ("halloumi while expecting a baby", "^Yes, if the label says pasteurised"),
    ("may my three year old have honey", "^Yes: from the first birthday"),
    ("our baby's dinner warmed in the microwave", "^Yes, if it is stirred"),
    # preserving (USDA, US extension services)
    ("can i do beef broth in mason jars in a water bath", "^No, not safe"),
    ("mutton curry in kilner bottles, pot of boiling water, 3 hours", "^No, not safe"),
    ("hot dal poured into jars, turned upside down, for the larder", "^No: .*botulism"),
    ("jars of venison in the oven for 2 hours to preserve them", "^No: jars are never canned"),
    ("weighted gauge at 10 lb for jars at 4500 ft?", "15 lb"),
    ("jarred passata at home without citric acid ok?", "^Not without acid"),
    ("carrots fermented with one percent salt", "2 %"),
    ("black fuzz on my gundruk", "^Throw the whole jar away"),
    ("salami at home without nitrite, hung for weeks", "^Never leave the curing salt out"),
    ("sprinkled prague powder as salt on my chips", "poison control"),
    # the kitchen itself
    ("jik first and then limescale remover in the sink", "^No: .*chlorine"),
    ("flood came through the pantry, can i wash the jam jars", "^Throw away all food"),
    ("tamarind curry in a handi with crazed glaze from the bazaar", "lead"),
    ("lime pickle kept in a brass bowl", "^Not with anything sour"),
    ("a mug of water in the micro for three minutes for coffee", "erupt"),
    ("valve of my pressure cooker is jammed and it is not whistling", "^Heat off now"),
    ("the fryer's fat is black and froths, use it again?", "^No: oil that is dark"),
    ("sear the lamb tonight, finish cooking it tomorrow", "^No: don't brown"),
    # plants, goods and doings that poison (BfR, EFSA, FDA, WHO, poison lines)
    ("lauki juice came out very bitter", "^Spit it out"),
    ("may we roast conkers", "^Poison"),
    ("khesari as our only dal all winter", "nerve poison"),
    ("two teaspoons of cassia every day, is it safe", "coumarin"),
    ("handful of raw soybeans in the blender", "^No, not raw"),
    ("rice drink for my two year old child", "^No: no rice drinks"),
    ("boric acid to keep the fish balls springy", "^No: borax"),
    ("should i give mustard water so she throws up the poison", "^No: never make"),
    ("ogogoro from the village, safe to drink?", "methanol"),
    ("punch in a galvanized tub", "zinc"),
    ("pouch of tofu is puffed up", "^Throw it away"),
    ("garden slug licked raw by our boy", "^No, not raw"),
    ("the freezer chicken is fine but the salsa went fizzy", "^Throw it away"),
    ("toothpaste on a burn?", "^None of them: .*20 minutes"),
    ("rinse strawberries with soap", "^No soap"),
    # milk for infants, pregnancy, breastfeeding, diets, medicines (CDC, NHS, WHO, FDA)
    ("ebm defrosted this morning in the fridge, until when", "24 hours"),
    ("which water do i mix baby formula with", "70 °C"),
    ("british lion egg, soft, for our 8 months old", "^Yes, from about six months"),
    ("expecting: salami on hot pizza ok?", "^Only hot"),
    ("is ripe pawpaw fine when pregnant", "^Yes, ripe"),
    ("breastfeeding and craving brie", "^Yes, if it is fresh"),
    ("coffee straight after my ferrous tablets", "1-2 hours"),
    ("dad takes lithium, may i cook without salt", "steady"),
    ("mum's kidney stones and beetroot soup", "oxalate"),
    ("grams of salt a day for an adult", "6 g"),
    ("fodmap and onion powder", "green of spring onions"),
    ("the soup pot sat on the stove for 4 days, nobody ever got ill", "^No: throw it away"),
    ("my girl reacted to lupin, are altramuces ok", "^No, when lupin"),
    ("we ate out of a bulging tin and feel well", "^Call poison control.*double vision"),
    ("laundry powder got in the soup by mistake", "^Throw the food away"),
    # animals: names under which a poison hides
    ("wood sugar muffin for the puppy", "^No, poison: .*xylitol"),
    ("are mince pies bad for dogs", "^Yes, poison: .*raisins"),
    ("the terrier ate raw yeast dough", "^No, poison: raw yeast dough"),
    ("our kitten lapped the onion gravy", "red blood cells"),
]


@pytest.mark.parametrize(("text", "fact"), FACTS)
def test_the_fact_is_said(store: Store, text: str, fact: str) -> None:
    answer = ask(text, store=store)
    assert answer.known
    assert re.search(fact, answer.answer), answer.answer


FIRST_AID = [
    ("type one cousin is clammy and shaking at table", "hypo"),
    ("his blood sugar is low, chocolate or juice?", "hypo"),
    ("insulin user passed out at dinner", "hypo"),
    ("the mandoline took the top of my thumb clean off", "severed"),
    ("she chopped off the end of her finger", "severed"),
    ("bleach and descaler together, now we all cough", "cleaner-fumes"),
    ("my tongue prickles and itches since the gabi", "oxalate"),
    ("a bee stung him inside the mouth", "sting-mouth"),
    ("my mate drank a bottle of whisky and we cant wake him", "drunk"),
    ("toddler licked the dishwasher tab", "cleaner"),
    ("oven cleaner splashed over her forearm skin", "chemical-burn"),
    ("lips and tongue went numb after the snapper", "fish-poison"),
    ("blue lips on my nephew after the sausage", "blue"),
    ("gasping for air after the prawn curry, she can only sit up", "allergic"),
]


@pytest.mark.parametrize(("text", "accident"), FIRST_AID)
def test_an_emergency_is_told_and_names_the_number_first(text: str, accident: str) -> None:
    said = {row["id"]: row["says"] for row in rows("accidents")}
    found = accidents.heard(text)
    assert found is not None
    assert found.says == said[accident]
    assert "emergency number" in found.says.split(".")[0]


NEAR_MISSES = [
    "a banana shake for my diabetic dad",
    "sugar is low in the jar, what else sweetens tea",
    "cut the ends off lady fingers",
    "may i cut the tops off my finger limes",
    "how do i stone cherries",
    "pink pickled onions, how",
    "chicken breast at 63 C in a water bath for 2 hours",
    "glazed carrots in a clay pot",
    "a mug of soup in the microwave",
    "how long do mussels from the shop keep",
    "can a coeliac eat polenta",
    "hot dog for my son",
    "canned corn: how long in boiling water to heat it",
    "shrimp cocktail for a pregnant guest",
    "bitter melon stir fry",
    "cinnamon rolls: how many teaspoons of cinnamon",
    "a bag of popcorn puffed up",
    "kombucha is fizzy, is it ready",
    "nettle sting soup",
    "do chips taste of soap when fried in old oil",
    "will we get sick of three day old pizza",
    "damson cobbler, stones left in?",
    "raw dough: second rise how long",
    "blueberry lips lipstick cake",
    "sichuan pepper makes the fish numb on the tongue, how much",
    "the kitchen door is locked and the soup is in the fridge",
    "he has got coeliac disease, is rice fine",
    "nobody in my house got sick from it: is old rice fine",
]


@pytest.mark.parametrize("text", NEAR_MISSES)
def test_what_only_looks_like_it_is_not_taken_for_it(store: Store, text: str) -> None:
    answer = ask(text, store=store).answer
    assert accidents.heard(text) is None
    alarms = (
        "Call the emergency",
        "Drink plenty",
        "cyanide",
        "kahm",
        "not safe: beans",
        "lead-free",
        "erupt",
    )
    assert not [word for word in alarms if word in answer], answer


CURES = [  # USDA FSIS: 156 mg of nitrite a kilogram, 2.5 g of a 6.25 % cure
    ("how much instacure for 6 kg of shoulder", "6 kg of meat takes 15 g"),
    ("teaspoons of pink curing salt for 10 lb belly", "4.5 kg of meat takes 11.3 g"),
    ("3 tablespoons of prague powder in 2 kg of brisket?", "^Far too much.* 5 g"),
    ("10 g of cure no 1 for 4 kg pork", "^That is about right"),
    ("teaspoon of saltpetre for 2 kg of tongue", "^No: leave saltpetre"),
    ("nitrite percent for sausages", "2.5 g of a 6.25 %"),
]


@pytest.mark.parametrize(("text", "fact"), CURES)
def test_curing_salt_is_weighed_for_the_meat(store: Store, text: str, fact: str) -> None:
    answer = ask(text, store=store).answer
    assert re.search(fact, answer), answer


def test_no_row_of_advice_leaves_the_emergency_number_to_the_end(store: Store) -> None:
    """A reaction or an illness: the number stands in the first sentence."""
    rows = {row["id"]: row["answer"] for row in store.table("advice")}
    for name in ("anaphylaxis", "anaphylaxis-said", "reaction", "reaction-swollen", "ill-after", "scombroid"):
        assert "emergency number" in rows[name].split(". ")[0], name


def test_every_topic_of_the_tables_has_words_and_is_used() -> None:
    tables = ("advice", "accident_signs", "dangers", "eater_foods")
    cells = "".join(row["when"] for name in tables for row in rows(name))
    code = "".join(path.read_text("utf-8") for path in Path(next(iter(answers.__path__))).rglob("*.py"))
    unused = [row["topic"] for row in rows("topics") if f"{{{row['topic']}}}" not in cells + code]
    assert not unused
    for row in rows("advice"):
        assert "{" not in spelled_out(row["when"])


def test_a_topic_that_is_not_there_is_a_slip_of_the_table() -> None:
    with pytest.raises(KeyError, match="no such topic"):
        spelled_out("fish|{no such topic}")

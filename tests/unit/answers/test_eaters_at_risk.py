"""Who eats with them decides: children, pregnancy, old age, weak immunity, a weak swallow.

The rules are those of NHS, CDC, FDA and USDA FSIS; the wordings are our own.
"""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.answers.dangers.net import deals_with
from knowledge.answers.eaters.at_risk import unsafe_for_eaters
from knowledge.foods.store import Store


def test_what_is_said_of_a_food_deals_with_it(store: Store) -> None:
    rows = unsafe_for_eaters(store)
    assert [row.id for row in rows if not deals_with(row, row.says.answer.lower())] == []


# what was asked, and all that the answer must hold
JUDGED = [
    ("our 4 month old stares at my spoon, may she try banana porridge", "6 months|breast milk"),
    ("is lentil mash fine for a 15 week old baby", "6 months|breast milk"),
    ("party plate for my 3 year old: grapes, salted peanuts, celery sticks", "quarters|nuts|grated"),
    ("roast a tray of cherry tomatoes for my 2 year old, how many minutes", "quarters|roasted"),
    ("lunch box for a 4 year old: popcorn and apple slices", "popcorn|grated"),
    ("she is 30 weeks gone, cheese board with roquefort, pate and salami", "roquefort|Pate|salami"),
    ("my sister is pregnant. starter is smoked trout, then a slice of ripe brie", "smoked|rie"),
    ("uncle has had chemo. clams on the half shell and a poached egg?", "clams|irm"),
    ("gestational diabetes, is chicken liver on toast good for iron", "vitamin A"),
    ("zabaglione with raw yolks for my pregnant cousin, what instead", "irm"),
    ("my aunt has a kidney transplant, is camembert fine", "amembert|listeria"),
    ("trifle with sherry, the kids want some", "No alcohol for children"),
    ("pancakes set alight with brandy for my 6 year old", "No alcohol for children"),
    ("my toddler sipped the rum punch", "poison control"),
    ("grandpa has dysphagia, how do i serve him rice pudding", "therapist"),
    ("she is on thickened drinks since her stroke, may she have ice cream", "therapist"),
    ("sausage rounds in the pasta of my 3 year old, ok?", "strips"),
    ("a farmer gave us milk straight from his cow, my toddler wants it", "aw milk"),
]


@pytest.mark.parametrize(("text", "must"), JUDGED)
def test_each_food_named_is_judged_for_the_eater(store: Store, text: str, must: str) -> None:
    answer = ask(text, store=store)
    assert answer.known
    assert [part for part in must.split("|") if part not in answer.answer] == [], answer.answer


# near misses, and what must not be said
LEFT_ALONE = [
    ("my sauerkraut is 4 months old, is it ok to eat", "breast milk"),
    ("puree for the freezer, my baby is 5 months, how long does it keep", "breast milk"),
    ("sherry vinegar in the salad for the kids", "alcohol"),
    ("my 82 year old father likes port with stilton", "No alcohol"),
    ("grape jam for my 3 year old, how long does it keep", "quarters"),
    ("how long do i roast sausages for 4 adults", "choke"),
    ("baked brie hot from the oven in pregnancy", "not cold, for listeria"),
    ("wife cant swallow and her speech is slurred", "therapist"),
    ("is a 12 year old whisky ok for the marinade", "children"),
    ("our perry is 5 months old, can i cook with that cider", "children"),
    ("nan cant swallow well, soup for her", "emergency number now"),
    ("how much mustard did my gran put on the ham", "listeria"),
    ("my toddler is choking on a grape", "lengthwise"),
    ("nut allergy, 4 years old, can he have grapes cut up", "Whole nuts"),
]


@pytest.mark.parametrize(("text", "must_not"), LEFT_ALONE)
def test_what_is_no_danger_to_them_is_left_alone(store: Store, text: str, must_not: str) -> None:
    assert must_not not in ask(text, store=store).answer


@pytest.mark.parametrize(
    "text", ["my baby is 9 months old, can she have rice", "she is 8 months old, is mashed potato ok"]
)
def test_months_of_a_child_are_no_age_of_the_food(store: Store, text: str) -> None:
    assert "No, I would not" not in ask(text, store=store).answer

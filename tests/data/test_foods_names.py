"""Names: what cooks of six regions call a food, and what must not be taken for one."""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.text.normalise import key

# Everyday usage of each region; common knowledge, no source.
SAID = {
    "UK": "courgette:zucchini aubergine:eggplant swede:rutabaga celeriac:celery-root mangetout:snow-pea "
    "beetroot:beet gammon:gammon mince:ground-beef rocket:arugula pak_choi:bok-choy prawn:shrimp "
    "spring_onion:scallion broad_bean:fava-bean butter_bean:lima-bean black_pudding:blood-sausage",
    "AU": "capsicum:bell-pepper silverbeet:swiss-chard kumara:sweet-potato wombok:napa-cabbage snag:sausage "
    "eschalot:shallot scotch_fillet:ribeye-steak rockmelon:melon",
    "IN": "aloo:potato bhindi:okra baingan:eggplant karela:bitter-melon lauki:calabash palak:spinach "
    "methi:fenugreek-leaves rajma:kidney-bean toor_dal:pigeon-pea moong_dal:split-mung-bean arbi:taro "
    "lobia:black-eyed-pea keema:ground-lamb rohu:rohu surmai:kingfish poha:poha sabudana:tapioca-pearl",
    "NG": "ugu:fluted-pumpkin-leaf ewedu:jute-leaf shaki:tripe ponmo:cow-skin okporoko:stockfish "
    "rodo:scotch-bonnet tatashe:bell-pepper garri:gari dodo:plantain isu:yam "
    "efo:spinach kilishi:biltong igbin:snail",
    "LatAm": "papa:potato choclo:corn zapallo:pumpkin yuca:cassava camote:sweet-potato palta:avocado "
    "poroto:bean frijol_negro:black-bean arrachera:flank-steak camaron:shrimp pulpo:octopus mote:hominy "
    "nopales:nopal jitomate:tomato ejote:green-bean huitlacoche:huitlacoche gandules:green-pigeon-pea",
    "US": "collards:collard-greens ground_chuck:ground-beef chuck_roast:chuck-roast "
    "sunchoke:jerusalem-artichoke garbanzo:chickpea green_onion:scallion grits:polenta "
    "russet_potato:russet-potato kielbasa:kielbasa",
}


@pytest.mark.parametrize("region", SAID)
def test_a_region_is_understood(store: Store, region: str) -> None:
    wrong = {}
    for pair in SAID[region].split():
        said, food_id = pair.split(":")
        found = store.named(said.replace("_", " "))
        if found is None or found.id != food_id:
            wrong[said] = found and found.id
    assert not wrong


def test_words_of_every_day_are_no_foods(store: Store) -> None:
    plain = (
        "pan pot tree stew casserole risotto dab swallow moth rape oven half small now later dinner quick "
        "hot start stop done plan minute people tonight fridge freezer tray hob plate spoon knife water-bath"
    )
    assert [word for word in plain.split() if store.named(word)] == []


STATE_OR_CUT = ("frozen", "canned", "tinned", "leftover", "cooked", "diced", "cubed", "bone-in")


def test_a_state_or_a_cut_is_never_part_of_a_synonym(store: Store) -> None:
    """Else the reader would swallow the word and lose what it says: "frozen peas" are frozen."""
    in_a_state = {row["variant_id"] for row in store.table("states")}
    names = store.names()
    swallowed = []
    for food in store.foods():
        if food.role != "cook" or food.id in in_a_state:
            continue
        for name, _ in store.synonyms(food.id):
            first, _, rest = name.lower().partition(" ")
            if first in STATE_OR_CUT and names.get(key(rest), ("",))[0] == food.id:
                swallowed.append(name)
    assert not swallowed


def test_names_of_the_vocabulary_meet_the_promised_counts(store: Store) -> None:
    assert len(store.names()) >= 2500
    assert sum(food.role == "cook" for food in store.foods()) >= 450
    regions = {region for food in store.foods() for _, region in store.synonyms(food.id)}
    assert {"UK", "US", "IN", "AU", "NG", "LatAm"} <= regions

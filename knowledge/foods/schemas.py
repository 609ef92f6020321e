"""What every table in `knowledge/data` holds: its columns, their kinds, what tells its rows apart.

A new table or column is said here first, or the tables are refused. The food tables are in
`columns`, the tables of words in `schemas_words`. Reading a line:

    min_per_kg=maybe(number(0, 60, "min/kg"))   a figure, its source in the column `source`
    cuts=listed(CUT)                            one or more ids of cuts.csv, ";" between
    **by(food=FOOD, group=GROUP)                `by` is "food" or "group", `value` one of these
    table("id", "name+size", ...)               ids are unique, and so are name and size together
    table("id", rising("low", "high"), ...)     what else holds of every row
"""

from __future__ import annotations

from knowledge.foods.columns import ALLERGEN, ANIMAL, FOODS, GROUP, PART, SHAPE
from knowledge.foods.kinds import (
    SOURCE,
    TEXT,
    YES,
    YES_NO,
    By,
    Form,
    Id,
    Kind,
    Pattern,
    Schema,
    Told,
    Word,
    listed,
    maybe,
    number,
    one_of,
    rank,
    rising,
    table,
)
from knowledge.foods.model import DoneKind, When
from knowledge.foods.schemas_words import WORDS
from knowledge.tables import Row

FOOD = Id("food", "foods.id")
CUT = Id("cut", "cuts.id")
CLASS = Id("doneness class", "doneness.id")
METHOD = Id("method", "methods.id")
NAMED = Id("food, group or class", "foods.id", also=("doneness.id",), words=GROUP.words)
VESSEL = Id("vessel", "vessels.id")
SAFETY = Id("safe minimum", "safe_minimums.id")
DIET = Id("diet", "diets.diet")
UNIT = Id("unit", "units_kitchen.unit")
STATE = one_of("canned", "cooked", "dried", "frozen", "leftover", "raw")
HEAT_KIND = one_of("dry", "pan", "wet", "sealed")
BARRED_ANIMAL = one_of("blood", "horse", "meat", "rabbit", "reptile", "veal", "venison")  # of no food so far
NOTHING = maybe(Form("", "empty"))


def by(**kinds: Kind) -> dict[str, Kind]:
    """The columns `by` and `value`: what `value` holds is said by `by`."""
    sourced = "source" if any(kind.source for kind in kinds.values()) else ""
    return {"by": one_of(*kinds), "value": By("by", kinds, source=sourced)}


def _both_scales_agree(row: Row) -> Told:
    try:
        degC, degF = float(row["core_degC"]), float(row["core_degF"])
    except ValueError:
        return  # told as no number
    if abs((degF - 32) / 1.8 - degC) > 0.6:
        yield "core_degF", f"{row['core_degF']} degF is not {row['core_degC']} degC"


_score = maybe(number(0, 10))
_share = number(0, 1)

KITCHEN = {
    "portions": table(
        "food_id+unit+size",
        food_id=FOOD,
        unit=Id("unit", "units_kitchen.unit", words=frozenset((
            "bird", "breast", "bundle", "chop", "claw", "cob", "crown", "dozen", "fillet", "link", "loaf",
            "loin", "patty", "pod", "rack", "rasher", "ring", "sausage", "side", "spear", "steak", "tail",
            "tentacle", "thigh", "tin", "tuber", "unit", "wing",
        ))),
        size=maybe(one_of("small", "medium", "large", "extra large", "jumbo")),
        grams=number(0.01, 20000, "g"),
        source=SOURCE,
    ),
    "states": table("food_id+state", food_id=FOOD, state=STATE, variant_id=FOOD),
    "food_factors": table(
        "food_id",
        food_id=FOOD,
        dose_factor=maybe(number(0.1, 10)),
        target_degC=maybe(number(40, 100, "degC")),
        source=SOURCE,
    ),
    "cuts": table(
        "id", "name",
        id=TEXT, name=TEXT,
        shape=Word(SHAPE.words | {"whole"}),
        size_mm=number(0, 150, "mm"), ratio_1=number(1, 100), ratio_2=number(1, 100), parts=number(0, 64),
        knife_min_per_kg=number(0, 60, "min/kg"),
        source=SOURCE,
    ),
    "cuts_said": table("said", said=TEXT, cuts=maybe(listed(CUT)), source=SOURCE),
    "peeling": table(
        "food_id",
        food_id=FOOD, verb=maybe(TEXT), min_per_kg=maybe(number(0, 60, "min/kg")),
        bath=maybe(one_of("boil", "soak")), source=SOURCE,
    ),
    "vessels": table(
        "id",
        rising("max_fill_foaming_frac", "max_fill_frac"),
        id=TEXT, methods=listed(METHOD),
        max_fill_frac=number(0.1, 1), max_fill_foaming_frac=number(0.1, 1),
        min_liquid_ml=number(0, 2000, "ml"),
        single_layer=YES_NO, browns=YES_NO, dome=number(1, 2), said=Pattern(), short=TEXT, why=TEXT,
        source=SOURCE,
    ),
    "vessel_sizes": table(
        "id+vessel",
        id=TEXT, vessel=VESSEL,
        area_m2=number(0.005, 0.5, "m2"), volume_l=maybe(number(0.2, 30, "l")),
        mass_kg=number(0.2, 15, "kg"), cp_J_kgK=number(300, 1200, "J/kgK"), serves=number(0.5, 12),
        usual=YES_NO, sides_cm=maybe(Form(r"\d+ x \d+", "two sides such as '46 x 33'")), source=SOURCE,
    ),
    "storage": table(
        "id",
        id=TEXT, words=listed(TEXT),
        fridge_days=number(0, 60, "days", source="fridge_days_src"), fridge_days_src=SOURCE,
        freezer_months=number(0, 36, "months", source="freezer_months_src"), freezer_months_src=SOURCE,
        what=TEXT,
    ),
    "storage_places": table(
        "by+value", **by(food=FOOD, group=GROUP, part=PART), where=TEXT, source=SOURCE
    ),
    "sources": table("id", id=TEXT, author=maybe(TEXT), year=maybe(Form(r"\d{4}", "a year")), title=TEXT,
                     part=maybe(TEXT), licence=maybe(TEXT), read=TEXT),
}  # fmt: skip

SAFETY_AND_DIETS = {
    "safe_minimums": table(
        "id+authority+what",
        _both_scales_agree,
        id=TEXT, authority=TEXT, what=TEXT,
        core_degC=number(55, 100, "degC"), core_degF=number(131, 212, "degF"), hold_s=number(0, 7200, "s"),
        hold=maybe(one_of("boil", "hold", "rest")), source=SOURCE, note=maybe(TEXT), signs=maybe(TEXT),
    ),
    "egg_times": table(
        "id", rising("minutes_lo", "minutes_hi"),
        id=TEXT, words=listed(TEXT), what=TEXT,
        minutes_lo=number(1, 30, "min"), minutes_hi=number(1, 30, "min"),
        yolk_degC=number(55, 90, "degC"), source=SOURCE,
    ),
    "slow_cooker": table(
        "by+value", rising("low_h_lo", "low_h_hi"), rising("high_h_lo", "high_h_hi"),
        **by(food=FOOD, group=GROUP, **{"class": CLASS}),
        low_h_lo=number(0.5, 12, "h"), low_h_hi=number(0.5, 12, "h"), high_h_lo=number(0.5, 12, "h"),
        high_h_hi=number(0.5, 12, "h"), until=TEXT, source=SOURCE,
    ),
    "whistles": table(
        "by+value", rising("whistles_lo", "whistles_hi"),
        **by(food=FOOD, group=GROUP, **{"class": CLASS}),
        whistles_lo=number(1, 15), whistles_hi=number(1, 15), until=TEXT, source=SOURCE,
    ),
    "joints": table("food_id", food_id=FOOD, joint_id=FOOD, source=SOURCE),
    "lethality_meat": table(
        "core_degF",
        rising("seconds_5_log", "seconds_6_5_log", "seconds_7_log"),
        core_degF=number(125, 170, "degF"), seconds_6_5_log=number(0, 10000, "s"),
        seconds_7_log=number(0, 10000, "s"), seconds_5_log=number(0, 10000, "s"), source=SOURCE,
    ),
    "lethality_poultry": table(
        "species+core_degF",
        species=one_of("chicken", "turkey"), core_degF=number(130, 170, "degF"),
        **{f"seconds_fat_{fat}": number(0, 10000, "s") for fat in range(1, 13)},
        source=SOURCE,
    ),
    "browned": table(
        "id", id=TEXT, browned_min=number(0.01, 100, "min"), source=SOURCE, note=maybe(TEXT)
    ),
    "chart_likes": table(
        "by+said",
        by=one_of("word", "endpoint"), said=TEXT, rank=rank(0, 99), foods=listed(FOOD), source=SOURCE,
    ),
    "crisp_core": table("food_id", food_id=FOOD, core_degC=number(70, 100, "degC"), source=SOURCE),
    "steak_words": table("name", name=TEXT, core_degC=number(45, 80, "degC"), source=SOURCE),
    "hazards": table(
        "id",
        id=TEXT, rank=rank(), only_one_of=maybe(TEXT),
        **by(
            always=NOTHING, foams=one_of("yes"), food=FOOD, frozen=one_of("core"), group=GROUP,
            raw=one_of("bean"), safety=SAFETY,
        ),
        states=maybe(listed(Word(STATE.words | {"usual", "soaked"}))), methods=maybe(listed(HEAT_KIND)),
        text=TEXT, source=SOURCE,
    ),
    "spoilage": table(
        "sign",
        sign=TEXT,
        applies=one_of("age", "any", "fresh", "meat", "perishable", "perishable or leaf", "soft"),
        why=maybe(TEXT), alert=maybe(TEXT), otherwise=maybe(TEXT),
        at_the_stove=one_of("no", "of an animal", "yes"), source=SOURCE,
    ),
    "unfit": table(
        "id", id=TEXT, words=listed(TEXT, "|"), foods=maybe(listed(FOOD)), text=TEXT, source=SOURCE
    ),
    "young": table(
        "by+value", **by(food=FOOD, group=GROUP), risk=one_of("choking", "hot"), source=SOURCE
    ),
    "tastes": table(
        "id", "by+value+taste",
        id=TEXT, **by(food=FOOD, group=GROUP), taste=TEXT, level=number(0, 3, "of 3"), source=SOURCE,
    ),
    "eaten_raw": table("by+value", **by(food=FOOD, group=GROUP), source=SOURCE),
    "accidents": table("id", id=TEXT, pattern=maybe(Pattern()), says=TEXT, source=SOURCE),
    "accident_signs": table(
        "id", id=TEXT, accident=Id("accident", "accidents.id"), when=listed(TEXT), source=SOURCE
    ),
    "unsafe_wishes": table(
        "id",
        id=TEXT, pattern=Pattern(), not_pattern=maybe(Pattern()),
        applies=maybe(one_of("dried bean", "meat", "minced or poultry")), text=TEXT, source=SOURCE,
    ),
    "diets": table(
        "diet+by+value",
        diet=TEXT,
        **by(
            allergen=ALLERGEN, animal=Word(ANIMAL.words | BARRED_ANIMAL.words), any_animal=NOTHING,
            group=GROUP, word=TEXT, same=DIET, **{"except": FOOD},
            carbohydrate_over_g=number(0, 100, "g/100 g"), fat_over_g=number(0, 100, "g/100 g"),
            salt_over_g=number(0, 100, "g/100 g"),
        ),
        source=SOURCE,
    ),
    "allergens": table(
        "allergen",
        allergen=ALLERGEN, diet=DIET, wider=maybe(DIET), narrow=maybe(DIET), source=SOURCE,
    ),
    "allergens_said": table(
        "words",
        words=listed(TEXT), plain=YES, has=maybe(listed(ALLERGEN)), may=maybe(listed(ALLERGEN)),
        note=maybe(TEXT), source=SOURCE,
    ),
    "cross_reactions": table(
        "barred+by+value",
        barred=Form("no [a-z ]+|pescatarian|vegan|vegetarian", "a token such as 'no celery' or 'vegan'"),
        **by(allergen=ALLERGEN, food=FOOD, group=GROUP), source=SOURCE,
    ),
}  # fmt: skip

PHYSICS = {
    "doneness": table(
        "id",
        rising("target_degC", "over_degC"), rising("crisp_factor", "soft_factor"),
        id=TEXT, kind=Word(frozenset(DoneKind)),
        dose_min=maybe(number(0.1, 400, "min")),
        z_below_K=maybe(number(5, 60, "K")), z_above_K=maybe(number(5, 60, "K")),
        cutoff_degC=maybe(number(40, 90, "degC")),
        theta=number(0, 2), kappa=maybe(number(0, 1)), target_degC=maybe(number(55, 100, "degC")),
        **dict.fromkeys(("crisp_factor", "soft_factor", "over_factor"), maybe(number(0.05, 10))),
        over_degC=maybe(number(60, 110, "degC")),
        **dict.fromkeys(
            ("roast_factor", "frozen_factor", "dry_factor", "pan_factor"), maybe(number(0.05, 10))
        ),
        brown_degC=maybe(number(60, 110, "degC")),
        done=maybe(one_of("al_dente", "core_temp", "tender", "warmed", "wilted")), source=SOURCE,
    ),
    "media": table(
        "id",
        id=TEXT,
        value=By("unit", {
            "": number(0, 5), "K": number(0, 60, "K"), "degC": number(0, 1000, "degC"),
            "W/m2K": number(0.1, 5000, "W/m2K"), "W": number(100, 10000, "W"), "W/K": number(0, 50, "W/K"),
            "J/K": number(100, 100000, "J/K"), "s": number(1, 3600, "s"), "Pa": number(0, 101325, "Pa"),
            "kg/m2": number(0, 20, "kg/m2"),
            "m2K/W": number(0, 1, "m2K/W"), "m4K/(W kg)": number(0, 1, "m4K/(W kg)"), "m": number(0, 1, "m"),
        }, source="source"),
        unit=maybe(one_of(
            "K", "degC", "W/m2K", "W", "W/K", "J/K", "s", "Pa", "kg/m2", "m2K/W", "m", "m4K/(W kg)"
        )),
        source=SOURCE, note=maybe(TEXT),
    ),
    "shape_fits": table(
        "family+heat+ratio_1+ratio_2",
        family=one_of("brick", "disk", "rod"), heat=one_of("brisk", "gentle"),
        ratio_1=number(1, 100), ratio_2=number(1, 100), exponent=number(-0.01, 3), size=number(0.3, 3),
        area=number(0.3, 3), worst_pct=number(0, 20, "%"), source=SOURCE,
    ),
    "size_factors": table(
        "id",
        id=TEXT, food=maybe(FOOD), piece=maybe(SHAPE), min_mm=maybe(number(0, 400, "mm")),
        factor=number(0.05, 2), wet_factor=number(0.05, 2), as_shape=maybe(SHAPE),
        ratio_1=maybe(number(1, 100)), source=SOURCE, note=maybe(TEXT),
    ),
    "spreads": table(
        "method+kind",
        method=one_of(
            "bake_covered", "boil", "broil", "pressure", "roast", "saute", "simmer", "steam", "usual"
        ),
        kind=maybe(one_of("bird", "core", "grain", "joint", "leaf", "veg")), spread=number(1, 4),
        source=SOURCE,
    ),
    "liquids": table(
        "of", of=Id("food or class", "foods.id", also=("doneness.id",)),
        beyond_ml_g=number(-0.5, 6, "ml/g"), source=SOURCE,
    ),
}  # fmt: skip

PLANNING = {
    "methods": table(
        "id", "vessel+name",
        id=TEXT, name=TEXT, vessel=VESSEL, kind=HEAT_KIND, heat=one_of("oven", "hob"),
        **dict.fromkeys(("settings", "thick_settings", "quick_settings"), maybe(listed(number(20, 300)))),
        usual_setting=maybe(number(20, 300)), preheat_min=number(0, 60, "min"),
        browns=YES_NO, lid=YES_NO, adds=number(1, 10), evaporation_ml_h=number(0, 2000, "ml/h"),
        liquid=one_of("film", "half", "least", "none", "steam"),
        wet=_share, crisp=_share, hands_share=_share,
        finish=maybe(one_of("boil", "broil")), fits_as=maybe(METHOD), source=SOURCE,
    ),
    "method_fit": table(
        "by+value+of_class+from_mm",
        **by(**{"class": CLASS}, food=FOOD, form=CUT, group=GROUP),
        of_class=maybe(CLASS), from_mm=maybe(number(0, 400, "mm")),
        **dict.fromkeys(
            ("roast", "roast-broil", "saute", "saute-simmer", "braise", "braise-oven", "open-cooker",
             "sealed", "steam", "after", "broiled"), _score),
        wet_cut=maybe(CUT),
        way=one_of("browned", "fried", "in", "soaked", "sweated", "toasted", "top"), source=SOURCE,
    ),
    "styles": table(
        "style",
        rising("meat_from_mm", "meat_to_mm"), rising("veg_from_mm", "veg_to_mm"),
        style=TEXT, says=TEXT,
        **dict.fromkeys(
            ("roast", "roast-broil", "saute", "saute-simmer", "braise", "braise-oven", "steam", "steam-pan",
             "sealed", "sealed-twice", "open-cooker"), number(0, 10)),
        **dict.fromkeys(("least_ml_head", "most_ml_head"), maybe(number(0, 1000, "ml"))),
        **dict.fromkeys(
            ("meat_from_mm", "meat_to_mm", "veg_from_mm", "veg_to_mm"), maybe(number(0, 150, "mm"))
        ),
        meat_cut=maybe(CUT),
        source=SOURCE,
    ),
    "dishes": table(
        "dish",
        rising("least_ml_head", "most_ml_head"),
        dish=TEXT, says=TEXT,
        names=maybe(listed(Id("name of a dish", "words_dishes.dish"))),
        like=Id("style", "styles.style"),
        foods=maybe(listed(TEXT)), beside=maybe(listed(NAMED)),
        eggs=maybe(one_of("boiled", "cracked", "coating", "left", "ribbons", "stirred")),
        soften_min=maybe(number(1, 60, "min")), base=maybe(listed(NAMED)),
        simmer_min=maybe(number(1, 240, "min")), simmering=maybe(listed(NAMED)),
        soft=YES, ends=maybe(one_of("dry", "mashed")),
        **dict.fromkeys(("fried_down", "fried_first", "kept_back", "sliced_raw"), maybe(listed(NAMED))),
        wine_ml_head=maybe(number(0, 300, "ml")),
        **dict.fromkeys(("least_ml_head", "most_ml_head"), maybe(number(0, 1000, "ml"))),
        source=SOURCE,
    ),
    "doses": table(
        "dish+food_id",
        dish=Id("dish", "dishes.dish"), food_id=FOOD, amount=number(0.05, 500),
        unit=one_of("ml", "tbsp", "tsp"), per=one_of("eater", "kg"), source=SOURCE,
    ),
    "tolerant": table(
        "id", "by+value+of_class+cut",
        id=TEXT, **by(**{"class": CLASS}, food=FOOD, group=GROUP), of_class=maybe(CLASS), cut=maybe(CUT),
        wet_min=number(0, 600, "min"), sealed_min=number(0, 600, "min"), pan_min=number(0, 600, "min"),
        dry_min=maybe(number(0, 120, "min")), source=SOURCE,
    ),
    "least_times": table(
        "id", "by+value+of_class",
        id=TEXT, **by(**{"class": CLASS}, food=FOOD, group=GROUP), of_class=maybe(CLASS),
        wet_min=maybe(number(0, 120, "min")), pan_min=maybe(number(0, 120, "min")),
        dry_min=maybe(number(0, 120, "min")), source=SOURCE,
    ),
    "pan_manners": table(
        "id", "by+value",
        id=TEXT, **by(**{"class": CLASS}, food=FOOD, group=GROUP),
        how=one_of("colour", "late", "still"), beside=number(0, 10), source=SOURCE,
    ),
    "delicate": table(
        "id", "by+value",
        id=TEXT, **by(**{"class": CLASS}, food=FOOD, group=GROUP),
        dry=maybe(number(1, 10)), broils=YES, wet=maybe(number(1, 10)), sealed=maybe(number(1, 10)),
        hurries=YES, source=SOURCE,
    ),
    "handling": table(
        "id", "by+value",
        id=TEXT,
        **by(animal=ANIMAL, **{"class": CLASS}, food=FOOD, group=GROUP, part=PART, state=STATE),
        **dict.fromkeys(("ready", "sign", "tray", "brown", "pan", "pot"), maybe(TEXT)),
        turn=YES, steams=YES, carve=maybe(TEXT), source=SOURCE,
    ),
    "pinches": table(
        "id", "by+value",
        id=TEXT, **by(food=FOOD, group=GROUP, part=PART, state=one_of("dried"), word=TEXT),
        amount=maybe(number(0.05, 2000)),
        unit=maybe(Id("unit", "units_kitchen.unit", words=frozenset({"pod"}))),
        per=maybe(one_of("dish", "eater", "kg")), most=maybe(number(0.05, 5000)),
        curry=maybe(number(0.05, 5, "tsp")),
        when=maybe(Word(frozenset(When))),
        how=maybe(one_of("bloom", "bruise", "creamy", "crush", "drizzle", "dust", "fry", "glaze", "let down",
                         "make up", "nut butter", "off the heat", "pierce", "simmer", "slake", "squeeze")),
        out=YES, source=SOURCE,
    ),
    "cupboard": table("id", id=FOOD, source=SOURCE),
    "flavours": table(
        "id", "name",
        id=TEXT, name=TEXT, said=listed(TEXT), aromatics=listed(FOOD), spices=listed(FOOD),
        acids=listed(FOOD), finish=listed(FOOD), suits=listed(Word(GROUP.words | ANIMAL.words)),
        styles=maybe(listed(Id("style", "styles.style"))), source=SOURCE,
    ),
}  # fmt: skip

ANSWERS = {
    "advice": table("id", id=TEXT, rank=rank(), when=listed(TEXT), answer=TEXT, source=maybe(SOURCE)),
    "craft": table("id", id=TEXT, rank=rank(), about=listed(TEXT), text=TEXT, source=SOURCE),
    "topics": table("topic", topic=Form("[a-z ]+", "plain words"), words=listed(TEXT)),
    "cures": table(
        "id", id=TEXT, words=maybe(listed(TEXT)), g_per_kg=maybe(number(0.5, 50, "g/kg")),
        tsp_g=number(3, 8, "g"), says=TEXT, source=SOURCE,
    ),
    "food_kinds": table("of", of=TEXT, kinds=listed(TEXT), text=TEXT, source=SOURCE),
    "dish_cuts": table(
        "dish+of",
        rising("from_mm", "to_mm"),
        dish=Form("[a-z ]+", "plain words"), of=listed(TEXT), words=listed(TEXT),
        way=maybe(one_of("boil", "braise", "grill", "roast", "saute")),
        from_mm=number(1, 100, "mm"), to_mm=number(1, 100, "mm"), cut=TEXT, note=maybe(TEXT),
        source=SOURCE,
    ),
    "cup_weights": table("words", words=listed(TEXT), cup_g=number(20, 400, "g"), source=SOURCE),
    "altitude_baking": table(
        "from_m",
        from_m=number(300, 5000, "m"), powder_tsp=TEXT, sugar_tbsp=TEXT, liquid_tbsp=TEXT, source=SOURCE,
    ),
    "dish_servings": table(
        "id",
        rising("lo", "hi"),
        id=TEXT, words=listed(TEXT), unless=maybe(listed(TEXT)), lo=number(0.1, 1000), hi=number(0.1, 1000),
        unit=one_of("g", "ml", "piece"), of=TEXT, note=maybe(TEXT), source=SOURCE,
    ),
    "dangers": table(
        "id",
        id=TEXT, rank=rank(), when=listed(TEXT), dealt=listed(TEXT),
        advice=maybe(Id("advice", "advice.id")), answer=maybe(TEXT), source=maybe(SOURCE),
    ),
    "eater_foods": table(
        "id",
        id=TEXT, rank=rank(), when=listed(TEXT), dealt=listed(TEXT), answer=TEXT, source=SOURCE,
    ),
    "advice_hazards": table("advice", advice=Id("advice", "advice.id"), dealt=listed(TEXT)),
    "measures": table(
        "id",
        id=TEXT, kind=one_of("length", "mass", "volume"), factor=number(0.1, 50000),
        base=one_of("g", "ml", "mm"), words=listed(TEXT), numbered=YES,
        region=maybe(one_of("au", "uk", "us")), note=maybe(TEXT),
        of=maybe(Id("measure", "measures.id")), source=SOURCE,
    ),
    "oven_words": table(
        "words",
        rising("low_degF", "high_degF"),
        words=listed(TEXT), low_degF=number(200, 550, "degF"), high_degF=number(200, 550, "degF"),
        source=SOURCE,
    ),
    "places_high": table("place", place=TEXT, altitude_m=number(500, 5500, "m"), source=SOURCE),
    "proportions": table("id", id=TEXT, when=listed(TEXT), or_when=maybe(listed(TEXT)), title=TEXT,
                         note=maybe(TEXT), source=SOURCE),
    "proportion_parts": table(
        "proportion_id+rank", "proportion_id+part",
        rising("lo", "hi"),
        proportion_id=Id("proportion", "proportions.id"), rank=rank(1, 9), part=TEXT, words=listed(TEXT),
        lo=number(0, 5000, source=""), hi=number(0.1, 5000, source=""),
        unit=one_of("cup", "g", "l", "ml", "piece", "tbsp", "tsp"), food_id=maybe(FOOD),
    ),
    "ratios": table(
        "food_id",
        rising("water_lo", "water_hi"), rising("minutes_lo", "minutes_hi"),
        food_id=FOOD, water_lo=number(0.5, 10), water_hi=number(0.5, 10),
        minutes_lo=number(1, 300, "min"), minutes_hi=number(1, 300, "min"),
        **{"yield": number(1, 6)},
        for_class=maybe(CLASS), source=SOURCE,
    ),
    "substitutions": table(
        "food_id+rank", "food_id+instead_id",
        food_id=FOOD, rank=rank(1), instead_id=Id("food", "foods.id", words=frozenset({"water"})),
        how=maybe(TEXT), source=SOURCE,
    ),
    "made_without": table(
        "without+dishes",
        without=Form("no [a-z ]+|vegan", "a token such as 'no celery' or 'vegan'"),
        dishes=listed(TEXT), text=TEXT, source=SOURCE,
    ),
    "hidden_sources": table(
        "barred",
        barred=Form("no [a-z ]+", "a token such as 'no celery'"),
        name=TEXT, labels=TEXT, foods=TEXT, source=SOURCE,
    ),
    "swaps_said": table("names", names=listed(TEXT), text=TEXT, source=SOURCE),
    "technique": table("id", id=TEXT, words=TEXT, text=TEXT, source=SOURCE),
    "lands": table("land", land=TEXT, half=one_of("north", "south", "tropics")),
    "season_common": table("food_id", food_id=FOOD, source=SOURCE),
    "season_places": table(
        "id", id=TEXT, names=listed(TEXT), lands=maybe(listed(TEXT)),
        months=Form(r"\d+-\d+|all year", "months"), note=maybe(TEXT), source=SOURCE,
    ),
    "vessel_uses": table(
        "id", id=TEXT, words=listed(TEXT),
        lidded_pot=maybe(number(0, 10)), pressure_cooker=maybe(number(0, 10)),
        saute_pan=maybe(number(0, 10)), sheet_pan=maybe(number(0, 10)),
        lid=one_of("ajar", "off", "on"), takes=TEXT, source=SOURCE,
    ),
    "terms": table("id", id=TEXT, names=listed(TEXT), text=TEXT, source=SOURCE),
}  # fmt: skip

SCHEMAS: dict[str, Schema] = {
    "foods": FOODS, **KITCHEN, **SAFETY_AND_DIETS, **PHYSICS, **PLANNING, **ANSWERS, **WORDS,
}  # fmt: skip

FILES: dict[str, str] = {
    **{name: name for name in SCHEMAS},
    "seasonings": "foods",
    "names_seasonings": "names",
    "portions_seasonings": "portions",
    "sources_physics": "sources",
    "sources_seasonings": "sources",
}
"""Every file there must be, and the table that it is (part of): each kind of food keeps its own beside it."""

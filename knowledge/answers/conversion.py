"""Unit conversions: "350f to c", "how many ml in a cup", "grams in a cup of flour", "gas mark 6".

Factors stand in `measures.csv`; what a cup of a food weighs, in the food's own portions.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Mapping
from dataclasses import replace

from knowledge.answers.advice import row as advised
from knowledge.answers.cite import cited
from knowledge.answers.degrees import TEMPERATURE, both
from knowledge.answers.measures import MASS_G, quantities, regions
from knowledge.answers.measures import density_g_ml as _density_g_ml
from knowledge.answers.model import Answer, Mention, Quantity, Question
from knowledge.answers.words import words_of
from knowledge.foods.store import Store
from knowledge.units import celsius, convert

_SCALE = re.compile(r" (celsius|centigrade|fahrenheit|c|f) ")
_HOW_MANY = re.compile(r" how (?:many|much) $")
_COUNTED = re.compile(r"(?:an?|one|half|two|three|four|\d+)[ \d/.]")
_COUNT_IN = re.compile(
    r" how many (?!grams|g |ounces|oz|cups?|ml|tbsp|tsp|tablespoons?|teaspoons?|people|min|hours|seconds"
    r"|times|days)"
)
# "Grams of salt per litre for pasta" asks how much to put in, not what it weighs.
_DOSE = re.compile(
    r" (?:salt|sugar|vinegar|yeast|pepper|stock|spices?|soda|cornstarch|gelatine?) (?:\w+ ){0,2}?"
    r"(?:per|to (?:an?|the|each|every)|for (?:each|every|an?)) (?:\w+ )?"
    r"(?:lit(?:re|er)|kilo|kg|gallon|quart|cup|pound|lb)s? "
)
# Words that make another thing of a food, with another weight: "buckwheat flour", "puffed rice".
FORMS_AFTER = frozenset({"flour", "flake", "flakes", "chip", "chips", "meal", "powder", "starch", "puffs",
                         "crisps", "bran", "crumbs", "butter", "juice", "puree", "syrup"})  # fmt: skip
FORMS_BEFORE = frozenset({"puffed", "popped", "ground", "powdered", "flaked", "crushed", "desiccated"})
_STATES = frozenset(
    {"uncooked", "raw", "dry", "packed", "chopped", "grated", "sifted", "level", "whole", "plain"}
)
_BASE = {"mass": "gram", "volume": "millilitre"}
_BARE_SCALE = re.compile(r" (\d{2,3})(?: degrees)? (?:in|to|into|as) (celsius|centigrade|fahrenheit|c|f) ")
_FAN = re.compile(
    r" fan (?:oven )?(?:at )?(1\d0|2[0-4]0)(?: ?c)? "
    r"| (1\d0|2[0-4]0) ?c?(?: degrees)?(?: in an?| in the| in)? fan "
)
_ORDINARY = r"(?:conventional|static|ordinary|normal)"
_TO_FAN = re.compile(
    rf" (1\d0|2[0-5]0) ?c?(?: degrees)?(?: in an?| in)? {_ORDINARY} .*fan "
    rf"| {_ORDINARY} (?:oven )?(?:at )?(1\d0|2[0-5]0) ?c? .*fan "
)
_FAN_F = re.compile(r" ([2-4]\d[05]) ?f fan ")
PRESSURES = {"psi": "psi", "kpa": "kPa", "bar": "bar", "bars": "bar", "mbar": "mbar", "atm": "atm"}
_UNIT = "|".join(sorted(PRESSURES, key=len, reverse=True))
_GAUGES = re.compile(
    rf" (\d+(?:\.\d+)?) ?({_UNIT}) (?:(?:pressure|is|how|much|many|equals?) )*(?:in|to|into|as) ({_UNIT}) "
)
_GAS = re.compile(r" gas (?:mark )?(\d{1,2}|1/2|1/4) ")


def conversion(question: Question) -> Answer | None:
    """A conversion of temperatures, measures, or the weight of a measure of a food."""
    return (
        _gas_mark(question)
        or _scale(question)
        or _pressure(question)
        or _measure(question)
        or _piece(question)
    )


def fan_oven(question: Question) -> Answer | None:
    """A fan oven's setting for an ordinary oven's, or the other way: 20 °C apart (common practice)."""
    other = question.says("conventional", "static", "ordinary", "normal", "gas", "convert", "without fan")
    if not other:
        return None
    mark = ""
    if fan := _FAN.search(question.plain):
        ordinary_degC = float(fan[1] or fan[2]) + 20
        number = round((ordinary_degC * 1.8 + 32 - 275) / 25) + 1
        mark = f", gas mark {number}" if question.says("gas") and 1 <= number <= 10 else ""
        text = f"Fan {both(ordinary_degC - 20)} is {both(ordinary_degC)} in an ordinary oven{mark}."
    elif fan := _FAN_F.search(question.plain):
        text = f"Fan {fan[1]} °F is about {int(fan[1]) + 25} °F in an ordinary oven, 25-50 °F more."
        return Answer(known=True, answer=f"{text} (common practice)", sources=("common practice",))
    elif plain := _TO_FAN.search(question.plain):
        degC = float(plain[1] or plain[2])
        text = f"{both(degC)} in an ordinary oven is {both(degC - 20)} with a fan."
    else:
        return None
    return Answer(known=True, answer=f"{text} (20 °C apart, common practice)", sources=("common practice",))


def _gas_mark(question: Question) -> Answer | None:
    found = _GAS.search(question.plain)
    read = TEMPERATURE.search(question.plain)
    if read and question.says(
        "gas mark", "on gas", "in gas", "gas oven", "to gas", "gas number", "which gas"
    ):
        degF = float(read[1]) if read[2][0] == "f" else float(read[1]) * 1.8 + 32
        mark = round((degF - 275) / 25) + 1
        text = f"{float(read[1]):g} °{read[2][0].upper()} is gas mark {mark}, in an ordinary oven."
        return Answer(known=1 <= mark <= 10, answer=text, sources=("common practice",))
    if not found or not found[1].isdigit() or not 1 <= int(found[1]) <= 10:
        return None
    degF = 275 + 25 * (int(found[1]) - 1)
    degC = round(celsius(degF) / 10) * 10
    text = f"Gas mark {found[1]} is {degC} °C / {degF} °F in an ordinary oven, {degC - 20} °C with a fan."
    return Answer(
        known=True, answer=f"{text} (25 °F a mark from 275 °F; common practice)", sources=("common practice",)
    )


def _pressure(question: Question) -> Answer | None:
    """ "15 psi in kPa": the gauge of a cooker in another country's unit."""
    found = _GAUGES.search(question.plain)
    if found is None:
        return None
    value, unit, to = float(found[1]), PRESSURES[found[2]], PRESSURES[found[3]]
    text = f"{value:g} {unit} is {convert(value, unit=unit, to=to):.3g} {to}."
    return Answer(known=True, answer=text, sources=("definition of the units",))


def _scale(question: Question) -> Answer | None:
    read = TEMPERATURE.search(question.plain)
    if question.mentions:
        return None
    if not read:
        return _bare_scale(question)
    fan = " With a fan set it 20 °C / 35 °F lower." if question.says("fan") else ""
    others = {
        m[1][0] for m in _SCALE.finditer(question.plain[: read.start()] + " " + question.plain[read.end() :])
    }
    if not others - {read[2][0]} and not question.says("convert", "conver", "in the other"):
        return None
    value = float(read[1])
    if read[2][0] == "f":
        exact = celsius(value)
        text = f"{value:g} °F is {exact:.0f} °C" + (
            f"; set an oven to {round(exact / 5) * 5:.0f} °C." if value > 250 else "."
        )
    else:
        exact = float(round(value * 1.8 + 32))  # no "-0"
        text = f"{value:g} °C is {exact:.0f} °F" + (
            f"; set an oven to {round(exact / 25) * 25:.0f} °F." if value > 120 else "."
        )
    return Answer(known=True, answer=text + fan, sources=("definition of the Fahrenheit scale",))


def _bare_scale(question: Question) -> Answer | None:
    """ "350 in celsius": the scale that is asked for tells the one that was meant."""
    found = _BARE_SCALE.search(question.plain)
    if not found:
        return None
    value, wanted = float(found[1]), found[2][0]
    if wanted == "f":
        text = f"{value:g} °C is {value * 1.8 + 32:.0f} °F."
    else:
        text = f"{value:g} °F is {celsius(value):.0f} °C."
    return Answer(known=True, answer=text, sources=("definition of the Fahrenheit scale",))


def _measure(question: Question) -> Answer | None:
    said = quantities(question)
    if not said or _DOSE.search(question.plain):
        return None
    rows = {row["id"]: row for row in question.store.table("measures")}
    if (compared := _by_country(question, said, rows)) is not None:
        return compared
    if len(said) >= 3 and said[0].unit == said[1].unit != said[2].unit:  # "is it 3 or 4 tsp a tablespoon"
        return _converted(question, said[2].value, rows[said[2].unit], rows[said[0].unit])
    if (compound := _compound(question, said, rows)) is not None:
        return compound
    named = question.says("what is", "what s", "whats", "how big is", "equal") and not question.foods
    if named and len(said) == 1 and rows[said[0].unit]["kind"] == "volume":
        return _converted(question, said[0].value, rows[said[0].unit], rows["millilitre"])
    if _asks_price(question, said):
        return advised(question.store, "outside-price")
    weigh = question.says("weigh", "how heavy", "how much is", "how much does")
    if len(said) >= 2 and said[0].unit != said[1].unit:
        between = question.plain[said[0].end : said[1].start]
        counted = _COUNTED.match(question.plain[said[1].start : said[1].end]) or between.rstrip().endswith(
            "per"
        )
        bare = not _COUNTED.match(question.plain[said[0].start : said[0].end])
        asked_first = bool(_HOW_MANY.search(question.plain[: said[0].start])) or (bare and bool(counted))
        target, source = (said[0], said[1]) if asked_first else (said[1], said[0])
        return _converted(question, source.value, rows[source.unit], rows[target.unit])
    if weigh or question.says("grams in", "gram in", "weight of", "ounces in"):
        row = rows[said[-1].unit]
        unit_wanted = re.search(r" in $", question.plain[: said[-1].start])  # "a medium onion in grams"
        if row["kind"] == "mass" and unit_wanted and len(said) == 1 and question.foods:
            return None
        if row["kind"] == "mass":
            return _converted(question, said[-1].value, row, rows["gram" if row["id"] != "gram" else "ounce"])
        return _converted(question, said[-1].value, row, rows["gram"]) if question.foods else None
    return None


def _asks_price(question: Question, said: tuple[Quantity, ...]) -> bool:
    """True for "how much is a kilo of goat": a weight of a food, and nothing that it is wanted in."""
    asked = re.search(r" how much (?:is|are|for|does|do|would|will) ", question.plain) is not None
    wanted = question.says("gram", "ounces", "in_", "to_", "weigh", "equal", "feed", "per person", "serve")
    by_weight = len(said) == 1 and said[0].unit in MASS_G and bool(question.foods)
    today = question.says(
        "today", "nowadays", "these days", "at the market", "in the market", "at the moment"
    )
    return asked and bool(question.foods) and (today or (by_weight and not wanted))


def bare_measure(question: Question) -> Answer | None:
    """ "A cup of quinoa", "a knob of butter": a measure of a food and no other word asks what it weighs."""
    said = quantities(question)
    if len(said) != 1 or len(question.foods) != 1:
        return None
    left = f"{question.plain[: said[0].start]} {question.plain[said[-1].end :]}".split()
    named = {word for m in question.mentions for word in m.phrase.split()}
    known = named | words_of(question.store, "filler") | _STATES
    asks_for_it = question.plain[: said[0].start].endswith(" in ")  # "a clove in teaspoons"
    if asks_for_it or set(left) - known:
        return None
    rows = {row["id"]: row for row in question.store.table("measures")}
    row = rows[said[0].unit]
    if row["kind"] == "length" or row["id"] in MASS_G:
        return None
    return _converted(question, said[0].value, row, rows["gram"])


def _by_country(
    question: Question, said: tuple[Quantity, ...], rows: dict[str, Mapping[str, str]]
) -> Answer | None:
    """ "A UK pint against a US one": what the measure is in each country named."""
    countries = regions(question)
    metric = "metric" if question.says("metric") else ""
    own = [rows[q.unit] for q in said if rows[q.unit]["of"]]
    if len(countries) + bool(metric) < 2 or not own:
        return None
    base = own[0]["of"]
    kinds = [row for row in rows.values() if row["of"] == base and (row["region"] in countries)]
    if metric:
        kinds += [row for row in rows.values() if row["of"] == base and row["region"] == "au"]
    told = [f"1 {row['id']} is {_said(float(row['factor']))} ml" for row in kinds]
    named = [f"1 US {base.removeprefix('US ')} is {_said(float(rows[base]['factor']))} ml"]
    told = [line.replace(f"1 {base} is", f"1 US {base.removeprefix('US ')} is") for line in told] or named
    larger = ""
    if len(kinds) > 1:
        ratio = float(kinds[-1]["factor"]) / float(kinds[0]["factor"])
        larger = "; they differ" if abs(ratio - 1) > 0.005 else "; hardly any difference"
    return Answer(
        known=True, answer=f"{', '.join(told)}{larger}.", sources=cited(question.store, own[0]["source"])
    )


def _elsewhere(question: Question, *units: object) -> str:
    """What the measure is in another country, where that differs and no country is said."""
    if regions(question) or question.foods:
        return ""
    for unit in units:
        assert isinstance(unit, dict)
        for row in question.store.table("measures"):
            differs = row["of"] == unit["id"] and row["id"] != unit["id"]
            if differs and abs(float(row["factor"]) / float(unit["factor"]) - 1) > 0.03:
                return f" US measure; 1 {row['id']} is {_said(float(row['factor']))} ml."
    return ""


def _compound(
    question: Question, said: tuple[Quantity, ...], rows: dict[str, Mapping[str, str]]
) -> Answer | None:
    """ "2 lb 4 oz to kg", "1 cup and 2 tbsp in ml": two measures of one kind, counted, side by side."""
    for at, (first, second) in enumerate(itertools.pairwise(said)):
        big, small = rows[first.unit], rows[second.unit]
        together = question.plain[first.end : second.start].strip() in ("", "and", "plus")
        counted = all(_COUNTED.match(question.plain[q.start : q.end]) for q in (first, second))
        if not together or not counted or big["kind"] != small["kind"] or first.unit == second.unit:
            continue
        target = next((q.unit for q in (*said[at + 2 :], *said[:at])), _BASE.get(big["kind"], ""))
        if target not in rows:
            return None
        base = first.value * float(big["factor"]) + second.value * float(small["factor"])
        total = base / float(big["factor"])
        found = _converted(question, total, big, rows[target])
        if found is None:
            return None
        spoken = f"{first.value:g} {_plural(big['id'], first.value)} {second.value:g} "
        spoken += _plural(small["id"], second.value)
        counted_as = f"{total:g} {_plural(big['id'], total)}"
        return replace(found, answer=found.answer.replace(counted_as, spoken, 1))
    return None


def _piece(question: Question) -> Answer | None:
    """What one piece, clove or bunch of a food weighs."""
    counted = _COUNT_IN.search(question.plain)
    asked = counted or question.says(
        "weigh", "how heavy", "weight of", "in grams", "how many grams", "in ounces"
    )
    elsewhere = question.says(
        "instead", "for 2", "for 3", "for 4", "for 5", "for 6", "for 8", "people", "persons"
    )
    if not asked or not question.foods or elsewhere:
        return None
    food = question.foods[-1]
    said = [p for p in food.portions if question.says(p.unit) and p.unit != "cup"]
    in_order = sorted({p.unit: p for p in said}.values(), key=lambda p: question.plain.find(f" {p.unit}"))
    if counted and len(in_order) == 2 and in_order[1].grams > in_order[0].grams:
        small, large = in_order
        text = f"A {large.unit} of {food.name} holds about {round(large.grams / small.grams)} {small.unit}s."
        return Answer(known=True, answer=text, sources=cited(question.store, small.source, large.source))
    sized = [p for p in food.portions if p.unit == "piece" and (not p.size or question.says(p.size))]
    sized.sort(key=lambda portion: not (portion.size and question.says(portion.size)))
    found = next(iter(said or sized), None)
    if found is None:
        return None
    name = f"{found.size} {food.name}".strip() if found.unit == "piece" else f"{found.unit} of {food.name}"
    text = f"One {name}: about {_said(found.grams)} g ({found.grams / 28.3495:.1f} oz)."
    grams = next((q.value * MASS_G[q.unit] for q in quantities(question) if q.unit in MASS_G), None)
    if counted and grams:
        text = f"{grams:.0f} g is about {max(1, round(grams / found.grams))} of them. {text}"
    return Answer(known=True, answer=text, sources=cited(question.store, found.source))


def _converted(
    question: Question, value: float, source: dict[str, str] | object, target: dict[str, str] | object
) -> Answer | None:
    assert isinstance(source, dict)
    assert isinstance(target, dict)
    store = question.store
    base = value * float(source["factor"])
    if source["kind"] == target["kind"]:
        result = base / float(target["factor"])
        text = (
            f"{value:.3g} {_plural(source['id'], value)} is {_said(result)} {_plural(target['id'], result)}."
        )
        text += _elsewhere(question, source, target)
        return Answer(known=True, answer=text, sources=cited(store, source["source"]))
    food = question.foods[0] if question.foods else None
    kinds = {source["kind"], target["kind"]}
    if kinds != {"mass", "volume"}:
        return Answer(
            known=True,
            answer=f"{source['id'].capitalize()} and {target['id']} measure different things.",
            sources=cited(store, source["source"]),
        )
    name = question.mentions[0].phrase if food else "water"
    if food and (formed := _formed(question, question.mentions[0])):
        name, found = formed, None
    else:
        found = _density_g_ml(food, store) if food else (1.0, "A-NIST")
    if found is None:
        return _no_weight(store, name)
    density, where = found
    result = (base * density if source["kind"] == "volume" else base / density) / float(target["factor"])
    measured = f"{value:g} {_plural(source['id'], value)}"
    measured += "" if measured.endswith(f"of {name}") else f" of {name}"
    text = f"{measured} is about {_said(result)} {_plural(target['id'], float(_said(result)))}."
    if not food:
        text += " Other foods weigh more or less: ask with the food."
    return Answer(known=True, answer=text, sources=cited(store, where, "A-NIST"))


def _formed(question: Question, mention: Mention) -> str:
    """The name with a word of form beside it, "" if none: "buckwheat flour" weighs other than buckwheat."""
    words = question.plain.split()
    if mention.food.group == "nut" and FORMS_BEFORE & set(mention.phrase.split()):
        return mention.phrase  # known by that name, weighed as the whole nut
    for at, first, last in ((mention.end, mention.start, mention.end + 1),
                            (mention.start - 1, mention.start - 1, mention.end)):  # fmt: skip
        forms = FORMS_AFTER if at == mention.end else FORMS_BEFORE
        if 0 <= at < len(words) and words[at] in forms:
            return " ".join(words[first:last])
    return ""


def _no_weight(store: Store, name: str) -> Answer:
    """An honest no; for flours the range of those that are known (common practice)."""
    text = f"I hold no weight for a cup of {name}: weigh it, or go by the packet."
    if "flour" in name:
        text += " Most flours weigh 110-160 g a cup (wheat about 125 g); as a guide only."
    return Answer(known="flour" in name, answer=text, sources=cited(store, "CP") if "flour" in name else ())


def _said(value: float) -> str:
    if value >= 100:
        return f"{value:.0f}"
    return f"{value:.1f}".removesuffix(".0") if value >= 3 else f"{value:.2f}".rstrip("0").rstrip(".")


def _plural(unit: str, value: float) -> str:
    if value == 1 or unit.endswith("s"):
        return unit
    return (
        "inches"
        if unit == "inch"
        else "feet"
        if unit == "foot"
        else unit.replace("stick of", "sticks of")
        if "stick" in unit
        else unit + "s"
    )

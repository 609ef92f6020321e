"""What one piece, clove or bunch of a food weighs, and how many of them make a weight."""

from __future__ import annotations

import re

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Mention, Question
from knowledge.answers.reading.heard import hears
from knowledge.answers.reading.measures import MASS_G, density_g_ml, figure, measures, quantities, said_g
from knowledge.answers.reading.numbers import NUMBER, value_of
from knowledge.foods.model import Food, Portion
from knowledge.planner.words import plural
from knowledge.units import convert

_HOW_MANY_OF_THEM = re.compile(
    r" how many (?!grams|g |kgs? |kilo|ounces|oz|lbs? |pounds?|cups?|ml|lit(?:re|er)s?|tbsp|tsp"
    r"|tablespoons?|teaspoons?|people|min|hours|seconds|times|days)"
)


_HOW_MUCH = re.compile(r" how (?:many|much) (?:us )?$")
_SIZED = re.compile(rf" (?:{NUMBER} )?((?:extra )?large|small|medium|jumbo)(?= )")


def sizes_swapped(question: Question) -> Answer | None:
    """ "4 large eggs, how many medium": pieces of one size for as much of another."""
    said = [(match[1], match[2]) for match in _SIZED.finditer(question.plain)]
    counted = [(value_of(number), size) for number, size in said if number]
    others = [size for number, size in said if not number]
    food = next((food for food in question.foods if len(_of_sizes(food)) > 1), None)
    if food is None or len(counted) != 1 or len(set(others) - {counted[0][1]}) != 1:
        return None
    (count, size), other = counted[0], others[0]
    grams = _of_sizes(food)
    if size not in grams or other not in grams:
        return None
    weight, one = count * grams[size].grams, grams[other].grams
    name = food.name if count <= 1 else plural(food.name)
    return Answer(
        known=True,
        answer=f"{count:g} {size} {name}: {weight / one:.1f} {other} ones, so {round(weight / one)}. "
        f"That is {figure(weight)} g; one {other} {food.name} is about {figure(one)} g.",
        sources=cited(question.store, grams[size].source, grams[other].source),
    )


def _of_sizes(food: Food) -> dict[str, Portion]:
    return {portion.size: portion for portion in food.portions if portion.unit == "piece" and portion.size}


def pieces_in_a_measure(question: Question) -> Answer | None:
    """ "How many sticks in a cup of butter", "cloves of garlic in a tablespoon"."""
    volume = next(
        (q for q in quantities(question) if measures(question.store)[q.unit].kind == "volume"), None
    )
    if volume is None or not question.foods or not _HOW_MANY_OF_THEM.search(question.plain):
        return None
    measure = measures(question.store)[volume.unit]
    for food in question.foods:
        density = density_g_ml(food, question.store)
        said = [p for p in food.portions if p.unit != "cup" and question.says(p.unit)]
        if density is None or not said:
            continue
        count = volume.value * measure.size * density[0] / said[0].grams
        name = said[0].unit if count <= 1 else plural(said[0].unit)
        amount = f"{volume.value:g} {measure.counted(volume.value)}"
        text = f"{amount} of {food.name} is about {figure(round(count, 1))} {name}."
        return Answer(known=True, answer=text, sources=cited(question.store, density[1], said[0].source))
    return None


def pieces_fill(question: Question) -> Answer | None:
    """ "How many cups is one onion chopped", "what 2 carrots make diced": pieces as a volume."""
    wanted = next(
        (
            q
            for q in quantities(question)
            if not q.has_number and measures(question.store)[q.unit].kind == "volume"
        ),
        None,
    )
    asked = wanted and _HOW_MUCH.search(question.plain[: wanted.start])
    if wanted is None or not asked or len(question.foods) != 1 or not hears(question, "filled by pieces"):
        return None
    mention = question.mentions[0]
    if mention.food.group == "citrus":  # it is the juice that is measured
        return None
    found = _counted(question.plain, mention) or _one_of(question, mention)
    density = density_g_ml(mention.food, question.store)
    if found is None or density is None:
        return None
    said, count, portion = found
    ml = count * portion.grams / density[0]
    measure = measures(question.store)[wanted.unit]
    size = ml / measure.size
    return Answer(
        known=True,
        answer=f"{said.capitalize()} (about {figure(count * portion.grams)} g), cut up: about"
        f" {figure(round(size, 1))} {measure.counted(2)} ({figure(ml)} ml).",
        sources=cited(question.store, density[1], portion.source),
    )


def _one_of(question: Question, mention: Mention) -> tuple[str, float, Portion] | None:
    """ "An onion", "a large onion": one of them, though no number is said."""
    found = re.search(
        rf" (?:an?|per|each) (?:whole )?(?:((?:extra )?large|small|medium) )?{re.escape(mention.phrase)} ",
        question.plain,
    )
    portion = _portion(mention.food, unit="piece", size=found[1] or "") if found else None
    return (
        (f"1 {' '.join(filter(None, (found[1], mention.phrase)))}", 1.0, portion)
        if found and portion
        else None
    )


def pieces_weigh(question: Question) -> Answer | None:
    """ "3 medium onions in grams", "the weight of 5 cloves of garlic": as many as are said."""
    in_weight = any(q.unit in MASS_G and not q.has_number for q in quantities(question))
    if not in_weight and not hears(question, "weighed"):
        return None
    found = [one for mention in question.mentions if (one := _counted(question.plain, mention)) is not None]
    if not found:
        return None
    said, count, portion = max(found, key=lambda one: one[2].unit != "piece")  # "cloves garlic" are of garlic
    if count == 1:
        return None
    grams = count * portion.grams
    ounces = convert(grams, unit="g", to="oz")
    text = f"{said.capitalize()}: about {figure(grams)} g ({ounces:.1f} oz), {figure(portion.grams)} g each."
    return Answer(known=True, answer=text, sources=cited(question.store, portion.source))


def _counted(plain: str, mention: Mention) -> tuple[str, float, Portion] | None:
    """The pieces that are counted: as they are said, how many, and what one weighs."""
    food, name = mention.food, re.escape(mention.phrase)
    units = "|".join(sorted({p.unit for p in food.portions} - {"cup", "tbsp", "tsp", "piece"})) or "-"
    counted = re.search(
        rf" {NUMBER} (?:((?:extra )?large|small|medium) )?"
        rf"(?:({units})(?:e?s)? (?:of )?{name}|{name} ({units})(?:e?s)?|{name})(?= )",
        plain,
    )
    if counted is None:
        return None
    portion = _portion(food, unit=counted[3] or counted[4] or "piece", size=counted[2] or "")
    return (counted[0].strip(), value_of(counted[1]), portion) if portion else None


def _portion(food: Food, *, unit: str, size: str) -> Portion | None:
    """The portion of that unit and size; where none is said, or it is medium, the ordinary one."""
    of_unit = [portion for portion in food.portions if portion.unit == unit]
    wanted = (size,) if size not in ("", "medium") else (size, "", "medium")
    return next((portion for one in wanted for portion in of_unit if portion.size == one), None)


def piece_weight(question: Question) -> Answer | None:
    """What one piece, clove or bunch of a food weighs."""
    how_many = _HOW_MANY_OF_THEM.search(question.plain) is not None
    asked = how_many or hears(question, "weight of one")
    if not asked or not question.foods or hears(question, "weight for eaters"):
        return None
    food = question.foods[-1]
    said = [p for p in food.portions if question.says(p.unit) and p.unit != "cup"]
    if how_many and (counted := _small_in_large(question, food, said)):
        return counted
    portion = next(iter(said or _pieces(question, food)), None)
    if portion is None:
        return None
    text = _weighs(food, portion)
    grams = said_g(question)
    if how_many and grams:
        text = f"{grams:.0f} g is about {max(1, round(grams / portion.grams))} of them. {text}"
    return Answer(known=True, answer=text, sources=cited(question.store, portion.source))


def _small_in_large(question: Question, food: Food, said: list[Portion]) -> Answer | None:
    """ "How many cloves in a head of garlic": the small portion is said before the large one."""
    by_unit = {portion.unit: portion for portion in said}.values()
    in_order = sorted(by_unit, key=lambda portion: question.plain.find(f" {portion.unit}"))
    if len(in_order) != 2 or in_order[0].grams >= in_order[1].grams:
        return None
    small, large = in_order
    count = round(large.grams / small.grams)
    return Answer(
        known=True,
        answer=f"A {large.unit} of {food.name} holds about {count} {small.unit}s.",
        sources=cited(question.store, small.source, large.source),
    )


def _pieces(question: Question, food: Food) -> list[Portion]:
    """Whole pieces of the food, of the size that is said first."""
    pieces = [p for p in food.portions if p.unit == "piece" and (not p.size or question.says(p.size))]
    return sorted(pieces, key=lambda portion: not portion.size)


def _weighs(food: Food, portion: Portion) -> str:
    """ "One large onion: about 225 g (7.9 oz)."."""
    of_unit = f"{portion.unit} of {food.name}"
    name = f"{portion.size} {food.name}".strip() if portion.unit == "piece" else of_unit
    ounces = convert(portion.grams, unit="g", to="oz")
    return f"One {name}: about {figure(portion.grams)} g ({ounces:.1f} oz)."

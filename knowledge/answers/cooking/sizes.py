"""Which piece of a food a question means: its shape, its size, its weight."""

from __future__ import annotations

import re
from dataclasses import replace

from knowledge.answers.cooking.ways import cooks
from knowledge.answers.model import Question
from knowledge.answers.quantities.amounts import WHOLE_BIRD_G
from knowledge.answers.reading.heard import hears, pattern
from knowledge.answers.reading.measures import MASS_G, quantities
from knowledge.answers.reading.numbers import NUMBER, value_of
from knowledge.foods.model import Cut, DoneKind, Food
from knowledge.foods.pieces import Pieced, piece_of
from knowledge.foods.store import Store
from knowledge.text.normalise import singular
from knowledge.units import KITCHEN

WHOLE_JOINT_G = 700.0  # from here on a piece of meat is a joint
LEAST_MM, MOST_MM = 1.0, 150.0  # no piece is smaller or larger
_MM = {"mm": 1.0, "cm": 10.0, "in": KITCHEN["inch"][1]}  # by the first two letters
_SIZE = re.compile(  # "in" is inches only behind a digit: never "one in the oven"
    rf" {NUMBER} ?[- ]?(mm|cm|inch|inches|(?:(?<=\d)|(?<=\d[ -]))in)(?= )"
)
_AS_IT_IS = ("grain", "leaf")
_MINCED_SHAPES = {"sphere": " balls", "disk": " patties"}


def size_mm(question: Question) -> float | None:
    """The size said in the question."""
    found = _SIZE.search(question.plain)
    return _mm(found) if found else None


def _mm(found: re.Match[str]) -> float | None:
    """The size that was found [mm], None for one that no piece has."""
    size = value_of(found[1]) * _MM[found[2][:2]]
    return size if LEAST_MM <= size <= MOST_MM else None


def weight_g(question: Question) -> float | None:
    """The first weight said in the question, with what stands right beside it ("2 lb 4 oz") [g]."""
    said = [q for q in quantities(question) if q.unit in MASS_G]
    if not said:
        return None
    first, rest = said[0], said[1:2]
    beside = [q for q in rest if question.plain[first.end : q.start].strip() in ("", "and")]
    return sum(q.value * MASS_G[q.unit] for q in (first, *beside))


def as_bought(question: Question, food: Food) -> Food:
    """The whole bird where the weight of one is said of "a chicken", the joint of "a 2 kg ham"."""
    grams = weight_g(question) or 0.0
    by_the_weight = hears(question, "by the weight")
    if (grams >= WHOLE_BIRD_G or by_the_weight) and (bird := question.store.named(f"whole {food.name}")):
        return bird if cooks(question.store, bird) else food
    joints = {row["food_id"]: row["joint_id"] for row in question.store.table("joints")}
    if food.id in joints and (grams >= WHOLE_JOINT_G or hears(question, "a joint")):
        return question.store.food(joints[food.id])
    return food


def whole(store: Store, food: Food) -> Pieced:
    """The piece by the food's usual cut."""
    return piece_of(food, store.cut(food.cuts[0]))


def as_said(question: Question, food: Food) -> Pieced:
    """The piece by the size or the cut said of it ("2 cm potatoes", "wedges"), else the usual one."""
    said_mm = said_of(question, food)
    if said_mm is not None:
        return at_size(question.store, food, said_mm)
    cuts = [question.store.cut(cut_id) for cut_id in food.cuts]
    return piece_of(food, next((cut for cut in cuts if _is_named(question, cut)), cuts[0]))


def said_of(question: Question, food: Food) -> float | None:
    """The size that stands beside a food: "2 cm diced potatoes", "potatoes cut to 2 cm" [mm]."""
    own = re.escape(next((m.phrase for m in question.mentions if m.food.id == food.id), food.name))
    ends = pattern(question.store, rf" {own} (?:{{cut to}} )*$")
    for found in _SIZE.finditer(question.plain):
        before = re.match(rf" (?:(?!and |or |with |plus )\w+ )?{own} ", question.plain[found.end() :])
        after = ends.search(f"{question.plain[: found.start()]} ")
        if (before or after) and (mm := _mm(found)):
            return mm
    return None


def _is_named(question: Question, cut: Cut) -> bool:
    words = {singular(word) for word in re.findall(r"[a-z]+", cut.name)} - {"mm"}
    return not words.isdisjoint(question.words)


def at_size(store: Store, food: Food, size_mm: float) -> Pieced:
    """The piece of a size: cubes of a vegetable, meat in the shape of its cut."""
    usual = whole(store, food)
    meat = store.doneness(food.doneness).kind in (DoneKind.CORE, DoneKind.COLLAGEN)
    if meat or usual.shape in (*_AS_IT_IS, "floret"):
        return replace(usual, size_mm=size_mm)
    return Pieced("brick", size_mm, 1.0, 1.0)


def by_weight(food: Food, grams: float | None, store: Store) -> Pieced:
    """A whole joint or bird as heavy as is said: twice the weight is a quarter thicker."""
    piece = piece_of(food, store.cut("whole"))
    usual_g = piece_weight_g(food)
    if not grams or not usual_g:
        return piece
    return replace(piece, size_mm=piece.size_mm * (grams / usual_g) ** (1.0 / 3.0))


def piece_weight_g(food: Food) -> float | None:
    """What the piece as bought weighs, of no special size [g]."""
    return next((p.grams for p in food.portions if p.unit == "piece" and not p.size), None)


def shown(piece: Pieced, *, minced: bool = False) -> str:
    """The size of a piece in words; what is shaped of mince says its shape."""
    if piece.shape in _AS_IT_IS:
        return "as it is"
    return f"{piece.size_mm:.0f} mm{_MINCED_SHAPES.get(piece.shape, '') if minced else ''}"

"""A food and a cut -> the piece that lies on the board."""

from __future__ import annotations

from dataclasses import dataclass

from knowledge.foods.model import Cut, Food


@dataclass(frozen=True, slots=True)
class Pieced:
    """One piece: `size_mm` is the smallest dimension, the ratios are the others over it, at least 1."""

    shape: str
    size_mm: float
    ratio_1: float
    ratio_2: float


def piece_of(food: Food, cut: Cut) -> Pieced:
    """The piece that a cut makes of a food as bought.

    A cut of fixed size is what it says, but never larger than the food: a 40 mm chunk
    of a 22 mm carrot is 22 mm across. "Whole", "halved" and "quartered" divide the
    piece as bought: each division is through the longest dimension but for long foods
    (three times as long as wide), which are split along it.
    """
    shape, size, b1, b2 = (
        food.whole_shape or "brick",
        food.whole_mm or 25.0,
        food.whole_ratio_1,
        food.whole_ratio_2,
    )
    if cut.parts == 1:
        return Pieced(shape, size, b1, b2)
    if cut.parts > 1:
        return _divided(shape, size, b1, b2, cut.parts)
    if cut.size_mm <= size or shape in ("leaf", "grain"):
        return Pieced(cut.shape, cut.size_mm, cut.ratio_1, cut.ratio_2)
    scale = cut.size_mm / size  # thinner than the cut: the other dimensions keep their millimetres
    return Pieced(cut.shape, size, cut.ratio_1 * scale, cut.ratio_2 * scale)


def _divided(shape: str, size: float, b1: float, b2: float, parts: int) -> Pieced:
    sides = sorted(_sides(shape, size, b1, b2))
    while parts > 1:
        longest = 1 if sides[2] >= 3 * sides[1] else 2  # split a long food along, a compact one across
        sides[longest] /= 2
        sides.sort()
        parts //= 2
    return Pieced("brick", sides[0], sides[1] / sides[0], sides[2] / sides[0])


def _sides(shape: str, size: float, b1: float, b2: float) -> tuple[float, float, float]:
    """Three dimensions of a shape: a rod's ratio is its length, a disk's its diameter."""
    match shape:
        case "sphere" | "floret" | "bird":
            return size, size, size
        case "rod" | "cylinder":
            return size, size, size * max(b1, b2)
        case "disk":
            return size, size * b1, size * b1
        case _:
            return size, size * b1, size * b2

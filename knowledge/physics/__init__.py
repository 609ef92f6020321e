"""The cooking model: conduction into pieces, softening and kill kinetics, media, safety.

    piece(food, ...)      a food in a cut           -> Piece
    media.oven(...) ...   a way of heating          -> Medium
    goal(food, ...)       when it is done           -> Goal
    cook(cases)           Case(piece, phases, goal) -> Outcome, all in one batch
    history, state_at     one case followed through; stopped, to go on from

`MODEL.md` beside this file states the equations, the assumptions and the validation.
"""

from knowledge.physics.doneness import goal
from knowledge.physics.model import (
    Case,
    Goal,
    History,
    Medium,
    Outcome,
    Phase,
    Piece,
    PieceState,
    Shape,
    Texture,
)
from knowledge.physics.pieces import piece
from knowledge.physics.simulate import cook, history, state_at

__all__ = [
    "Case",
    "Goal",
    "History",
    "Medium",
    "Outcome",
    "Phase",
    "Piece",
    "PieceState",
    "Shape",
    "Texture",
    "cook",
    "goal",
    "history",
    "piece",
    "state_at",
]

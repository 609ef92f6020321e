"""A thermometer reading in the middle of a cook -> the case, corrected.

What a plan knows least is how thick the piece really is and how well it is heated; both act
like a thickness. So the reading sets the thickness, within reason, and everything later is
computed with that.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from knowledge.physics.limits import within
from knowledge.physics.model import Case, Piece
from knowledge.physics.simulate import history

LEAST, MOST = 0.6, 1.7
"""A reading that asks for more than this is the thermometer's or the place of its tip."""
_ROUNDS = 18


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitted:
    """A case that passes through a reading."""

    case: Case
    thickness_factor: float  # of the piece as it behaves over the one assumed
    predicted_degC: float  # what the middle should have been
    believable: bool  # False: the reading is out of reach, the factor stands at its limit


def thicker(piece: Piece, factor: float) -> Piece:
    """The same piece, scaled."""
    n, half, area = piece.brisk
    return replace(
        piece,
        half_size_m=piece.half_size_m * factor,
        brisk=(n, half * factor, area),
        mass_kg=piece.mass_kg * factor**3,
    )


def fit_to_probe(case: Case, *, time_s: float, core_degC: float) -> Fitted:
    """Fit a case to a core temperature read `time_s` after its first phase began.

    The middle of a thicker piece is colder at any time on the way up, so that halving finds the
    factor. Raises OutOfRange for a reading that is none (below -20 or above 130 °C).
    """
    within("time_s", time_s)
    within("probe_degC", core_degC)

    def core(factor: float) -> float:
        scaled = replace(case, piece=thicker(case.piece, factor))
        return history(scaled, [time_s]).core_degC[0]

    predicted = core(1.0)
    low, high = LEAST, MOST
    if core_degC >= core(low):
        factor = low
    elif core_degC <= core(high):
        factor = high
    else:
        for _ in range(_ROUNDS):
            factor = (low * high) ** 0.5
            low, high = (factor, high) if core(factor) > core_degC else (low, factor)
        factor = (low * high) ** 0.5
    return Fitted(
        case=replace(case, piece=thicker(case.piece, factor)),
        thickness_factor=factor,
        predicted_degC=predicted,
        believable=LEAST < factor < MOST or abs(predicted - core_degC) < 2.0,
    )

"""Sauces, cream and glazes: what goes in during the last minutes of heat, and how."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from knowledge.planner import words
from knowledge.planner.draft import AFTER, SEARED, SOFTENED, Draft
from knowledge.planner.gathering.dinner import Seasoning
from knowledge.planner.model import Do, Step
from knowledge.planner.search.frying import STILL
from knowledge.planner.search.stages import add_at_s
from knowledge.planner.writing.handling import BOIL_UP
from knowledge.planner.writing.phrases import Telling, capital
from knowledge.planner.writing.telling import step

LATE_S, BRUSHED_S = 180.0, 600.0  # before the end: what is stirred in, what is brushed on in the oven
SOAKED_UP_S = 60.0  # after the last food went in
ONE_OPENING_S = 150.0  # what comes so near goes in while the oven is open
THICK = ("slake", "dust")
FLUID = frozenset({"liquid", "dairy", "acid", "salty"})  # parts that pour
Late = Sequence[tuple[Seasoning, str, str]]


def late(tell: Telling) -> Iterator[Step]:
    """One step for all that goes in late, in time to get hot; on a tray it is brushed on."""
    what, draft = tell.seasoned.late, tell.draft
    if not what:
        return
    when = draft.stages
    if draft.method.kind == "dry":
        last = max(add_at_s(p, when) for p in draft.placed)  # nothing is brushed that is not in yet
        at = max(when.main_end_s - BRUSHED_S, when.main_start_s + 60.0, min(last, when.main_end_s - 60.0))
        open_then = [t for p in draft.placed if abs((t := add_at_s(p, when)) - at) <= ONE_OPENING_S]
        at = max((t for t in open_then if t > when.main_start_s), default=at)
        togo = words.duration(when.after_end_s - at)
        is_glaze = all(how == "glaze" for _, _, how in what)
        thick = len(what) > 1 and any(s.food.part not in FLUID or how == "let down" for s, _, how in what)
        put = (
            f"Brush with {_said(what)}"
            if is_glaze
            else f"Stir {_said(what)} smooth with 2 tbsp water and spoon it over"
            if thick
            else f"Spoon {_said(what)} over"
        )
        yield step(Do.ADD, at, f"{put}, back in: {togo} to go.", hands_s=60)
        return
    at = _moment_s(draft)
    shut = draft.method.kind == "sealed" and not any(p.way.lane_is(AFTER) for p in draft.placed)
    text = " ".join(_sentences(what, tell, words.duration(min(120.0, when.after_end_s - at))))
    yield step(Do.ADD, at, f"Lid off, low heat. {text}" if shut else text, hands_s=60)


def _moment_s(draft: Draft) -> float:
    """Some minutes before the end, and after the last food (leaves that wilt) where that leaves a moment."""
    when = draft.stages
    opened = when.opened_s if draft.method.kind == "sealed" else when.main_start_s
    last = max((add_at_s(p, when) for p in draft.placed if p.way.lead != SOFTENED), default=opened)
    after_all = min(last + SOAKED_UP_S, when.after_end_s - 60.0)
    return min(max(when.after_end_s - LATE_S, opened, after_all), when.after_end_s)


def _sentences(what: Late, tell: Telling, togo: str) -> Iterator[str]:
    """What boils first, then what thickens, what only gets hot last."""
    nuts = [w for w in what if w[2] == "nut butter"]
    thick = [w for w in what if w[2] in THICK]
    miso = [w for w in what if w[2] == "let down"]
    rest = [w for w in what if w not in (*nuts, *thick, *miso)]
    dairy = [w for w in rest if "milk" in w[0].food.allergens or w[2] == "creamy"]
    sharp = [w for w in rest if w not in dairy]
    still = lies_on_top(tell.draft)
    if sharp:
        how = "let it boil up once" if any(_boils(s, tell) for s, _, _ in sharp) else "let it bubble"
        yield f"{_put(sharp, still)}; {how}, {togo}."
    if nuts:
        yield f"Loosen {_said(nuts)} with a ladle of the hot liquid and stir in; low heat, it catches."
    if thick:
        moved = "shake the pan" if still else "stir"
        yield capital(
            f"stir {_said(thick)} into 2 tbsp cold water, pour in and {moved} until it thickens, 1 min."
        )
    if dairy:
        yield f"{_put(dairy, still)}; keep it hot, not boiling, {togo}."
    if miso:
        yield f"Stir {_said(miso)} smooth with 2 tbsp warm water and pour it over."


def _put(what: Late, still: bool) -> str:
    """Stirred in, or let in round the edge where stirring would break what lies on top."""
    if not still:
        return f"Stir in {_said(what)}"
    if any(s.food.part not in FLUID for s, _, _ in what):
        return f"Loosen {_said(what)} with a little of the liquid, pour it round the edge and shake the pan"
    return f"Pour {_said(what)} round the edge and shake the pan"


def lies_on_top(draft: Draft) -> bool:
    """Whether something in the vessel is left alone: greens that steam, fish and tofu laid back."""
    laid = [p for p in draft.placed if p.way.dish.kind != "egg" or p.way.top]  # beaten, they are folded in
    return any(p.way.top or (p.way.manner == STILL and p.way.lead == SEARED) for p in laid)


def _said(what: Late) -> str:
    return words.listed([said for _, said, _ in what])


def _boils(s: Seasoning, tell: Telling) -> bool:
    rows = {(row["by"], row["value"]): row for row in tell.store.table("handling")}
    return rows.get(("food", s.food.id), {}).get("pot") == BOIL_UP

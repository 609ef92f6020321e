"""`panwright times --explain`: one piece in words -> the whole chain behind its time."""

from __future__ import annotations

import re
import sys

from knowledge.errors import KnowledgeError
from knowledge.foods.store import Store
from knowledge.physics import History, Outcome, Texture, cook, history
from knowledge.physics.chart import METHODS, Read, Row, read_row
from knowledge.physics.limits import within
from knowledge.physics.march import nominal_h
from knowledge.physics.model import Heat
from knowledge.physics.water import ambient_Pa, boiling_degC
from knowledge.sheets import without_sheet

KPA_IN_PSI = 6.894757  # 1 lbf over 1 in2

_WORDS = {
    "roasted": "roast",
    "bake": "roast",
    "baked": "roast",
    "oven": "roast",
    "grill": "broil",
    "grilled": "broil",
    "broiled": "broil",
    "fry": "saute",
    "fried": "saute",
    "pan": "saute",
    "sauteed": "saute",
    "boiled": "boil",
    "simmered": "simmer",
    "steamed": "steam",
    "braised": "braise",
    "stewed": "braise",
    "covered": "bake_covered",
    "pressure": "pressure_high",
    "sealed": "pressure_high",
    "resting": "rest",
    "rested": "rest",
    **{m: m for m in METHODS},
}
_HEAT = {
    Heat.DRY: "heat of air and radiation",
    Heat.WET: "liquid or steam",
    Heat.PAN: "metal, and what is around,",
    Heat.AIR: "still air",
}
_SHAPES = {
    "dice": "cuboid",
    "cube": "cuboid",
    "cubes": "cuboid",
    "chunk": "cuboid",
    "chunks": "cuboid",
    "wedge": "cuboid",
    "wedges": "cuboid",
    "stick": "cuboid",
    "sticks": "cuboid",
    "slice": "slab",
    "slices": "slab",
    "coins": "slab",
    "fillet": "slab",
    "steak": "slab",
    "chop": "slab",
    "florets": "whole",
    "leaves": "leaf",
    "link": "cylinder",
    "links": "cylinder",
    "spears": "cylinder",
}
_LIDDED = re.compile(
    r"\b(?:covered|lidded) (?:pan|skillet)\b|\b(?:pan|skillet),? (?:covered|with (?:a |the )?lid)\b"
)
_STATES = ("frozen", "fridge", "room", "dried", "soaked", "canned")


def parse(text: str) -> Row:
    """ "carrot 20 mm dice, roast 220 C" -> a row; the temperature of the food is "to 63 C"."""
    low = text.lower().replace("°", " ")
    words = re.findall(r"[a-z_]+", low)
    lidded = bool(_LIDDED.search(low))
    method = (
        "pan_covered"
        if lidded
        else next((_WORDS[w] for w in re.findall(r"[a-z_]+", without_sheet(low)) if w in _WORDS), "roast")
    )
    core = re.search(r"\bto\s+(\d+(?:\.\d+)?)\s*(c|f)?\b", low)
    rest = low if core is None else low[: core.start()] + low[core.end() :]
    medium = re.search(r"(-?\d+(?:\.\d+)?)\s*(c|f)\b", rest)
    altitude = re.search(r"(-?\d+(?:\.\d+)?)\s*m\b(?!m)", rest)
    size = re.search(r"(-?\d+(?:\.\d+)?)\s*mm\b", rest)
    shape = next((_SHAPES[w] for w in words if w in _SHAPES), "")
    textures = {Texture.CRISP_TENDER: ("crisp",), Texture.SOFT: ("soft",)}
    texture = next((t for t, said in textures.items() if any(w in words for w in said)), Texture.TENDER)
    head = re.split(r",|\d", re.sub(r"^[\s\d.,-]+(?:mm|cm|kg|g)?\s+", "", low))[0]
    skip = {*_WORDS, *_STATES, "crisp", "soft", "tender", "dice", "cubes", "chunks"}
    food = " ".join(w for w in head.split() if w not in skip) or head.strip()
    return Row(
        food=food,
        cut_text=text,
        shape=shape,
        size_mm=float(size[1]) if size else None,
        start_state=next((s for s in _STATES if s in words), ""),
        method=method,
        medium_degC=_sealed_degC(rest)
        if method.startswith("pressure") and medium is None
        else _celsius(medium),
        endpoint="core_temp" if core else texture.value,
        core_degC=_celsius(core),
        altitude_m=float(altitude[1]) if altitude else 0.0,
    )


def _celsius(found: re.Match[str] | None) -> float | None:
    if found is None:
        return None
    value = float(found[1])
    return (value - 32.0) / 1.8 if found[2] == "f" else value


def _sealed_degC(text: str) -> float | None:
    """How hot a cooker is at the gauge pressure that a text names at sea level. Raises OutOfRange."""
    found = re.search(r"(-?\d+(?:\.\d+)?)\s*(kpa|psi)\b", text)
    if found is None:
        return None
    gauge = float(found[1]) * (KPA_IN_PSI if found[2] == "psi" else 1.0)
    return boiling_degC(ambient_Pa(0.0) + 1000.0 * within("gauge_kPa", gauge))


def explain(text: str, store: Store, *, plot: str | None = None) -> int:
    """Print the chain from piece to time; draw it too when asked. Returns the exit status."""
    try:
        read = read_row(parse(text), store)
        outcome = cook([read.case], spread=read.spread)[0]
    except KnowledgeError as error:
        print(f"panwright times: {error}", file=sys.stderr)
        return 2
    end = max(1.2 * (outcome.done_s or 3600.0), outcome.hi_s or 0.0)
    followed = history(read.case, [end * i / 72.0 for i in range(0, 73)])
    print("\n".join(lines(read, outcome, followed)))
    if plot:
        from bot.commands.times_plot import draw

        try:
            draw(read, outcome, followed, plot)
        except (OSError, ValueError) as error:
            print(f"panwright times: {plot} cannot be written: {error}", file=sys.stderr)
            return 2
    return 0


def lines(read: Read, outcome: Outcome, followed: History) -> list[str]:
    """The explanation, line by line."""
    p, goal, medium = read.case.piece, read.case.goal, read.case.phases[-1].medium
    alpha = p.k_W_mK / (p.density_kg_m3 * p.cp_J_kgK)
    h = nominal_h(medium)
    out = [
        f"{read.food.name}: {read.shape}, {read.size_mm:g} mm; class {read.doneness.id}"
        + (f", dose factor {read.food.dose_factor:g}" if goal.dose_min else ""),
        f"piece    heats like a body of exponent {p.exponent:.2f} (0 slab, 1 rod, 2 ball), half size "
        f"{1000 * p.half_size_m:.1f} mm, surface x {p.area_factor:.2f}",
        f"stuff    k {p.k_W_mK:.3f} W/mK, {p.density_kg_m3:.0f} kg/m3, cp {p.cp_J_kgK:.0f} J/kgK, "
        f"diffusivity {alpha:.3g} m2/s, water {100 * p.water_frac:.0f} %, starts at {p.start_degC:.0f} °C",
        f"medium   {read.method}, {_HEAT[medium.heat]} at {medium.ambient_degC:.0f} °C"
        + (f" (reached in {medium.come_up_s:.0f} s)" if medium.come_up_s else "")
        + f", h about {h:.0f} W/m2K, Biot {h * p.half_size_m / p.k_W_mK:.2f}",
    ]
    if medium.contact_frac and medium.heat is Heat.DRY:
        out.append(
            f"sheet    {read.sheet}; {100 * medium.contact_frac:.0f} % of the surface lies on it, and gets "
            f"{medium.pan_h_W_m2K:.0f} W/m2K from the oven through it"
        )
    if goal.dose_min is not None:
        out.append(
            f"done at  a dose of {goal.dose_min:.1f} min at 100 °C, z {goal.z_below_K:g} K below and "
            f"{goal.z_above_K:g} K above"
        )
    elif goal.target_degC is not None:
        out.append(
            f"done at  {goal.target_degC:.1f} °C in the middle after a rest, which adds "
            f"{100 * goal.kappa:.0f} % of mean less middle"
        )
    if goal.safe_degC is not None:
        out.append(f"safe at  {goal.safe_degC:.1f} °C in the middle (USDA FSIS)")
    if goal.browned_min is not None:
        out.append(f"brown at {goal.browned_min:g} min at 150 °C of the outside, which done waits for")
    out += ["", "  min   middle    mean  surface   dose  log kill  brown"]
    for i in range(0, len(followed.times_s), 6):
        out.append(
            f"{followed.times_s[i] / 60:5.1f} {followed.core_degC[i]:8.1f} {followed.mean_degC[i]:7.1f} "
            f"{followed.surface_degC[i]:8.1f} {followed.dose_min[i]:6.1f} "
            f"{min(followed.lethality_log[i], 99):9.1f} {min(followed.browned_min[i], 999):6.1f}"
        )
    out.append("")
    if outcome.done_s is None or outcome.lo_s is None or outcome.hi_s is None:
        out.append(f"never done: {outcome.note}")
        return out
    over = f"; too much from {outcome.over_s / 60:.0f} min" if outcome.over_s else ""
    out.append(
        f"done after {outcome.done_s / 60:.1f} min ({outcome.lo_s / 60:.0f} to {outcome.hi_s / 60:.0f})"
        f"{over}; decided by: {outcome.decided_by}"
    )
    if outcome.browned_s is not None and goal.browned_min is None:
        out.append(f"golden brown after {outcome.browned_s / 60:.0f} min")
    if read.not_counted_s:
        out.append(
            f"of these, charts do not count {read.not_counted_s / 60:.0f} min of coming up to pressure"
        )
    if read.note:
        out.append(f"note: {read.note}")
    return out

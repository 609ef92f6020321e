"""The vessel's own heat: what a load does to it, and how long it takes to come up.

One lumped balance: metal, liquid and food share the burner or the oven; what goes in cold
takes heat from the rest before the burner makes it good. The planner turns the results into
`start_degC` and `come_up_s` of a medium.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from knowledge.errors import NeverReached
from knowledge.physics.limits import within
from knowledge.physics.tables import constant
from knowledge.physics.water import ambient_Pa, boiling_degC

WATER_CP = 4180.0
RASHER_MM, RASHER = 6.0, 0.5  # a slice of bacon on a sheet; common practice, no source
FLAT_SIDES = 0.4  # what the sides are to a slab of 1 x 3 x 4, over what they are to a cube: geometry
FREE, HEAP = 0.45, 1.35  # of the floor: pieces stand free; pieces lie on each other


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """Something that has to be heated: mass, heat capacity, and the share of it that follows at once.

    Liquid and metal follow at once (1); of a piece of food only a skin does in the first
    minutes, the rest is the solver's business.
    """

    mass_kg: float
    cp_J_kgK: float
    at_degC: float
    share: float = 1.0

    @property
    def capacity_J_K(self) -> float:
        """Heat for one degree [J/K]."""
        return self.mass_kg * self.cp_J_kgK * self.share


def hob_power_W() -> float:
    """Heat that an ordinary large hob ring gives to a pot at full power [W]."""
    return constant("hob_power_W") * constant("hob_efficiency")


def mixed_degC(loads: Sequence[Load]) -> float:
    """Temperature that loads come to when put together.

    Equation: T = sum(C T) / sum(C). Example: 1 kg water at 100 and 1 kg at 20 -> 60 °C
    """
    total = sum(load.capacity_J_K for load in loads)
    return sum(load.capacity_J_K * load.at_degC for load in loads) / total


def come_up_s(
    loads: Sequence[Load], *, to_degC: float, power_W: float, loss_W_K: float | None = None
) -> float:
    """Time for loads to come to a temperature under constant power, with losses to the kitchen.

    Equation:
        C dT/dt = P - U (T - 20)      t = (C/U) ln[(P - U (T0 - 20)) / (P - U (T1 - 20))]
    Args: power_W, what reaches the pot; loss_W_K, U, from `media.csv` when not given.
    Raises: NeverReached when the losses at `to_degC` eat the power; OutOfRange.
    Example: 2 kg of water in a 1 kg steel pot, 20 to 100 °C, 1500 W without loss -> 472 s
    """
    from math import log

    within("power_W", power_W)
    U = constant("pot_loss_W_K") if loss_W_K is None else loss_W_K
    start = mixed_degC(loads)
    if start >= to_degC:
        return 0.0
    C = sum(load.capacity_J_K for load in loads)
    if U <= 0.0:
        return C * (to_degC - start) / power_W
    left = power_W - U * (to_degC - 20.0)
    if left <= 0.0:
        raise NeverReached("temperature of the pot", to_degC, 20.0 + power_W / U, "°C")
    return C / U * log((power_W - U * (start - 20.0)) / left)


def pot_loads(
    *, pot_kg: float, pot_cp_J_kgK: float, water_kg: float, at_degC: float, foods: Sequence[Load] = ()
) -> tuple[Load, ...]:
    """The metal, its liquid, and foods of which only the outside takes part."""
    share = constant("food_prompt_share")
    return (
        Load(mass_kg=pot_kg, cp_J_kgK=pot_cp_J_kgK, at_degC=at_degC),
        Load(mass_kg=water_kg, cp_J_kgK=WATER_CP, at_degC=at_degC),
        *(Load(mass_kg=f.mass_kg, cp_J_kgK=f.cp_J_kgK, at_degC=f.at_degC, share=share) for f in foods),
    )


def after_adding(
    *, pot_kg: float, pot_cp_J_kgK: float, water_kg: float, liquid_degC: float, foods: Sequence[Load],
    altitude_m: float = 0.0, power_W: float | None = None,
) -> tuple[float, float]:  # fmt: skip
    """What cold food does to a simmering pot: the temperature it falls to and the time to come back.

    Returns (start_degC, come_up_s) for `media.simmering` or `media.boiling`.
    Example: a kilo of cold potatoes in 2 l of boiling stock: down to 84 °C, back in 2 min
    """
    loads = pot_loads(
        pot_kg=pot_kg, pot_cp_J_kgK=pot_cp_J_kgK, water_kg=water_kg, at_degC=liquid_degC, foods=foods
    )
    fallen = mixed_degC(loads)
    top = boiling_degC(ambient_Pa(altitude_m)) - constant("boil_drop_K")
    power = hob_power_W() if power_W is None else power_W
    return fallen, come_up_s(loads, to_degC=min(max(liquid_degC, fallen), top), power_W=power)


def pressure_come_up_s(
    *, pot_kg: float, pot_cp_J_kgK: float, water_kg: float, foods: Sequence[Load], gauge_kPa: float,
    altitude_m: float = 0.0, start_degC: float = 20.0, power_W: float | None = None,
) -> float:  # fmt: skip
    """Time from locking the lid until the pressure stands.

    Example: 3 kg cooker, 0.5 l of water and 1.2 kg of food from the fridge, 80 kPa -> about 7.5 min
    """
    inside = boiling_degC(ambient_Pa(altitude_m) + 1000.0 * within("gauge_kPa", gauge_kPa))
    loads = pot_loads(
        pot_kg=pot_kg, pot_cp_J_kgK=pot_cp_J_kgK, water_kg=water_kg, at_degC=start_degC, foods=foods
    )
    power = hob_power_W() if power_W is None else power_W
    return come_up_s(loads, to_degC=inside, power_W=power)


def release_s(*, gauge_kPa: float, quick: bool, altitude_m: float = 0.0, contents_kg: float = 2.0) -> float:
    """Time until a cooker may be opened: minutes by itself, or under a minute by the valve.

    The slow release scales with what is in it and with how far it stands above boiling.
    """
    ambient = ambient_Pa(altitude_m)
    above = boiling_degC(ambient + 1000.0 * within("gauge_kPa", gauge_kPa)) - boiling_degC(ambient)
    slow: float = constant("pressure_release_s") * (contents_kg / 2.0) ** 0.5 * above / 17.1
    return 60.0 if quick else max(slow, 60.0)


def oven_after_loading(
    *, setting_degC: float, tray_kg: float, tray_cp_J_kgK: float, foods: Sequence[Load]
) -> tuple[float, float]:
    """How far a loaded sheet pan draws the oven down, and how long it takes to recover.

    The oven's own metal and air share their heat with the tray and the foods' outside; the
    heater makes it good. Returns (start_degC, come_up_s) for `media.oven`.
    Example: 1.5 kg of cold vegetables on a steel tray at 220 °C -> 154 °C, back in 4.5 min
    """
    within("oven_degC", setting_degC)
    share = constant("food_prompt_share")
    door = constant("oven_come_up_frac")
    walls = constant("oven_capacity_J_K")
    cold = [Load(mass_kg=tray_kg, cp_J_kgK=tray_cp_J_kgK, at_degC=20.0)]
    cold += [Load(mass_kg=f.mass_kg, cp_J_kgK=f.cp_J_kgK, at_degC=f.at_degC, share=share) for f in foods]
    loads = [Load(mass_kg=1.0, cp_J_kgK=walls, at_degC=setting_degC), *cold]
    start = min(mixed_degC(loads), door * setting_degC)
    needed = sum(load.capacity_J_K for load in loads) * max(setting_degC - mixed_degC(loads), 0.0)
    recovery = max(needed / constant("oven_power_W"), constant("oven_come_up_s"))
    return start, min(recovery, 3600.0)


def crowding(*, area_m2: float, pieces_area_m2: float, flat: bool = False) -> float:
    """How crowded a pan is, for `media.oven`: 0 while a finger fits between the pieces, 1 for a heap.

    `pieces_area_m2` is the floor that the pieces take up packed side by side. A kilo of chunks
    stands free on a half sheet, a kilo and a half touches, three are a heap. `flat`
    pieces, fillets and chops, lose only their sides to their neighbours. Common practice, no source.
    """
    covered = pieces_area_m2 / max(area_m2, 1e-6)
    share = FLAT_SIDES if flat else 1.0
    return share * min(max((covered - FREE) / (HEAP - FREE), 0.0), 1.0)


def felt(crowded: float, *, size_mm: float, flat: bool) -> float:
    """Crowding as one piece feels it: a flat slice thinner than `RASHER_MM` lies in its fat, edge to edge."""
    return max(crowded, RASHER) if flat and size_mm < RASHER_MM else crowded

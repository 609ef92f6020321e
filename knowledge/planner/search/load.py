"""What a whole dinner does to its vessel: how it fills the floor, draws the heat down, and is brought up.

Reckoned before the layout is known, from all that is cooked in the vessel, in steps coarse
enough that like dinners share their solved cases. The physics is `knowledge.physics.vessels`;
`followed` reckons the finished plan again from what its steps really put in.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from knowledge.foods.model import Vessel, VesselSize
from knowledge.foods.pieces import piece_of
from knowledge.foods.store import Store
from knowledge.physics import vessels
from knowledge.physics.water import ambient_Pa, boiling_degC
from knowledge.planner.gathering.dinner import Dish
from knowledge.planner.kitchens import sizes_here
from knowledge.planner.model import Kitchen
from knowledge.planner.search.floor import SHEET_FULL, layer_m2

KG_STEP, COVER_STEP, COME_UP_STEP_S = 0.5, 0.2, 60.0
FRIDGE_DEGC = 6.0  # a home fridge, not the coldest place in it
FOOD_CP = 3600.0  # moist food [J/kgK]
LIQUID_KG, LIQUID_KG_KG = 0.15, 0.35  # in a wet dish of so much food: half way up, see `room`
TAP_DEGC, SIMMER_K = 20.0, 4.0  # cold water; below boiling, where it is called a simmer
LITRES_KG = 2.2  # of a pot for each kilo in it, liquid and headroom counted


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """All that is cooked, as the vessel feels it."""

    size: VesselSize
    kg: float
    cover: float  # floor that it takes in one layer, over the floor there is
    stirred: float  # the same without meat and eggs, which are fried apart

    @property
    def liquid_kg(self) -> float:
        """About as much liquid as a braise of it has."""
        return LIQUID_KG + LIQUID_KG_KG * self.kg


def load_of(dishes: Sequence[Dish], size: VesselSize, store: Store, *, single_layer: bool = False) -> Load:
    """The load that these dishes are, in their usual cuts, to a vessel of this size."""
    covers = [(dish, _covers_m2(dish, store) / size.area_m2) for dish in dishes]
    kg = sum(dish.grams for dish in dishes) / 1000.0
    if single_layer:  # what has no room on it stays off it
        taken = min(SHEET_FULL / max(sum(cover for _, cover in covers), 1e-6), 1.0)
        covers, kg = [(dish, taken * cover) for dish, cover in covers], taken * kg
    return Load(
        size=size,
        kg=KG_STEP * max(1, round(kg / KG_STEP)),
        cover=_in_steps(sum(cover for _, cover in covers)),
        stirred=_in_steps(
            sum(cover for dish, cover in covers if not (dish.part == "protein" and dish.food.animal))
        ),
    )


def _covers_m2(dish: Dish, store: Store) -> float:
    usual = (*dish.food.cuts, "whole")[0]
    piece = piece_of(dish.food, store.cut(usual))
    return layer_m2(dish.food, dish.grams, shape=piece.shape, size_mm=piece.size_mm, cut_id=usual)


def _in_steps(cover: float) -> float:
    return round(COVER_STEP * round(cover / COVER_STEP), 2)


def load_here(dishes: Sequence[Dish], kitchen: Kitchen, vessel: Vessel, store: Store) -> Load:
    """The load in the first size of this kitchen that looks large enough, else in its largest."""
    loads = [
        load_of(dishes, size, store, single_layer=vessel.single_layer) for size in sizes_here(kitchen, vessel)
    ]
    roomy = (
        load for load in loads if vessel.single_layer or (load.size.volume_l or 0.0) >= LITRES_KG * load.kg
    )
    return next(roomy, loads[-1])


def crowding(load: Load, *, flat: bool) -> float:
    """How crowded a sheet is for a piece, for `media.oven`."""
    return round(vessels.crowding(area_m2=1.0, pieces_area_m2=load.cover, flat=flat), 2)


def in_contact(load: Load) -> float:
    """Share of what is stirred in a pan that lies on the metal at a time: all of one layer."""
    return 1.0 / max(load.stirred, 1.0)


@lru_cache(maxsize=1024)
def oven_drawn_down(load: Load, setting_degC: float) -> tuple[float, float]:
    """What the door and the cold sheet leave of the oven's heat [°C], and until it is back [s]."""
    return vessels.oven_after_loading(
        setting_degC=setting_degC,
        tray_kg=load.size.mass_kg,
        tray_cp_J_kgK=load.size.cp_J_kgK,
        foods=[_cold(load.kg)],
    )


def own_kg(grams: float) -> float:
    """So much of one food in the steps in which a pot feels it."""
    return KG_STEP / 2 * max(1, round(grams / 1000.0 / KG_STEP * 2))


def stilled(load: Load, cold_kg: float, *, liquid_degC: float, altitude_m: float) -> tuple[float, float]:
    """What so much cold food leaves of a bubbling pot's heat [°C], and until it bubbles again [s]."""
    return vessels.after_adding(
        pot_kg=load.size.mass_kg,
        pot_cp_J_kgK=load.size.cp_J_kgK,
        water_kg=load.liquid_kg,
        liquid_degC=liquid_degC,
        foods=[_cold(cold_kg)],
        altitude_m=altitude_m,
    )


def to_boil_s(size: VesselSize, *, liquid_kg: float, altitude_m: float, hot: bool) -> float:
    """From liquid out of the tap to a simmer [s]; `hot`: in a vessel that something was fried in."""
    boils = boiling_degC(ambient_Pa(altitude_m))
    metal = vessels.Load(mass_kg=size.mass_kg, cp_J_kgK=size.cp_J_kgK, at_degC=boils if hot else TAP_DEGC)
    water = vessels.Load(mass_kg=max(liquid_kg, 1e-3), cp_J_kgK=vessels.WATER_CP, at_degC=TAP_DEGC)
    return vessels.come_up_s([metal, water], to_degC=boils - SIMMER_K, power_W=vessels.hob_power_W())


def to_pressure_s(
    size: VesselSize, *, kg: float, liquid_kg: float, gauge_kPa: float, altitude_m: float, hot: bool = False
) -> float:
    """From the lid locked over cold food to full pressure [s]; `hot`: over liquid that boils."""
    return vessels.pressure_come_up_s(
        pot_kg=size.mass_kg,
        pot_cp_J_kgK=size.cp_J_kgK,
        water_kg=liquid_kg,
        foods=[_cold(kg)],
        gauge_kPa=gauge_kPa,
        altitude_m=altitude_m,
        start_degC=boiling_degC(ambient_Pa(altitude_m)) - SIMMER_K if hot else TAP_DEGC,
    )


def stepped(seconds: float) -> float:
    """A come-up time in whole steps, at least one."""
    return COME_UP_STEP_S * max(1.0, math.floor(seconds / COME_UP_STEP_S))


def _cold(kg: float) -> vessels.Load:
    return vessels.Load(mass_kg=kg, cp_J_kgK=FOOD_CP, at_degC=FRIDGE_DEGC)

"""Rows of the tables -> records. The rows were checked by `load` before the file was built."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from knowledge.foods import columns
from knowledge.foods.model import (
    Behaviour,
    Composition,
    Cut,
    DoneKind,
    Doneness,
    Food,
    Portion,
    Role,
    Vessel,
    VesselSize,
    When,
)
from knowledge.tables import items


def number(cell: str | float | None) -> float | None:
    """A figure, or None where the cell is blank."""
    return None if cell is None or cell == "" else float(cell)


def _or(cell: str, default: float) -> float:
    return float(cell) if cell else default


def food(row: Mapping[str, str], portions: Sequence[Mapping[str, Any]]) -> Food:
    """One food with its portions."""
    return Food(
        id=row["id"],
        name=row["name"],
        group=row["group"],
        role=Role(row["role"]),
        composition=(
            Composition(**{c: float(row[c]) for c in columns.COMPOSITION}) if row["water_g"] else None
        ),
        density_kg_m3=number(row["density_kg_m3"]),
        bulk_density_kg_m3=number(row["bulk_density_kg_m3"]),
        portions=tuple(
            Portion(unit=p["unit"], size=p["size"], grams=float(p["grams"]), source=p["source"])
            for p in portions
        ),
        whole_shape=row["whole_shape"] or None,
        whole_mm=number(row["whole_mm"]),
        whole_ratio_1=_or(row["whole_ratio_1"], 1.0),
        whole_ratio_2=_or(row["whole_ratio_2"], 1.0),
        cuts=tuple(items(row["cuts"])),
        doneness=row["doneness"] or "none",
        dose_factor=_or(row["dose_factor"], 1.0),
        target_degC=number(row["target_degC"]),
        over_degC=number(row["over_degC"]),
        safety=row["safety"],
        start_state=row["start_state"] or "room",
        water_uptake_g_per_g=number(row["water_uptake_g_per_g"]),
        loss_frac=number(row["loss_frac"]),
        pressure=Behaviour(row["pressure"] or "fine"),
        edible_frac=_or(row["edible_frac"], 1.0),
        serving_g=number(row["serving_g"]),
        fridge_days=number(row["fridge_days"]),
        freezer_months=number(row["freezer_months"]),
        cooked_days=number(row["cooked_days"]),
        allergens=frozenset(items(row["allergens"])),
        animal=row["animal"],
        part=row["part"],
        when=When(row["when"]) if row["when"] else None,
        does=row["does"],
        salt_g=number(row["salt_g"]),
        smoke_degC=number(row["smoke_degC"]),
        sources=tuple(
            (column, row[source])
            for column, source in (
                *((c, f.source) for c, f in columns.FIGURES.items()),
                ("season", "season_src"),
            )
            if row[column]
        ),
        composition_of=row["composition_of"],
        season=row["season"],
        notes=row["notes"],
    )


def cut(row: Mapping[str, str]) -> Cut:
    """One cut."""
    return Cut(
        id=row["id"],
        name=row["name"],
        shape=row["shape"],
        size_mm=float(row["size_mm"]),
        ratio_1=_or(row["ratio_1"], 1.0),
        ratio_2=_or(row["ratio_2"], 1.0),
        knife_min_per_kg=float(row["knife_min_per_kg"]),
        source=row["source"],
        parts=int(row["parts"] or 0),
    )


def vessel(row: Mapping[str, str], sizes: tuple[VesselSize, ...]) -> Vessel:
    """One vessel with its sizes."""
    return Vessel(
        id=row["id"],
        methods=tuple(items(row["methods"])),
        max_fill_frac=float(row["max_fill_frac"]),
        max_fill_foaming_frac=float(row["max_fill_foaming_frac"]),
        min_liquid_ml=float(row["min_liquid_ml"]),
        single_layer=row["single_layer"] == "yes",
        browns=row["browns"] == "yes",
        dome=float(row["dome"]),
        why=row["why"],
        sizes=sizes,
        source=row["source"],
    )


def vessel_size(row: Mapping[str, str]) -> VesselSize:
    """One size of a vessel."""
    return VesselSize(
        id=row["id"],
        vessel=row["vessel"],
        area_m2=float(row["area_m2"]),
        volume_l=number(row["volume_l"]),
        mass_kg=float(row["mass_kg"]),
        cp_J_kgK=float(row["cp_J_kgK"]),
        serves=float(row["serves"]),
        usual=row["usual"] == "yes",
        sides_cm=tuple(float(side) for side in row["sides_cm"].split(" x ") if side),
        source=row["source"],
    )


def doneness(row: Mapping[str, str]) -> Doneness:
    """One doneness class; columns of `doneness.csv` beyond the record's are left to physics."""
    return Doneness(
        id=row["id"],
        kind=DoneKind(row["kind"]),
        theta=_or(row["theta"], 0.0),
        kappa=_or(row["kappa"], 0.0),
        source=row["source"],
        **{
            column: number(row[column])
            for column in (
                "dose_min", "z_below_K", "z_above_K", "cutoff_degC", "target_degC", "crisp_factor",
                "soft_factor", "over_factor", "over_degC", "roast_factor",
            )
        },
    )  # fmt: skip

"""The eaters of a kitchen as they are described from outside: diets, allergens, foods left out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from knowledge import diets
from knowledge.answers.eaters.diets_said import diets_said
from knowledge.answers.eaters.kinship import diets_by_allergen
from knowledge.foods.store import Store
from knowledge.text.normalise import key

KEYS = ("diets", "allergens", "allergies", "excluded", "avoid")


def ruled_out(raw: object, *, store: Store) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """What the eaters must not have, as tokens, and what could not be used, each with what was expected.

    `raw` is the object of the scripting interface that holds the keys above, each a text
    or a list of texts; other keys are not ours and are passed over.
    """
    tokens: list[str] = []
    problems: list[str] = []
    said: Mapping[str, object] = raw if isinstance(raw, Mapping) else {}
    for name in KEYS:
        entries = _entries(said.get(name))
        if entries is None:
            problems.append(
                f'field "{name}": expected a list of words such as ["nuts", "milk"], got {said[name]!r}'
            )
            continue
        for entry in entries:
            if token := _token(entry, store):
                tokens.append(token)
            else:
                problems.append(f'field "{name}": {entry!r} is no diet, allergen or food that I know')
    return tuple(dict.fromkeys(tokens)), tuple(problems)


def _entries(value: object) -> Sequence[str] | None:
    """The texts of a field, none where it is left out; None when it holds something else."""
    if value is None:
        return ()
    if isinstance(value, str):
        return (value,)
    if isinstance(value, Sequence) and all(isinstance(entry, str) for entry in value):
        return value
    return None


def _token(said: str, store: Store) -> str:
    """What one entry rules out: an allergen by its legal name, a diet, a word for either, a food."""
    plain = key(said)
    if diet := diets_by_allergen(store).get(said.strip().lower()):
        return diet
    if plain in diets.known_diets():
        return plain
    if found := diets_said(f" {plain} ", store):
        return found[max(found, key=len)]
    food = store.named(plain.removeprefix("no "))
    return f"no {food.name}" if food is not None else ""

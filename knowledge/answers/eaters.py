"""The eaters of a kitchen as they are described from outside: diets, allergens, foods left out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from knowledge import diets
from knowledge.answers.restraints import diets_said
from knowledge.foods.store import Store
from knowledge.text.normalise import key

KEYS = ("diets", "allergens", "allergies", "excluded", "avoid")
ALLERGENS = {
    "milk": "no dairy", "eggs": "no egg", "fish": "no fish", "crustaceans": "no shellfish",
    "molluscs": "no shellfish", "tree nuts": "no nuts", "peanuts": "no nuts", "wheat": "no wheat",
    "gluten": "no gluten", "soybeans": "no soy", "sesame": "no sesame", "celery": "no celery",
    "mustard": "no mustard", "sulphites": "no sulphite", "lupin": "no lupin",
}  # fmt: skip


def ruled_out(raw: object, *, store: Store) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """What the eaters must not have, as tokens, and what could not be used, each with what was expected.

    `raw` is the object of the scripting interface that holds the keys above, each a text
    or a list of texts; other keys are not ours and are passed over.
    """
    tokens: list[str] = []
    problems: list[str] = []
    said: Mapping[str, object] = raw if isinstance(raw, Mapping) else {}
    for name in KEYS:
        value = said.get(name)
        if value is None:
            continue
        entries = [value] if isinstance(value, str) else value
        if not isinstance(entries, Sequence) or not all(isinstance(entry, str) for entry in entries):
            problems.append(
                f'field "{name}": expected a list of words such as ["nuts", "milk"], got {value!r}'
            )
            continue
        for entry in entries:
            token = _token(entry, store)
            if token:
                tokens.append(token)
            else:
                problems.append(f'field "{name}": {entry!r} is no diet, allergen or food that I know')
    return tuple(dict.fromkeys(tokens)), tuple(problems)


def _token(said: str, store: Store) -> str:
    plain = key(said)
    if said.strip().lower() in ALLERGENS:
        return ALLERGENS[said.strip().lower()]
    if plain in diets.known_diets():
        return plain
    found = diets_said(f" {plain} ", store)
    if found:
        return found[max(found, key=len)]
    food = store.named(plain.removeprefix("no "))
    return f"no {food.name}" if food is not None else ""

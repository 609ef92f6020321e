"""Source ids -> the lines that stand under an answer."""

from __future__ import annotations

from knowledge.foods.store import Store


def cited(store: Store, *source_ids: str) -> tuple[str, ...]:
    """Readable sources, each once; ids that are blank are left out."""
    return tuple(dict.fromkeys(_line(store, source) for source in source_ids if source))


def _line(store: Store, source_id: str) -> str:
    try:
        return str(store.source(source_id))
    except KeyError:
        return source_id

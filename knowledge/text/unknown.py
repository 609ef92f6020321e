"""Food-like words that nobody knows: they become items without an id, to be asked about."""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.text.model import Item
from knowledge.text.normalise import Flat, key, singular
from knowledge.text.segments import Segment
from knowledge.text.tokens import Token
from knowledge.text.vocabulary import Vocabulary, words

_MAX_WORDS = 3
_LEADING = frozenset([
    "some", "a", "an", "the", "of", "my", "have", "i", "got", "we", "ive", "this", "that", "more",
    "also", "use", "add", "using", "there", "is", "are", "for", "it", "its", "need", "want", "to",
])  # fmt: skip


def unknown_foods(
    segments: Sequence[Segment], flat: Flat, tokens: Sequence[Token], vocabulary: Vocabulary, *, known: int
) -> tuple[Item, ...]:
    """Segments that name no known food but hold a word that is neither English nor a dish."""
    out = []
    measured = any(s.of("amount") and s.of("word") and not s.of("food") for s in segments)
    if not known and not measured:
        return ()
    for segment in segments:
        item = _unknown(segment, flat, tokens, vocabulary, lone=not known)
        if item is not None:
            out.append(item)
    return tuple(out)


def _unknown(
    segment: Segment, flat: Flat, tokens: Sequence[Token], vocabulary: Vocabulary, *, lone: bool
) -> Item | None:
    if segment.of("food") or segment.of("used") or segment.closer in ("?", ":") or segment.depth:
        return None
    said = [e for e in segment.of("word") if tokens[e.at].is_word]
    while said and said[0].word in _LEADING:
        said = said[1:]
    while said and said[-1].word in _LEADING:
        said = said[:-1]
    if not 1 <= len(said) <= _MAX_WORDS or said[-1].at - said[0].at >= len(said):
        return None
    strange = [e for e in said if len(e.word) > 2 and not _plain(e.word, vocabulary)]
    if not strange or (lone and not segment.of("amount")):
        return None
    if any(e.word in ("style", "cuisine", "flavour", "flavor", "vibes", "type", "night") for e in said):
        return None
    dishes = words().dishes
    keys = tuple(key(e.word) for e in said)
    if keys in dishes or any((k,) in dishes for k in keys):
        return None
    amount = segment.of("amount")[0].amount if segment.of("amount") else None
    states = [e.mark[1] for e in segment.of("mark") if e.mark[0] == "state"]
    return Item(
        name=" ".join([*(e.word for e in said[:-1]), singular(said[-1].word)]),
        food_id=None,
        qty=amount.qty if amount else None,
        unit=amount.unit if amount else None,
        grams=float(round(amount.grams)) if amount and amount.grams is not None else None,
        state=states[0] if states else None,
        cut=None,
        size=amount.size if amount else None,
        phrase=flat.said(tokens[said[0].at].start, tokens[said[-1].at].end),
        sure=False,
    )


def _plain(word: str, vocabulary: Vocabulary) -> bool:
    return word in vocabulary.plain or singular(word) in vocabulary.plain or not word.isalpha()

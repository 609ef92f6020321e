"""Food-like words that nobody knows: they become items without an id, to be asked about."""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.text.amounts import Amount
from knowledge.text.fields import Span
from knowledge.text.model import Item
from knowledge.text.normalise import Flat, key, singular
from knowledge.text.segments import Element, Segment, labelled
from knowledge.text.settings import is_setting
from knowledge.text.tokens import Token
from knowledge.text.vocabulary import Vocabulary, words

_MAX_WORDS = 3
_VOWELS = frozenset("aeiouy")
_LEADING = frozenset([
    "some", "a", "an", "the", "of", "my", "have", "i", "got", "we", "ive", "this", "that", "more",
    "also", "use", "add", "je", "pro", "using", "there", "is", "are", "for", "it", "its", "need", "want",
    "to",
])  # fmt: skip


def unknown_foods(
    segments: Sequence[Segment],
    flat: Flat,
    tokens: Sequence[Token],
    vocabulary: Vocabulary,
    *,
    known: int,
    wished: Sequence[Span] = (),
) -> tuple[Item, ...]:
    """Segments that name no known food but hold a word that is neither English nor a dish nor a wish."""
    out: list[Item] = []
    measured = any(s.of("amount") and s.of("word") and not s.of("food") for s in segments)
    if not known and not measured:
        return ()
    for n, segment in enumerate(segments):
        if segment.closer == "(" and n + 1 < len(segments) and segments[n + 1].of("food"):
            continue  # "zucca (pumpkin)": the bracket says what it is
        if any(_is_within(e, tokens, wished) for e in segment.of("word")):
            continue
        item = _unknown(segment, flat, tokens, vocabulary, lone=not known)
        if item is not None:
            out.append(item)
        elif _is_list(segment):
            out += [_item([e.at], None, None, flat, tokens) for e in strangers(segment, tokens, vocabulary)]
    return tuple(out)


def _is_within(element: Element, tokens: Sequence[Token], spans: Sequence[Span]) -> bool:
    return any(start <= tokens[element.at].start < end for start, end in spans)


def _is_list(segment: Segment) -> bool:
    """Foods without separators, and nothing said of them: "chicken rice gribblefruit carrots"."""
    words_said = sum(not e.word.isalpha() or e.word in words().common for e in segment.of("word"))
    return len(segment.of("food")) >= 2 and not words_said and not segment.depth


def strangers(segment: Segment, tokens: Sequence[Token], vocabulary: Vocabulary) -> list[Element]:
    """Words of a segment, after its first food, that are neither English nor a food or dish."""
    first = segment.of("food")[0].at
    return [
        e
        for e in segment.of("word")
        if e.at > first and tokens[e.at].is_word and is_strange(tokens[e.at], vocabulary)
    ]


def is_strange(token: Token, vocabulary: Vocabulary) -> bool:
    """Whether a word is one that nobody knows."""
    return (
        len(token.text) > 3
        and not _plain(token.text, vocabulary)
        and token.key not in vocabulary.food_words
        and (token.key,) not in words().dishes
    )


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
    named = vocabulary.names_food(key(" ".join(e.word for e in said)))
    plain = all(e.word in words().common for e in said)  # "lamb, maybe 300 g"
    if (is_measured(segment, said) and (named or not plain)) or (
        named and _is_alone(segment, said) and not lone
    ):
        return _item([said[0].at, said[-1].at], _amount_of(segment), None, flat, tokens, vocabulary)
    strange = [e for e in said if len(e.word) > 2 and not _plain(e.word, vocabulary)]
    if any(e.word in _PERSONS for e in segment.of("word")):
        return None  # "my partner retches"
    if not strange or (lone and not segment.of("amount")):
        return None
    if any(e.word in ("style", "cuisine", "flavour", "flavor", "vibes", "type", "night") for e in said):
        return None
    if is_setting(" ".join(e.word for e in said)):
        return None  # "US units" behind a list
    dishes = words().dishes
    keys = tuple(key(e.word) for e in said)
    if keys in dishes or any((k,) in dishes for k in keys):
        return None
    amount = _amount_of(segment)
    states = [e.mark[1] for e in segment.of("mark") if e.mark[0] == "state"]
    return _item([said[0].at, said[-1].at], amount, labelled(states[0]) if states else None, flat, tokens)


_PERSONS = frozenset([
    "partner", "wife", "husband", "hubby", "kid", "kids", "son", "daughter", "mum", "mom", "dad", "nan", "he",
    "she", "they", "we", "you", "him", "her", "us", "me", "who", "everyone", "guest", "guests", "friend",
    "friends", "sister", "brother", "boy", "girl", "boys", "girls", "toddler", "baby", "family", "lot",
])  # fmt: skip
_NO_FOOD = frozenset([
    "water", "total", "all", "each", "max", "weight", "together", "it", "them", "that", "left", "more", "so",
    "altogether", "worth", "stuff", "food", "shopping", "things", "one", "ones", "oven", "pan", "pot", "tray",
    "dish", "portion", "portions", "day", "days", "size", "bowl", "plate", "drained", "net", "gross", "here",
    "there", "cooked", "raw", "dry", "per", "person", "head", "heads", "big", "small", "ish", "max", "min",
])  # fmt: skip


def _is_alone(segment: Segment, said: Sequence[Element]) -> bool:
    """Whether there is nothing but the words and a number in front of them."""
    return len(said) + len(segment.of("amount")) == len(segment.elements)


def _amount_of(segment: Segment) -> Amount | None:
    return segment.of("amount")[0].amount if segment.of("amount") else None


def is_measured(segment: Segment, said: Sequence[Element]) -> bool:
    """Whether words that name no food are weighed like one: "300 g heart", "4 schnitzel, 150 g each"."""
    amounts = [e.amount for e in segment.of("amount") if e.amount]
    if not said:
        return False
    if len(amounts) not in (1, 2) or any(e.word in _NO_FOOD | _PERSONS for e in segment.of("word")):
        return False
    weighed = any(amount.kind in ("weight", "container") and not amount.article for amount in amounts)
    counted = any(amount.bare and not amount.article for amount in amounts) and len(said) == 1
    beside = abs(said[0].at - segment.of("amount")[0].at) <= _BESIDE
    return beside and (weighed or (counted and (key(said[0].word),) in words().dishes)) and len(said) <= 2


_BESIDE = 4  # tokens from an amount to the word it is of


def _item(
    at: Sequence[int],
    amount: Amount | None,
    state: str | None,
    flat: Flat,
    tokens: Sequence[Token],
    vocabulary: Vocabulary | None = None,
) -> Item:
    """An item of the words from the first to the last place; `vocabulary` is asked for its food."""
    said = [t.text for t in tokens[at[0] : at[-1] + 1]]
    meanings = vocabulary.meanings(key(" ".join(said))) if vocabulary else ()
    return Item(
        name=" ".join([*said[:-1], singular(said[-1])]),
        food_id=meanings[0] if meanings else None,
        qty=amount.qty if amount else None,
        unit=amount.unit if amount else None,
        grams=float(round(amount.grams)) if amount and amount.grams is not None else None,
        state=state,
        cut=None,
        size=amount.size if amount else None,
        phrase=flat.said(tokens[at[0]].start, tokens[at[-1]].end),
        sure=bool(meanings),
    )


def _plain(word: str, vocabulary: Vocabulary) -> bool:
    """Plain English, or no word at all: those have vowels."""
    if not _VOWELS & set(word):
        return True
    return word in vocabulary.plain or singular(word) in vocabulary.plain or not word.isalpha()

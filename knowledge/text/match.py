"""Food phrases in tokens: the longest known phrase wins, then near matches of single words.

A near match needs the same first letter and at most one or two slips, by length,
and plain English words are never bent into foods ("been" is no bean).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence, Set
from dataclasses import dataclass, replace
from itertools import pairwise

from rapidfuzz.distance import OSA, JaroWinkler

from knowledge.text.tokens import Token
from knowledge.text.vocabulary import Named, Phrase, Vocabulary, words

_NO_PLURAL = frozenset(["been"])  # plain words without a plural: "beens" is a slip
MAX_CORRECTIONS = 24  # words of one message that are compared with the whole vocabulary


@dataclass(frozen=True, slots=True)
class Hit:
    """A food phrase at tokens `start` to `end` (exclusive)."""

    start: int
    end: int
    phrase: Phrase
    sure: bool


def correction(word: str, vocabulary: Vocabulary) -> str | None:
    """The food word that a mistyped one (in the singular) most likely is; None if none is near."""
    length = len(word)
    if length < 4 or not word.isalpha():
        return None
    limit = 1 if length < 7 else 2 if length < 11 else 3
    best: tuple[float, int, bool, float, str] | None = None
    frame = _consonants(word)
    for known in vocabulary.by_initial.get(word[0], ()):
        if abs(len(known) - length) > limit:
            continue
        slips = OSA.distance(word, known, score_cutoff=limit)
        if length == 4 and _consonants(known) != frame:
            continue  # of so few letters too much is another word: "boot" is no Brot
        if slips <= limit and (slips < 2 or len(known) >= 7):
            likeness = JaroWinkler.similarity(word, known)
            score = (float(slips), -len(known), _consonants(known) != frame, -likeness, known)
            best = score if best is None or score < best else best
    return best[4] if best else None


def _consonants(word: str) -> str:
    """What is left without vowels: those are mistaken most."""
    return "".join(c for c in word if c not in "aeiouy")


def corrected(tokens: Sequence[Token], vocabulary: Vocabulary) -> tuple[list[Token], frozenset[int]]:
    """Tokens with mistyped food words put right, and the places where that was done."""
    places = []
    out = list(tokens)
    tries = 0
    for i, token in enumerate(tokens):
        if not token.is_word or len(token.text) < 4 or tries >= MAX_CORRECTIONS:
            continue
        if token.key in vocabulary.food_words or token.text in vocabulary.plain:
            continue
        before = out[i - 1].key if i else ""
        better = _in_phrase(before, token, vocabulary)
        if better is None and (token.key not in vocabulary.plain or token.key in _NO_PLURAL):
            tries += 1
            better = correction(token.key, vocabulary)
        if better:
            out[i] = replace(token, key=better)
            places.append(i)
    return out, frozenset(places)


def _in_phrase(before: str, token: Token, vocabulary: Vocabulary) -> str | None:
    """The word that goes on a phrase, with one slip more allowed than alone: "chicken thies"."""
    best: tuple[int, str] | None = None
    for known in vocabulary.following.get(before, ()):
        if known[0] == token.text[0] and len(known) >= 4:
            slips = min(OSA.distance(token.text, f"{known}s"), OSA.distance(token.key, known))
            if slips <= 2 and 2 * slips < len(known):
                best = min(best, (slips, known)) if best else (slips, known)
    return best[1] if best else None


def hits(
    tokens: Sequence[Token],
    vocabulary: Vocabulary,
    *,
    unsure: frozenset[int] = frozenset(),
    taught: Mapping[tuple[str, ...], Phrase] | None = None,
) -> list[Hit]:
    """Food phrases in the order of the text, never overlapping."""
    found: list[Hit] = []
    dishes = words().dishes
    i = 0
    while i < len(tokens):
        hit = _longest(tokens, i, vocabulary, taught or {}, dishes)
        if isinstance(hit, int):  # a dish: passed over
            i += hit
            continue
        if hit is None:
            i += 1
            continue
        found.append(replace(hit, sure=not any(n in unsure for n in range(hit.start, hit.end))))
        i = hit.end
    shared = set_against(tokens, distributed(tokens, found, vocabulary), vocabulary)
    shared = cuts_in_brackets(tokens, shared, vocabulary)
    return _in_context(tokens, shared, vocabulary)


def _longest(
    tokens: Sequence[Token],
    i: int,
    vocabulary: Vocabulary,
    taught: Mapping[tuple[str, ...], Phrase],
    dishes: Set[tuple[str, ...]],
) -> Hit | int | None:
    first = tokens[i].key
    for phrase, known in taught.items():
        if phrase[0] == first and tuple(t.key for t in tokens[i : i + len(phrase)]) == phrase:
            return Hit(i, i + len(phrase), known, True)
    lengths = vocabulary.lengths.get(first, ())
    dish = next(
        (n for n in (4, 3, 2) if i + n <= len(tokens) and tuple(t.key for t in tokens[i : i + n]) in dishes),
        0,
    )
    for length in lengths:
        if i + length > len(tokens):
            continue
        if length <= dish and length < 3:
            break
        meaning = vocabulary.phrases.get(tuple(t.key for t in tokens[i : i + length]))
        if (
            meaning is not None
            and length == 1
            and first in vocabulary.plural_only
            and tokens[i].text == first
        ):
            continue
        if meaning is not None and length > 1 and _belongs_to_next(tokens, i + length - 1, vocabulary):
            shorter = vocabulary.phrases.get(tuple(t.key for t in tokens[i : i + length - 1]))
            if shorter is not None:
                return Hit(i, i + length - 1, shorter, True)
        if meaning is not None:
            return Hit(i, i + length, meaning, True)
    return dish or None


def _belongs_to_next(tokens: Sequence[Token], last: int, vocabulary: Vocabulary) -> bool:
    """In "sweet potato green beans" the word "green" goes with the beans."""
    if last + 1 >= len(tokens):
        return False
    pair = (tokens[last].key, tokens[last + 1].key)
    return pair in vocabulary.own and (tokens[last + 1].key,) in vocabulary.phrases


_POTFULS = ("bowl", "pot", "batch", "tub", "portion", "portions", "tupperware", "rest", "tubs", "box")
_VERBS_TOO = frozenset(
    ["salt", "toast", "butter", "flour", "oil", "sauce", "season", "steam"]
)  # "toast the nuts"
_BEFORE_VERB = frozenset(["i", "to", "you", "we", "should", "ill", "well", "lets", "didnt", "not"])
_JOINTS = ("haunch", "loin", "rump", "leg", "shoulder")


def _in_context(tokens: Sequence[Token], found: list[Hit], vocabulary: Vocabulary) -> list[Hit]:
    """Readings that hang on the other words: pepper the spice, drumstick the vegetable, date the day."""
    names = {named.name for hit in found for named in hit.phrase.foods}
    text = [t.text for t in tokens]
    indian = bool(names & {"tamarind", "split pigeon pea", "curry leaf"}) or "sambar" in text or "dal" in text
    out: list[Hit] = []
    for hit in found:
        said = " ".join(text[hit.start : hit.end])
        before = text[hit.start - 1] if hit.start else ""
        after = text[hit.end] if hit.end < len(text) else ""
        meaning: Phrase | None = hit.phrase
        if said == "pepper" and (_near(text, hit.start, "salt") or before in ("black", "ground", "cracked")):
            meaning = vocabulary.get(("black", "pepper"))
        elif said in ("drumstick", "drumsticks") and indian:
            meaning = vocabulary.get(("moringa", "pod"))
        elif said == "crayfish" and names & {"palm oil", "egusi", "scotch bonnet", "cassava", "yam"}:
            meaning = vocabulary.get(("dried", "shrimp"))
        elif (
            (
                (
                    said in ("chili", "chilli")
                    and (
                        before in ("a", "leftover")
                        or (before == "of" and hit.start > 1 and text[hit.start - 2] in _POTFULS)
                        or after in ("from", "con", "for", "leftovers")
                    )
                )
                or said == "date"
                or (said == "cloves" and (before.isdigit() or after == "of"))
            )
            or (
                said in ("veg", "vegetables", "veggies", "greens", "meat")
                and (after in ("(", ":", "box") or before in ("same", "the", "any", "all"))
            )
            or (said == "fish" and before in ("the", "this", "that") and _has_fish(found, vocabulary))
            or (said == "rice" and after in ("cooker", "cookers", "maker"))
            or (said in _VERBS_TOO and before in _BEFORE_VERB and hit.end < len(text))
        ):
            meaning = None
        elif said in ("steak", "steaks") and before in _JOINTS and out and out[-1].end == hit.start - 1:
            meaning = None  # "venison haunch steaks" are venison
        elif said == "coriander" and "cilantro" in text:
            meaning = vocabulary.get(("coriander", "seed")) or hit.phrase  # the other name is of the leaves
        elif said == "chops" and any("lamb" in name for name in names):
            meaning = vocabulary.get(("lamb", "chop"))
        if meaning is not None:
            out.append(replace(hit, phrase=meaning))
    return _whole_birds(tokens, out, vocabulary)


_ANY_NOUN_AFTER = ("or", "and", "/", "&")


def distributed(tokens: Sequence[Token], found: Sequence[Hit], vocabulary: Vocabulary) -> list[Hit]:
    """Two names that share their last word: "beef or pork mince", "red or green lentils"."""
    out: list[Hit] = []
    for hit in found:
        joiner = hit.start - 1
        first = joiner - 1
        if hit.end - hit.start >= 2 and first >= 0 and tokens[joiner].text in _ANY_NOUN_AFTER:
            shared = vocabulary.get((tokens[first].key, tokens[hit.end - 1].key))
            alone = bool(out) and out[-1].end == joiner and out[-1].start == first
            mince = shared is not None and shared.foods[0].name.startswith("ground ")
            if shared and alone and (tokens[joiner].text == "or" or mince):
                out[-1] = replace(out[-1], phrase=shared)
            elif shared and tokens[first].key in _COLOURS and (not out or out[-1].end <= first):
                out.append(Hit(first, joiner, shared, hit.sure))
        out.append(hit)
    return out


_COLOURS = ("red", "green", "yellow", "brown", "black", "white", "purple")
_SET_AGAINST = frozenset(["not", "than", "of", "for", "over"])  # "lamb neck, not the shanks"
_POINTING = frozenset(["the", "those", "these", "any"])


def set_against(tokens: Sequence[Token], found: Sequence[Hit], vocabulary: Vocabulary) -> list[Hit]:
    """A food told by half its name, the other half said before: "duck legs not breasts"."""
    out = list(found)
    named = [hit for hit in found if hit.end - hit.start >= 2]
    for n in range(1, len(tokens)):
        pointed = n > 1 and tokens[n - 1].text in _POINTING
        before = tokens[n - 2].text if pointed else tokens[n - 1].text
        if before not in _SET_AGAINST or (n + 1 < len(tokens) and tokens[n + 1].is_word):
            continue
        here = next((k for k, hit in enumerate(out) if hit.start <= n < hit.end), None)
        if here is not None and out[here].end - out[here].start > 1:
            continue
        whole = next(
            (p for hit in named if hit.end < n and (p := _completed(tokens, hit, n, vocabulary))), None
        )
        if whole is not None and here is not None:
            out[here] = replace(out[here], phrase=whole)
        elif whole is not None:
            out.append(Hit(n, n + 1, whole, True))
    return sorted(out, key=lambda hit: hit.start)


def _is_of_animal(hit: Hit, vocabulary: Vocabulary) -> bool:
    food = vocabulary.food(hit.phrase.foods[0])
    return food is not None and bool(food.animal)


_BRACKET_LENGTH = 16  # tokens of a bracket that lists cuts
_BRACKET_WITHIN = 6  # tokens after an animal's name: its amount may come first


def cuts_in_brackets(tokens: Sequence[Token], found: Sequence[Hit], vocabulary: Vocabulary) -> list[Hit]:
    """Cuts in the brackets behind an animal are its own: "turkey 1.2 kg (thighs and breast)"."""
    out = list(found)
    for hit, after in pairwise([*found, Hit(len(tokens), len(tokens), single(Named("", None)), True)]):
        until = min(after.start + 1, len(tokens))
        opening = next((n for n in range(hit.end, until) if tokens[n].text == "("), len(tokens))
        if opening - hit.end > _BRACKET_WITHIN or not _is_of_animal(hit, vocabulary):
            continue
        for n in range(opening + 1, min(opening + _BRACKET_LENGTH, len(tokens))):
            if tokens[n].text in "()":
                break
            cut = vocabulary.get((tokens[hit.start].key, tokens[n].key))
            food = vocabulary.food(cut.foods[0]) if cut is not None else None
            if cut is None or food is None or not food.animal:
                continue
            here = next((k for k, other in enumerate(out) if other.start <= n < other.end), None)
            if here is None:
                out.append(Hit(n, n + 1, cut, True))
            elif out[here].end - out[here].start == 1:
                out[here] = replace(out[here], phrase=cut)
    return sorted(out, key=lambda hit: hit.start)


def _completed(tokens: Sequence[Token], hit: Hit, n: int, vocabulary: Vocabulary) -> Phrase | None:
    """The food that a word and half the name of another make: its animal, or what it is a kind of."""
    word = tokens[n].key
    cut = vocabulary.get((tokens[hit.start].key, word))
    food = vocabulary.food(cut.foods[0]) if cut is not None else None
    if food is not None and food.animal and _is_of_animal(hit, vocabulary):
        return cut
    kind = vocabulary.get((word, tokens[hit.end - 1].key))
    return kind if tokens[n - 1].text not in _POINTING and kind != hit.phrase else None


def _has_fish(found: Sequence[Hit], vocabulary: Vocabulary) -> bool:
    """Whether a fish is named by its kind, so that "the fish" means that one."""
    named = [vocabulary.food(food) for hit in found for food in hit.phrase.foods if food.name != "white fish"]
    return any(food is not None and food.animal in ("fish", "shellfish") for food in named)


def _near(text: Sequence[str], i: int, word: str) -> bool:
    return word in text[max(0, i - 3) : i]


def _whole_birds(tokens: Sequence[Token], found: list[Hit], vocabulary: Vocabulary) -> list[Hit]:
    """ "whole small chicken" is a whole chicken."""
    out = []
    for hit in found:
        j = hit.start - 1
        while j >= 0 and tokens[j].text in (
            "small",
            "large",
            "big",
            "medium",
            "fresh",
            "raw",
            "frozen",
            "stuffed",
        ):
            j -= 1
        if j >= 0 and tokens[j].text == "whole":
            name = ("whole", *(t.key for t in tokens[hit.start : hit.end]))
            whole = vocabulary.get(name)
            hit = Hit(j, hit.end, whole, hit.sure) if whole else hit
        out.append(hit)
    return out


def single(named: Named) -> Phrase:
    """A phrase that stands for one food."""
    return Phrase((named,))

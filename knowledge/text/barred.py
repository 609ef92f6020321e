"""Lists of what an allergy bars: "allergic to shellfish, milk and egg", "nut and egg allergy".

Every member of such a list is barred, whatever its order and separators, and none is at hand.
A list ends with its sentence, with a new clause ("and have 300 g prawns"), or where the fridge
begins: at an amount, or after its last comma at something to build a dinner on.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from knowledge.text.fields import Span
from knowledge.text.match import Hit
from knowledge.text.normalise import key
from knowledge.text.tokens import Token
from knowledge.text.vocabulary import Vocabulary, table

_BEFORE = re.compile(
    r"\b(?:(?:allergic|allergy|allergies|anaphyla\w+|intoleran(?:t|ce|ces)|reactions?|reacts?|sensitive|"
    r"sensitivity|sensitivities) (?:\w+ly )?(?:to|against|for|of|with)|"
    r"(?:allergies|allergy|allergens?|allergic|intolerances?|cant (?:have|eat)|no go(?:es)?|avoid|free from)"
    r"(?: here| in the house| list| we have| tonight)? ?(?::|=|-+(?= )|are\b|is\b|include\b)|"
    r"(?:cant|cannot|can not|mustnt|must not|unable to|not able to|isnt allowed(?: to)?|not allowed(?: to)?|"
    r"not supposed to|shouldnt|couldnt) (?:\w+ly |even |safely |ever )?"
    r"(?:have|has|eat|do|tolerate|digest|touch|stomach|take|be near|go near|come near|be around|"
    r"process|consume)|(?:isnt|arent|aint|not) allowed(?! to\b)(?! (?:have|eat|near|in|on|at)\b)(?: any)?|"
    r"(?:hives|a rash|rashes|swells?(?: right)? up|swelling|itch(?:es|y|ing)?|wheez\w+) "
    r"(?:with|from|after|at|on|to)|avoid(?:s|ing)?|steers? clear of|no trace of|no traces of)(?=\s|$)|"
    r"(?:^|[\n.!?;] ?)(?:allergies|allergens|allergy) (?=\w)"
)
_NO = re.compile(r"\b(?:no|without|free of)(?= )")
_AFTER = re.compile(
    r"(?:allerg(?:y|ies|ic)(?! to\b| against\b)|intoleran(?:ce|ces|t)(?! to\b)|anaphylaxis|"
    r"free(?! range| from)|"
    r"(?:all |both )?(?:makes?|gives?|sends?|puts?|brings?|kills?|will kill) "
    r"(?:him|her|me|us|them|my \w+|our \w+|the \w+)|(?:all |both )?(?:are|is) (?:off limits|poison|deadly|"
    r"a no no|no nos?|no goe?s?|banned|forbidden|not allowed|out of the question))\b"
)
_JOINS = frozenset(["and", "or", "nor", "&", "+", "/", "plus", "n", "as", "well", "also", "then"])
_COMMAS = frozenset([",", ";"])
_FILL = frozenset([
    "any", "all", "kinds", "kind", "sorts", "of", "the", "anything", "with", "containing", "like",
    "things", "such", "even", "raw", "cooked", "whole", "fresh", "too", "both", "either",
    "products", "product", "stuff", "a", "an", "most", "some", "other", "cows", "cow", "protein",
    "proteins", "seeds", "seed", "well", "severe", "mild", "bad", "certain", "eg", "namely",
    "including", "traces", "trace", "bit", "badly", "severely", "mainly", "especially", "allergy",
    "allergies", "allergic", "intolerance", "food", "foods", "based",
])  # fmt: skip
_ENDS = frozenset([".", "!", "?", "\n"])
_ARTICLES = frozenset(["a", "an", "severe", "mild", "bad", "serious", "nasty", "slight"])
_HAS = frozenset(["has", "have", "got", "with", "having", "s", "of", "a", "an", "his", "her", "their", "my"])
_MAIN = frozenset({"protein", "starch"})
_UNITS_OF = frozenset(["tin", "can", "jar", "bag", "pack", "bunch", "box", "tub", "punnet", "half"])


@dataclass(frozen=True, slots=True)
class Plain:
    """A word by which an allergy is told, with the diet of its group ("" for a single food)."""

    diet: str
    allergens: tuple[str, ...]


@lru_cache(maxsize=1)
def plain_words() -> Mapping[tuple[str, ...], Plain]:
    """Words by which allergies are told, in the singular: `words_barred.csv`."""
    return {
        tuple(row["word"].split()): Plain(row["diet"], tuple(filter(None, row["allergens"].split(";"))))
        for row in table("words_barred.csv")
    }


@dataclass(frozen=True, slots=True)
class Member:
    """Something that a list may bar: a food, by the place of its hit, or a group of foods."""

    start: int  # tokens
    end: int
    hit: int | None
    plain: Plain | None

    @property
    def diet(self) -> str:
        return self.plain.diet if self.plain else ""


@dataclass(frozen=True, slots=True)
class Barred:
    """What the lists of a message bar."""

    foods: frozenset[int]  # places of hits
    groups: frozenset[int]  # places of hits that name a group: a diet takes their place
    diets: tuple[str, ...]
    used: tuple[Span, ...]  # the words of groups


def barred(text: str, tokens: Sequence[Token], hits: Sequence[Hit], vocabulary: Vocabulary) -> Barred:
    """The members of every list that an allergy, an intolerance or a "can't have" bars."""
    foods: set[int] = set()
    groups: set[int] = set()
    diets: list[str] = []
    used: list[Span] = []
    if not _BEFORE.search(text) and not _AFTER.search(text) and not _NO.search(text):
        return Barred(frozenset(), frozenset(), (), ())
    lists = _Lists(tokens, hits, vocabulary)
    for member in lists.members_of(text):
        if member.diet:
            diets.append(member.diet)
            used.append((tokens[member.start].start, tokens[member.end - 1].end))
            groups |= {member.hit} if member.hit is not None else set()
        elif member.hit is not None:
            foods.add(member.hit)
    return Barred(frozenset(foods), frozenset(groups), tuple(dict.fromkeys(diets)), tuple(used))


class _Lists:
    """The foods and groups of a message by their places, and the lists among them."""

    def __init__(self, tokens: Sequence[Token], hits: Sequence[Hit], vocabulary: Vocabulary) -> None:
        self.tokens = tokens
        self.vocabulary = vocabulary
        self.hits = hits
        self.by_start: dict[int, Member] = {}
        self.by_end: dict[int, Member] = {}
        for n, hit in enumerate(hits):
            keys = tuple(t.key for t in tokens[hit.start : hit.end])
            self._put(Member(hit.start, hit.end, n, plain_words().get(keys)))
        taken = {i for hit in hits for i in range(hit.start, hit.end)}
        for i in range(len(tokens)):
            for length in (2, 1):
                plain = plain_words().get(tuple(t.key for t in tokens[i : i + length]))
                free = i + length <= len(tokens) and not taken & set(range(i, i + length))
                if plain and plain.diet and free:
                    taken |= set(range(i, i + length))
                    self._put(Member(i, i + length, None, plain))

    def _put(self, member: Member) -> None:
        self.by_start[member.start] = member
        self.by_end[member.end] = member

    def members_of(self, text: str) -> list[Member]:
        """Every member of every list, in the order in which the lists are met."""
        out: list[Member] = []
        starts = [token.start for token in self.tokens]
        for match in _BEFORE.finditer(text):
            first = next((n for n, at in enumerate(starts) if at >= match.end()), len(starts))
            out += self._forward(first)
        for match in _NO.finditer(text):
            first = next((n for n, at in enumerate(starts) if at >= match.end()), len(starts))
            run = self._forward(first, strict=True)
            if len(run) > 1 and any(m.diet and not self._is_food(m) for m in run):
                out += [replace(m, plain=None) if self._is_food(m) else m for m in run]
        for match in _AFTER.finditer(text):
            last = next((n for n, at in enumerate(starts) if at >= match.start()), len(starts))
            out += self._backward(last, plain_only=match.group().startswith("free"))
        return out

    def _forward(self, i: int, *, strict: bool = False) -> list[Member]:
        """The list that begins at token `i`; a `strict` one goes on over a comma for allergens alone."""
        run: list[tuple[Member, str]] = []
        joint = ""
        bullets = i < len(self.tokens) and self.tokens[i].text == "\n"
        while i < len(self.tokens):
            member = self.by_start.get(i)
            text = self.tokens[i].text
            if member is not None:
                if self._is_measured(i, member.end):
                    return self._known(run, closed=False, strict=strict)
                run.append((member, joint))
                joint = ""
                i = member.end
            elif text in _JOINS or (text == "-" and bullets):
                joint, i = text, i + 1
            elif text in _COMMAS or (text == "\n" and bullets):
                joint, i = joint or ",", i + 1
            elif text in ("(", ")", ":", "*") or text in _FILL:
                i += 1
            elif self.tokens[i].is_number:
                return self._known(run, closed=False, strict=strict)
            else:
                return self._known(run, closed=text in _ENDS or joint != ",", strict=strict)
        return self._known(run, closed=True, strict=strict)

    def _is_measured(self, start: int, end: int) -> bool:
        before = self.tokens[start - 1] if start else None
        after = self.tokens[end] if end < len(self.tokens) else None
        back = self.tokens[start - 2].text if start > 1 else ""
        counted = before is not None and (before.is_number or before.text in _UNITS_OF)
        held = before is not None and before.text == "of" and back in _UNITS_OF
        return counted or held or (after is not None and after.is_number)

    def _known(self, run: Sequence[tuple[Member, str]], *, closed: bool, strict: bool) -> list[Member]:
        """Of the members read, with the joint before each, those that belong to the list."""
        if not run:
            return []
        members = [member for member, _ in run]
        rest = self._outside(members)
        if closed and not strict and (rest or not any(self._is_main(m) for m in members[1:])):
            return members
        ors = [n for n, (_, joint) in enumerate(run) if joint in ("or", "nor")]
        out = members[: ors[-1] + 1] if ors and strict else members[:1]
        for member, joint in run[len(out) :]:
            if joint == "," and (self._is_food(member) if strict else not member.plain):
                break
            out.append(member)
        return out

    def _is_food(self, member: Member) -> bool:
        """Whether a member is called by the very name of a food: milk, other than nuts or soy."""
        if member.hit is None:
            return False
        said = " ".join(t.key for t in self.tokens[member.start : member.end])
        return any(key(named.name) == said for named in self.hits[member.hit].phrase.foods)

    def _outside(self, members: Sequence[Member]) -> bool:
        """Whether the message names foods beside those of the list."""
        inside = {member.hit for member in members}
        return any(n not in inside for n in range(len(self.hits)))

    def _is_main(self, member: Member) -> bool:
        """Whether a dinner may be built on it, and no allergy is told by its name."""
        if member.hit is None or member.plain:
            return False
        foods = [self.vocabulary.food(named) for named in self.hits[member.hit].phrase.foods]
        return any(food is not None and food.part in _MAIN for food in foods)

    def _backward(self, i: int, *, plain_only: bool) -> list[Member]:
        """The list that ends before token `i`: "sesame, fish and mustard" of an allergy."""
        run: list[Member] = []
        joint, joined = "", False
        while i > 0:
            member = self.by_end.get(i)
            text = self.tokens[i - 1].text
            if member is not None:
                if run and (not joint or self._is_measured(member.start, i)):
                    break
                if run and joint == "," and not (joined and member.plain):
                    break
                if plain_only and not member.plain:
                    break
                run.append(member)
                joint = ""
                i = member.start
            elif run and text in _JOINS:
                joint, joined, i = joint or "and", True, i - 1
            elif run and text in _COMMAS:
                joint, i = joint or ",", i - 1
            elif run and text in _ARTICLES and i > 1 and self.tokens[i - 2].text in (*_JOINS, *_ARTICLES):
                i -= 1
            else:
                break
        return run + self._bounded(i, run, joint)

    def _bounded(self, i: int, run: Sequence[Member], joint: str) -> list[Member]:
        """ "Has a kiwi, banana and nut allergy": behind the verb all of it is the list."""
        if joint != "," or not run:
            return []
        more: list[Member] = []
        while i > 0:
            member = self.by_end.get(i)
            if member is not None:
                more.append(member)
                i = member.start
            elif self.tokens[i - 1].text in _COMMAS:
                i -= 1
            else:
                break
        said = [t.text for t in self.tokens[max(0, i - 2) : i]]
        has = len(said) == 2 and said[1] in _ARTICLES and said[0] in _HAS
        if has or said[-1:] in (["has"], ["have"]):
            return more
        # "Kiwi, banana allergy. Salmon, rice": a sentence of its own, and no dinner could be made of it.
        alone = said[-1:] == [] or said[-1] in _ENDS
        held = any(self._is_main(m) or self._is_measured(m.start, m.end) for m in more)
        return more if alone and not held and self._outside([*run, *more]) else []

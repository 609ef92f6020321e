"""The text as segments of elements: foods, amounts, marks (state or cut) and words.

Segments end at commas, line ends, "and", brackets and the like; amounts are read
here, so that none reaches across a food or a separator.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache

from knowledge.text.amounts import SIZES, Amount, amount_at, size_id, unit_at
from knowledge.text.match import Hit
from knowledge.text.normalise import FOOD
from knowledge.text.roles import Role
from knowledge.text.tokens import Token
from knowledge.text.vocabulary import Named, table

_SEPARATORS = frozenset(
    [",", ";", "\n", "*", "~", "+", "&", ".", "!", "?", ":", "/", "|", "(", ")", "[", "]", "=", ">"]
)
_JOINERS = frozenset(
    [
        "and",
        "plus",
        "n",
        "with",
        "but",
        "then",
        "und",
        "et",
        "mit",
        "avec",
        "con",
        "aur",
        "y",
        "oh",
        "comma",
        "period",
        "also",
        "or",
        "instead",
        "rather",
        "than",
        "place",
    ]
)
# Of two states said, the one that decides how it cooks: "frozen raw prawns" are frozen, thawed ones are not.
_STATE_RANK = {"thawed": 6, "leftover": 5, "cooked": 4, "frozen": 3, "raw": 2, "canned": 1, "dried": 1}
_COLOURS = frozenset(["red", "green", "yellow", "orange", "white", "purple", "golden"])


_NOT_SO = ("not", "too", "isnt", "arent", "never")  # "not frozen", "too dry" say no state
# "Bought yesterday", "marinated since yesterday": of that day, yet not cooked.
_NOT_COOKED_THEN = frozenset([
    "since", "bought", "got", "caught", "picked", "marinated", "brined", "soaked", "salted", "thawed",
    "defrosted", "delivered", "freezer", "by", "before", "was", "arrived", "butchers", "market",
])  # fmt: skip
_DRY_HOW = ("aged", "cured", "rubbed", "brined", "fried", "roasted", "marinated")
_BIT = ("bit", "little", "slightly", "looking", "pat", "patted", "gone", "rather")
_THAWS_WITHIN = (
    9  # tokens in which the fridge follows the freezer: "out of the freezer last night to the fridge"
)
_OF_ONLY = ("stick", "ball", "box", "pot", "tray", "piece", "ear")  # words with another everyday meaning
_SUBJECTS = ("i", "to", "you", "we", "should", "they")
_AFTER_CAN = ("replace", "go", "be", "work", "i")


@lru_cache(maxsize=1)
def _marks() -> dict[tuple[str, ...], tuple[str, str]]:
    return {tuple(row["phrase"].split()): (row["kind"], row["value"]) for row in table("words_states.csv")}


@lru_cache(maxsize=1)
def state_words() -> dict[str, str]:
    """The states that are said in one word."""
    return {said[0]: value for said, (kind, value) in _marks().items() if kind == "state" and len(said) == 1}


def labelled(state: str | None) -> str | None:
    """A state as labels have it: what was thawed, or never frozen, is raw."""
    return "raw" if state == "thawed" else state


@dataclass(slots=True)
class Found:
    """A food of the text while its amount, state and cut are gathered."""

    named: Named
    hit: Hit
    role: Role
    amount: Amount | None = None
    state: str | None = None
    cut: str | None = None
    size: str | None = None
    colour: str = ""
    form: str = ""  # the cut of mince that it is meant for: "patty" for burgers

    def add_state(self, state: str) -> None:
        if _STATE_RANK[state] > _STATE_RANK.get(self.state or "", 0):
            self.state = state


@dataclass(slots=True)
class Element:
    """A thing in a segment: a food, an amount, a mark (state or cut), or a word."""

    kind: str
    at: int
    food: Found | None = None
    amount: Amount | None = None
    mark: tuple[str, str] = ("", "")
    word: str = ""


@dataclass(slots=True)
class Segment:
    """Elements between two separators. `opener` is the separator before, `closer` the one after."""

    opener: str
    elements: list[Element] = field(default_factory=list)
    closer: str = ""
    depth: int = 0
    sentence: int = 0

    def of(self, kind: str) -> list[Element]:
        return [e for e in self.elements if e.kind == kind]


def segments(
    tokens: Sequence[Token], hits: Sequence[Hit], roles: dict[int, Role], used: Sequence[tuple[int, int]]
) -> list[Segment]:
    """The text as segments of elements. `used` are stretches that are times, eaters and the like."""
    by_start = {hit.start: (n, hit) for n, hit in enumerate(hits)}
    blind = _blinded(tokens, hits, used)
    out = [Segment("")]
    depth = sentence = 0
    i = 0
    while i < len(tokens):
        token = tokens[i]
        if i in by_start:
            n, hit = by_start[i]
            for named in hit.phrase.foods:
                role = roles.get(n, Role.HAVE)
                found = Found(named, hit, role, state=hit.phrase.state, cut=hit.phrase.cut)
                found.colour = next((t.text for t in tokens[hit.start : hit.end] if t.text in _COLOURS), "")
                _marks_inside(tokens, hit, found)
                out[-1].elements.append(Element("food", i, food=found))
            i = hit.end
            continue
        if blind[i].text == FOOD:  # part of a time, of the number of eaters ...
            out[-1].elements.append(Element("used", i))
            i += 1
            continue
        if token.text in ("(", "["):
            depth += 1
        elif token.text in (")", "]"):
            depth = max(0, depth - 1)
        if _separates(blind, i):
            sentence += token.text in ".!?\n:"
            out[-1].closer = token.text
            out.append(Segment(token.text, depth=depth, sentence=sentence))
            i += 1
            continue
        mark = _mark_at(blind, i)
        if mark and mark[0][0] == "state" and _is_denied(blind, i):
            out[-1].elements.append(Element("word", i, word=token.text))
            i = mark[1]
            continue
        if mark and mark[0][1] == "frozen" and _was_thawed(blind, mark[1]):
            mark = ("state", "thawed"), mark[1]
        if mark:
            out[-1].elements.append(Element("mark", i, mark=mark[0]))
            i = mark[1]
            continue
        got = amount_at(blind, i)
        if got and got[1] > i and not _of_something_else(got, blind, hits):
            out[-1].elements.append(Element("amount", i, amount=got[0]))
            i = got[1]
            continue
        holder = unit_at(blind, i)
        if holder and _is_holder(blind, i, holder[0].kind, holder[0].id):
            one = 1.0 if token.text == token.key else None
            amount = Amount(one, holder[0].id, canned=holder[0].id == "can", kind="holder")
            out[-1].elements.append(Element("amount", i, amount=amount))
            i = holder[1]
            continue
        if token.text in SIZES:
            out[-1].elements.append(Element("size", i, word=size_id(token.text)))
        else:
            out[-1].elements.append(Element("word", i, word=token.text))
        i += 1
    return [s for s in out if s.elements or s.closer]


def _of_something_else(got: tuple[Amount, int], blind: Sequence[Token], hits: Sequence[Hit]) -> bool:
    """ "In a skillet": the article is of the vessel, not of a food."""
    amount, after = got
    begins = {hit.start for hit in hits}
    return amount.article and after < len(blind) and blind[after].text == FOOD and after not in begins


def _blinded(tokens: Sequence[Token], hits: Sequence[Hit], used: Sequence[tuple[int, int]]) -> list[Token]:
    """Tokens with foods and used stretches hidden, so that no amount reads across them."""
    hidden = {n for hit in hits for n in range(hit.start, hit.end)}
    places = {at for a, b in used for at in range(a, b)}
    return [
        replace(t, text=FOOD, key=FOOD, value=None) if n in hidden or t.start in places else t
        for n, t in enumerate(tokens)
    ]


def _separates(tokens: Sequence[Token], i: int) -> bool:
    word = tokens[i].text
    if word in _JOINERS:
        return True
    if word == "-":
        return True
    return word in _SEPARATORS and not (word == "*" and i > 0 and tokens[i - 1].is_number)


def _is_denied(tokens: Sequence[Token], i: int) -> bool:
    """Whether the words beside a state say that it is none."""
    before = tokens[i - 1].text if i else ""
    after = tokens[i + 1].text if i + 1 < len(tokens) else ""
    match tokens[i].text:
        case "yesterday":
            return before in _NOT_COOKED_THEN
        case "dry":  # no dried food: "dry aged beef", "mushrooms a bit dry"
            return after in _DRY_HOW or before in _BIT or before in _NOT_SO
        case _:
            return before in _NOT_SO


def _was_thawed(tokens: Sequence[Token], after: int) -> bool:
    """Out of the freezer and into the fridge, hours ago."""
    if tokens[after - 1].text != "freezer":
        return False
    said = [token.text for token in tokens[after : after + _THAWS_WITHIN]]
    rest = " ".join(said[: said.index(FOOD)] if FOOD in said else said)
    return "fridge" in rest and bool(
        re.search(r"last night|yesterday|overnight|this morning|days? ago", rest)
    )


@lru_cache(maxsize=1)
def _mark_beginnings() -> frozenset[str]:
    return frozenset(said[0] for said in _marks())


def _mark_at(tokens: Sequence[Token], i: int) -> tuple[tuple[str, str], int] | None:
    if not _mark_beginnings() & {tokens[i].text, tokens[i].key}:
        return None
    for length in (4, 3, 2, 1):
        if i + length > len(tokens):
            continue
        for texts in (
            tuple(t.text for t in tokens[i : i + length]),
            tuple(t.key for t in tokens[i : i + length]),
        ):
            mark = _marks().get(texts)
            if mark:
                return mark, i + length
    return None


def _marks_inside(tokens: Sequence[Token], hit: Hit, found: Found) -> None:
    """A state word that is part of the matched phrase but not of the label: "fresh basil"."""
    label = found.named.name.split()
    for token in tokens[hit.start : hit.end]:
        mark = _marks().get((token.text,))
        if mark and mark[0] == "state" and token.text not in label and token.key not in label:
            if mark[1] == "leftover" or (token.text == "dry" and "wine" in found.named.name):
                continue
            found.add_state(mark[1])


def _is_holder(tokens: Sequence[Token], i: int, kind: str, unit: str) -> bool:
    """A container without a number ("tin chickpeas"); "can" and "slice" the verbs are none."""
    before = tokens[i - 1].text if i else ""
    after = tokens[i + 1].text if i + 1 < len(tokens) else ""
    if unit == "cup":
        return before in ("", ",", "\n", ".", "and")
    if unit in _OF_ONLY:
        counted = i >= 2 and before == FOOD and tokens[i].text != tokens[i].key and tokens[i - 2].is_number
        return counted or (kind == "container" and after == "of")
    if kind not in ("container", "count", "piece") or before in _SUBJECTS:
        return False
    if tokens[i].text != "can":
        return True
    behind = next((t.text for t in tokens[i + 1 :] if t.text != FOOD), "")
    verb = after == FOOD and i == 0 and behind in _AFTER_CAN
    return after in ("of", FOOD, "", ",", ";", "\n", ".", ")", "(") and not verb

"""What a cook takes back in the same breath: "how long for cod, no sorry, salmon" asks about salmon.

Only what stands between a thing and its like is a taking back: a food and a food, a number and a number.
Where a whole question follows ("I mean, how many grams is a cup of flour"), it is the one that counts.
"no" alone is one only between commas or dots, since "lasagne no cheese" rules something out.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from knowledge.answers.model import Mention, Question
from knowledge.answers.reading.heard import hears, meanings
from knowledge.foods.store import Store

_STOP = r"[,.;:!…–—-]"
_BARE = rf"(?:{_STOP}+\s*no\s*{_STOP}+|{_STOP}{{2,}}\s*no\s+(?=\w)|\s+no,?\s+but\s+)"
_BUT = re.compile(r"\sno,?\s+but\s", re.IGNORECASE)
_LEADING = re.compile(r"^(?:(?:the|a|an|some|it s|its|for|but|of)\s+)*", re.IGNORECASE)
_NUMBER_LAST = re.compile(r"(?:^|\s)\d[\d.,/]*(?:\s?[^\W\d]+)?\s*$")
_NUMBER_FIRST = re.compile(r"\d[\d.,/]*(\s?[^\W\d]+)?")
_NOT = re.compile(
    rf"(?:^|(?P<before>{_STOP}|\bfor|\bof|\babout)\s*)\bnot\s+(?P<out>[^,.;:!?]+?)\s*(?:,|\bbut\b)\s*(?=\w)",
    re.IGNORECASE,
)
_ENDING_NOT = re.compile(r",?\s+not\s+(?P<out>[\w ]+?)\s*(?=[?.!]|$)", re.IGNORECASE)
_ECHO = re.compile(r"\b(\w{4,}) \w+,? no,? (?=\1 )", re.IGNORECASE)  # "bitter kola no bitter leaf"
LEAST_ANEW = 4  # words of a question that is asked anew

Reader = Callable[[str], Question]


def as_meant(text: str, read: Reader, store: Store) -> str:
    """The message without what is taken back in it."""
    text = _ECHO.sub("", text)
    for marker in _marker(store).finditer(text):
        before, after = text[: marker.start()], text[marker.end() :].lstrip(" ,.;:-")
        meant = _replaced(before, marker[0], after, read, is_bare=not marker["said"])
        if meant is not None:
            return meant
    return _without_not(text, read)


def _marker(store: Store) -> re.Pattern[str]:
    words = sorted(meanings(store, "takes back")[""], key=len, reverse=True)
    said = "|".join(re.escape(word).replace(r"\ ", r",?\s+") for word in words)
    return re.compile(rf"{_BARE}|(?P<said>\s*{_STOP}*\s*\b(?:{said})\b\s*{_STOP}*\s*)", re.IGNORECASE)


def _replaced(before: str, between: str, after: str, read: Reader, *, is_bare: bool) -> str | None:
    """The message with what stands before a marker put right, None where nothing like it follows."""
    if not before.strip() or not after.strip():
        return None
    if _BUT.search(between):
        return after
    told, new = read(before), read(after)
    after = _LEADING.sub("", after)
    ends, starts = _last_food(told), _first_food(new)
    if starts is not None:
        if ends is None and told.mentions and _is_all_food(new):  # "how long does milk keep, I mean yogurt"
            return _in_place(before, told.mentions[-1].phrase, after)
        if ends is not None and ends.food.id != starts.food.id:
            return f"{_cut_end(before, ends.phrase)} {after}"
        if ends is None and not told.mentions and _is_what_is(before):
            return f"{before.rsplit(None, 1)[0]} {after}"
        return after if not is_bare and _asks_anew(new) else None
    number = _NUMBER_LAST.search(before)
    if number and (first := _NUMBER_FIRST.match(after)):
        kept = number[0].split()[1:] if not first[1] else []
        return " ".join((before[: number.start()].strip(), first[0], *kept, after[first.end() :].strip()))
    return after if not is_bare and _asks_anew(new) and new.mentions else None


def _is_what_is(before: str) -> bool:
    """ "What is kudzu": one word that no table knows, at the end."""
    return re.search(r"\bwhat(?:\s+is|'?s|s)\s+(?:an?\s+)?[^\W\d]+\s*$", before, re.IGNORECASE) is not None


def _asks_anew(question: Question) -> bool:
    first = question.words[:1]
    asks = bool(first) and hears(question, "asks anew", plain=f" {first[0]} ")
    return len(question.words) >= LEAST_ANEW and (asks or question.says("how", "in grams", "to grams"))


def _last_food(question: Question) -> Mention | None:
    """The food that a text ends with."""
    last = question.mentions[-1] if question.mentions else None
    return last if last is not None and last.end == len(question.words) else None


def _first_food(question: Question) -> Mention | None:
    """The food that a text begins with, behind an article."""
    first = question.mentions[0] if question.mentions else None
    beginning = " ".join(question.plain.split()[: first.start]) if first else ""
    return first if first is not None and not _LEADING.sub("", f"{beginning} ").strip() else None


def _in_place(text: str, phrase: str, other: str) -> str | None:
    """A text with another food for the one that it names, None where that is spelled otherwise."""
    named = re.compile(rf"\b{re.escape(phrase)}\b", re.IGNORECASE)
    return named.sub(other.rstrip(" .?!"), text, count=1) if named.search(text) else None


def _cut_end(text: str, phrase: str) -> str:
    """A text without the words of a food at its end, however they are spelled."""
    return " ".join(text.split()[: -len(phrase.split())])


# "Not X, Y".


def _without_not(text: str, read: Reader) -> str:
    """ "Not chicken, turkey": what is not meant is left out where something else is named."""
    for found in (_NOT.search(text), _ENDING_NOT.search(text)):
        if found is None:
            continue
        rest = f"{text[: found.start('out')]}{text[found.end() :]}"
        rest = re.sub(r"\bnot\s+(?=\W|\w)", "", f"{rest}", count=1)
        out, kept = read(found["out"]), read(rest)
        if _is_all_food(out) and kept.mentions and not _speaks_of_eaters(kept):
            return rest.strip()
    return text


def _is_all_food(question: Question) -> bool:
    named = sum(m.end - m.start for m in question.mentions)
    articles = sum(word in ("the", "a", "my") for word in question.words)
    return bool(question.mentions) and named + articles == len(question.words)


def _speaks_of_eaters(question: Question) -> bool:
    return hears(question, "restraint is likely") or hears(question, "speaks of a diet")

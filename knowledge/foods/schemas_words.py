"""What the tables of words hold: names of foods, and the reader's and the answerer's vocabulary."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from knowledge.foods.columns import ALLERGEN
from knowledge.foods.kinds import (
    SOURCE,
    TEXT,
    By,
    Form,
    Id,
    Known,
    Pattern,
    Schema,
    listed,
    maybe,
    number,
    one_of,
    rank,
    table,
)

REGION = one_of(
    "AU", "Africa", "Caribbean", "EU", "East Asia", "IN", "IT", "Kenya", "LatAm", "Middle East", "NG",
    "SE Asia", "South Africa", "UK", "US",
)  # fmt: skip
"""Where a name is used; nothing for everywhere."""

_PART = re.compile(r"\{([a-z]+)\}")
_BUILT_IN = frozenset({"food", "num"})


@dataclass(frozen=True)
class Cue(Pattern):
    """A regular expression with `{parts}`: fragments of the same table, a food, a number."""

    def refuses(self, entry: str, known: Known) -> str:
        fragments = known("words_cues.value") or frozenset()
        for part in _PART.findall(entry):
            if part not in _BUILT_IN | fragments:
                return f"there is no fragment {part!r} for {entry!r}"
        return super().refuses(_PART.sub("(?:x)", entry), known)


_weight = number(-5, 5)
KINDS = ("plan", "swap", "cook_event", "question", "setting", "other")
SIDES = ("leaves", "comes", "stays")
EVENTS = (
    "started", "done_step", "delay", "probe", "not_done", "too_fast", "skip", "stop", "oven_not_hot",
    "forgot",
)  # fmt: skip

WORDS: Mapping[str, Schema] = {
    "names": table(
        "name+food_id",
        name=TEXT, food_id=Id("food", "foods.id"), region=maybe(REGION), rank=maybe(rank(0, 9)),
    ),
    "names_text": table(
        "name",
        name=TEXT, synonyms=maybe(listed(TEXT)),
        group=one_of(
            "bread", "dairy", "egg", "fat", "fermented", "fish", "fruit", "grain", "herb", "legume", "meat",
            "nut", "pantry", "plant protein", "poultry", "prepared", "seafood", "spice", "unknown",
            "vegetable",
        ),
    ),
    "units_kitchen": table(
        "unit",
        unit=TEXT, words=maybe(listed(TEXT)),
        kind=one_of("container", "count", "piece", "vague", "volume", "weight"),
        grams=maybe(number(0.1, 5000, "g")), source=maybe(SOURCE),
    ),
    "words_barred": table(
        "word", word=TEXT, diet=maybe(TEXT), allergens=listed(ALLERGEN)
    ),
    "words_common": table("word", word=TEXT),
    "words_kitchen": table("word", word=Form("[a-z]{4,}", "one plain word")),
    "words_mass": table("word", word=TEXT),
    "words_cues": table(
        topic=one_of(
            "amends", "aside", "event", "fragment", "intent", "kind", "off", "same food", "setting",
            "several", "swap", "unwanted", "warm", "wish",
        ),
        value=maybe(TEXT), pattern=Cue(),
    ),
    "words_diets": table("diet", diet=TEXT, pattern=Pattern()),
    "words_dishes": table("dish", dish=TEXT, style=maybe(Id("style", "styles.style"))),
    "words_emoji": table("emoji", emoji=TEXT, words=TEXT),
    "words_forms": table("word", word=TEXT, cut=Id("cut", "cuts.id")),
    "words_people": table("word", word=TEXT, kind=one_of("noun", "pronoun")),
    "words_places": table(
        "word", word=TEXT, kind=one_of("calendar", "country", "nationality", "town")
    ),
    "words_events": table("sign", sign=TEXT, source=SOURCE, **dict.fromkeys(EVENTS, _weight)),
    "words_kinds": table("sign", sign=TEXT, source=SOURCE, **dict.fromkeys(KINDS, _weight)),
    "words_sides": table("sign", sign=TEXT, source=SOURCE, **dict.fromkeys(SIDES, _weight)),
    "words_phrases": table(
        "phrase",
        phrase=TEXT, foods=listed(Id("name of a food", "foods.name")),
        state=maybe(one_of("canned", "cooked", "dried", "frozen", "leftover", "raw")),
        cut=maybe(Form("[a-z -]+", "a way of cutting")),
        unit=maybe(Id("unit", "units_kitchen.unit")),
    ),
    "words_questions": table(
        "word+role",
        word=TEXT,
        role=one_of(
            "ambiguous", "asking", "boiled", "cut named", "diet", "everyday fat", "filler", "form before",
            "form behind", "heard", "loose", "made", "measured", "noted", "ordinary", "pairs", "place",
            "region", "restraint", "small", "south", "stop",
        ),
        means=maybe(TEXT),
    ),
    "craft_words": table("notion", notion=Form("[a-z]+", "a notion"), words=listed(TEXT)),
    "heard": table(
        "topic+means", topic=Form("[a-z, ]+", "plain words"), means=maybe(TEXT), words=listed(TEXT)
    ),
    "words_senses": table("word+sense", word=TEXT, sense=Form("[a-z]+", "a sense")),
    "words_states": table(
        "phrase",
        phrase=TEXT, kind=one_of("cut", "state"),
        value=By("kind", {
            "state": one_of("canned", "cooked", "dried", "frozen", "leftover", "raw", "thawed"),
            "cut": Form("[a-z -]+", "a way of cutting"),
        }),
    ),
}  # fmt: skip

"""What lies under the food in an oven, by a cook's or a chart's words: one of `physics.media.SHEETS`.

"dark pan", "aluminium tray", "glass dish", "foil-lined sheet"; "my tray is black". Where
nothing is said it is a used one, "dull".
"""

from __future__ import annotations

import re

USUAL = "dull"
_WARE = r"(?:(?:sheet|baking|roasting|oven|metal|cookie) )?(?:pan|sheet|tray|tin|dish|ware)s?\b(?! ?bakes?\b)"
_SAID = (
    ("foil", r"foil[ -]lined|lined with foil|on foil", False),
    ("glass", r"glass|stoneware|ceramic|earthenware", True),
    ("dark", r"dark|black|cast[ -]iron|non-?stick|enamel(?:led)?", True),
    ("bright", r"bright|shiny|new|alumini?um|stainless(?: steel)?", True),
    ("dull", r"dull|used", True),
)
_SHEETS = tuple(
    (sheet, rf"\b(?:{said}) {_WARE}|\b{_WARE} (?:is|are) (?:{said})\b" if of_ware else rf"\b(?:{said})\b")
    for sheet, said, of_ware in _SAID
)


def sheet_said(text: str) -> str | None:
    """The sheet that a text in lower case names, None where it says nothing."""
    return next((sheet for sheet, words in _SHEETS if re.search(words, text)), None)


def without_sheet(text: str) -> str:
    """The text less the words for what lies under the food: a dark pan is no way of frying."""
    return re.sub("|".join(words for _, words in _SHEETS), " ", text)

"""Long names are said once: afterwards "boneless skinless chicken thighs" are "chicken thighs"."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from knowledge.planner.draft import Draft
from knowledge.planner.model import Step
from knowledge.planner.words import plural

PASSING = re.compile(
    r"^(?:(?:boneless|skinless|bone-in|skin-on|bone in|skin on"
    r"|long[- ]grain white|long[- ]grain|short[- ]grain"
    r"|medium[- ]grain|fresh|ripe|chopped|diced|crushed|sliced|thinly sliced|peeled|free-range|organic|lean"
    r"|large|small|big)(?:,? and |, | ))+"
)


def shortened(steps: Sequence[Step], draft: Draft) -> list[Step]:
    """The steps in order, each long name in full only where it comes first."""
    names = {p.way.dish.name for p in draft.placed}
    others = {n for s in (*draft.dinner.seasonings, *draft.dinner.sides) for n in (s.name, plural(s.name))}
    others |= {n for name in names for n in (name, plural(name))}
    found = list(steps)
    for name in sorted(names, key=len, reverse=True):
        short = PASSING.sub("", name)
        if short != name and not any(_is_like(short, other, name) for other in others):
            found = _after_the_first(found, name.removesuffix(short), short)
    return found


def _is_like(short: str, other: str, name: str) -> bool:
    """Whether something else in the dinner would be meant by the short name."""
    return other not in (name, plural(name)) and short in other


def _after_the_first(steps: Sequence[Step], prefix: str, short: str) -> list[Step]:
    """The prefix is dropped from its second mention on; a sentence keeps its capital."""
    pattern = re.compile(re.escape(prefix) + f"(?={re.escape(short)})", re.IGNORECASE)
    seen = False
    found = []
    for step in steps:
        text = ""
        at = 0
        for match in pattern.finditer(step.text):
            text += step.text[at : match.start()]
            at = match.end()
            if not seen:
                text += match.group()
            elif match.group()[0].isupper():
                text += step.text[at].upper()
                at += 1
            seen = True
        found.append(replace(step, text=text + step.text[at:]))
    return found

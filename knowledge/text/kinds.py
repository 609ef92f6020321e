"""What a message wants: plan, swap, event, question, setting or nothing we can do.

Rules first, in the order of trust: attacks and noise, then what holds for later, then
what just happened, then a change, a question, and last the plan, which is what a list
of foods means when nothing else is said. Rules never cover all that people say: where
they are not certain, the words of the message are weighed (`likely`), and what the rules
say is weighed with them.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from knowledge.text import likely
from knowledge.text.cues import cue, cues
from knowledge.text.events import event_type
from knowledge.text.features import features
from knowledge.text.model import Context, EventType, Intent, Kind, Mode
from knowledge.text.normalise import FOOD
from knowledge.text.settings import is_setting
from knowledge.text.vessels import has_oven

VERY_CLEAR = 0.8  # probability from which the words of a message overrule a list of foods, eaters or a time
CLEAR = 0.6  # ... for a swap with a word of one: without, "medium rare if you can, leeks" stays a dinner
_OF_A_SWAP = frozenset(["@swap", "@absent"])
MANY_FOODS = 4
A_DINNER = 3  # from this many foods on, a list is one of its own


@dataclass(frozen=True, slots=True)
class Signs:
    """What is known of a message when its kind is decided."""

    text: str  # flat
    masked: str
    foods: int  # foods at hand, refused ones not counted
    refused: int
    amounts: int  # foods with an amount or a state
    measured: int  # foods with an amount in a unit
    bare: bool  # foods and amounts, and not a word beside them
    swap: bool
    diet: bool
    people: bool
    deadline: bool
    vessel: bool
    vessel_out: bool
    lifted: bool  # a diet holds no longer
    wish: bool
    unknown: bool


# What was fitted knew of no conversation: how much likelier each kind is where one stands.
_ODDS: Mapping[Mode, Mapping[Kind, float]] = {
    Mode.IDLE: {},
    Mode.PLANNED: {Kind.PLAN: 2.0},
    Mode.COOKING: {Kind.COOK_EVENT: 3.0, Kind.PLAN: 0.5},
}
_FACTS = (
    "measured",
    "bare",
    "swap",
    "diet",
    "people",
    "deadline",
    "vessel",
    "vessel_out",
    "lifted",
    "wish",
    "unknown",
)
_WONDERED = re.compile(
    r"\bjust (?:wondering|curious|asking)\b|\bout of (?:interest|curiosity)\b|\bhypothetically\b|"
    r"^\W*(?:if|suppose|supposing|say|what if|in case)\b.*\b(?:would|could|should|do i|is it|are they|will)\b"
)


def kind_of(signs: Signs, context: Context) -> Kind:
    """The kind of a message: by rules where they are certain, else the likeliest by its words."""
    if _is_idle_talk(signs):
        return Kind.OTHER
    if _is_of_the_house(signs, context):
        return Kind.SETTING
    if _WONDERED.search(signs.text) and signs.foods < MANY_FOODS and not signs.measured and not signs.swap:
        return Kind.QUESTION  # "if it ran an hour late, would it still be safe?"
    if context.mode is Mode.COOKING and cue("kind", "reading").match(signs.masked):
        return Kind.COOK_EVENT
    if context.mode is not Mode.IDLE and cue("swap", "whole").match(signs.masked):
        return Kind.SWAP  # "what if I used frozen ones?": asked of the plan, not of the world
    ruled = _by_rules(signs, context)
    if signs.bare or intent_of(signs.text) is not None:
        return ruled
    if ruled is Kind.QUESTION and cue("kind", "complaint").search(signs.text):
        return ruled  # "soup too thin"
    if ruled is Kind.SETTING and not signs.swap and _FOR_EVER.search(signs.text):
        return ruled
    hurried = FOOD not in signs.masked and cue("kind", "hurry").match(signs.masked)
    if context.mode is Mode.PLANNED and hurried:
        return Kind.PLAN  # "is there a quicker way?": asked of the plan on the table
    if context.mode is not Mode.IDLE and _is_another_way(signs, context):
        return Kind.PLAN
    found = features(signs.masked, facts(signs))
    chances = likely.kinds(found)
    odds = _ODDS[context.mode]
    able = [kind for kind in Kind if kind is ruled or _can_be(kind, signs, context)]
    best = max(able, key=lambda kind: chances[kind] * odds.get(kind, 1.0))
    listed = signs.foods > 1 or signs.measured or signs.people or signs.deadline
    enough = CLEAR if best is Kind.SWAP and found & _OF_A_SWAP else VERY_CLEAR
    return ruled if ruled is Kind.PLAN and listed and chances[best] < enough else best


def facts(signs: Signs, *, rules: bool = True) -> list[str]:
    """What is known of a message beside its words, as features; with or without what the rules make of it."""
    counts = (("have", signs.foods, 4), ("refused", signs.refused, 2), ("amounts", signs.amounts, 3))
    found = [f"{name}={min(n, most)}" for name, n, most in counts]
    found += [f"is {name}" for name in _FACTS if getattr(signs, name)]
    if rules:
        event = event_type(signs.masked)
        found += [f"rules={_by_rules(signs, Context())}", likely.event_fact(event)]
    return found


def _is_of_the_house(signs: Signs, context: Context) -> bool:
    """A diet lifted, or an oven that is there: what holds from now on, whatever is on the table."""
    if signs.lifted:
        return signs.foods < 2
    return (
        context.mode is not Mode.COOKING
        and FOOD not in signs.masked
        and "?" not in signs.text
        and has_oven(signs.text)
    )


def _is_idle_talk(signs: Signs) -> bool:
    """Attacks, greetings, thanks, abuse and what is none of our business."""
    text = signs.text
    if cue("kind", "attack").search(text):
        return True
    if cue("kind", "greeting").match(text) or cue("kind", "thanks").match(text):
        return True
    return signs.foods < 2 and bool(
        cue("kind", "off_topic").search(text) or cue("kind", "abuse").search(text)
    )


def _can_be(kind: Kind, signs: Signs, context: Context) -> bool:
    """Whether a message has what a kind cannot do without."""
    named = signs.masked.count(FOOD)
    match kind:
        case Kind.SWAP:
            return named > 0
        case Kind.PLAN | Kind.SETTING:
            return True
        case Kind.OTHER:
            return signs.foods < MANY_FOODS
        case Kind.COOK_EVENT:
            told = context.mode is not Mode.PLANNED or _happened(signs)
            return told and signs.foods < MANY_FOODS and not signs.measured
        case Kind.QUESTION:
            return signs.foods <= MANY_FOODS


_ANOTHER_WAY = re.compile(
    r"\b(?:what if|what about|how about|(?:can|could) (?:it|this|that|we|i)|do it|make it|cook it|use|"
    r"switch|change|move it|rather|instead|try|prefer|lets|only|max|less|more|please|but|with)\b"
)
_REQUESTED = re.compile(r"^\W*(?:can|could) (?:we|you) (?:please )?(?:eat|have|make|do|finish|serve|plan)\b")
_AT_THE_STOVE = re.compile(
    r"\b(?:put|popped|went|gone|just|already|is|are|its|ive|been) (?:\w+ )?(?:in|on|into)\b"
)


_CAME_ABOUT = re.compile(r"\b(?:in|on|off)\b(?! (?:\d|an?\b|my\b|the\b))")
_NOTHING = re.compile(r"\b(?:no|not|nothing|none|never|empty|\w+nt)\b")


def _happened(signs: Signs) -> bool:
    """Whether a message has words of an event, or at least says that something is in, on or off."""
    if event_type(signs.masked) is not None:
        return True
    return bool(_CAME_ABOUT.search(signs.text)) and not _NOTHING.search(signs.text)


def _is_another_way(signs: Signs, context: Context) -> bool:
    """The plan in hand otherwise: in another vessel, sooner, crisper ("what if I use the oven?")."""
    if FOOD in signs.masked or _AT_THE_STOVE.search(signs.text) or not _ANOTHER_WAY.search(signs.text):
        return False
    if signs.vessel:
        return True
    said = signs.vessel_out or signs.people or signs.deadline or signs.wish
    asked = cue("kind", "question").match(signs.text) and not _REQUESTED.match(signs.text)
    return context.mode is Mode.PLANNED and said and not asked


def _by_rules(signs: Signs, context: Context) -> Kind:
    text, masked = signs.text, signs.masked
    lists = signs.foods >= 3 or (signs.foods >= 2 and signs.amounts >= 1)
    setting = is_setting(masked)
    event = event_type(masked)
    lists = lists and (event is not EventType.PROBE or signs.foods >= 3)
    if event is EventType.STOP and not lists:
        return Kind.COOK_EVENT
    if setting and not lists and not _urgent(event, text) and _lasting(signs) and not _swaps_tonight(signs):
        return Kind.SETTING
    if signs.swap and not (lists and signs.foods >= 4) and not _one_sided(signs, event):
        return Kind.SWAP
    if signs.foods >= 3 and cue("kind", "plan_ask").search(text):
        return Kind.PLAN
    if event and not lists and _is_event(event, signs, context):
        return Kind.COOK_EVENT
    if _asks(signs, lists):
        return Kind.QUESTION
    if signs.foods or signs.refused or signs.unknown:
        return Kind.PLAN
    if cue("kind", "complaint").search(text) and not event:
        return Kind.QUESTION  # "my sauce is too salty": what to do about it
    if event:
        return Kind.COOK_EVENT
    if setting:
        return Kind.SETTING
    if signs.vessel_out and context.mode is Mode.IDLE and not (signs.people or signs.deadline):
        return Kind.SETTING  # "no pressure cooker": nothing else it could be about
    if signs.people or signs.deadline or signs.vessel or signs.vessel_out:
        return Kind.PLAN
    if signs.diet:
        return Kind.SETTING
    if cue("kind", "plan_ask").search(text):
        return Kind.QUESTION
    return Kind.OTHER


def _urgent(event: EventType | None, text: str) -> bool:
    return event in (EventType.FORGOT, EventType.OVEN_NOT_HOT) and bool(
        re.search(r"\bnow\b|\btonight\b|isnt heating|still cold", text)
    )


def _lasting(signs: Signs) -> bool:
    """A setting carries no list of foods at hand; one food may be the refused one."""
    return signs.foods == 0 or (
        bool(
            re.search(
                r"\b(?:suggest|from now on|always|never|remember|allerg|hates?|british|american)\w*",
                signs.text,
            )
        )
        and signs.foods <= 1
        and not signs.amounts
    )


def _swaps_tonight(signs: Signs) -> bool:
    return signs.swap and not is_lasting(signs.text)


_FOR_EVER = re.compile(r"\b(?:from now on|for good|always|never|remember)\b")


def is_lasting(text: str) -> bool:
    """Whether a text says that it holds from now on, not tonight only."""
    named = re.search(r"\b(?:british|american|suggest\w*|allerg\w*)\b", text)
    return bool(_FOR_EVER.search(text) or named)


def _one_sided(signs: Signs, event: EventType | None) -> bool:
    """A food refused or missing in a list of others is no swap."""
    return (signs.foods >= 3 and signs.refused >= 1) or (
        event is EventType.SKIP and signs.masked.count(FOOD) < 2 and "instead" not in signs.text
    )


def _is_event(event: EventType, signs: Signs, context: Context) -> bool:
    text = signs.text
    asked = bool(cue("kind", "question").search(text))
    if context.mode is Mode.COOKING and not re.search(r"^\W*(?:how|what|why|is it safe|can i eat)\b", text):
        return True
    if event is EventType.PROBE:
        return not re.search(
            r"\b(?:is|are) (?:\w+ ){0,3}(?:safe|ok|done|cooked) at\b|^\W*(?:what|whats|how|is|are|"
            r"does|should|can)\b|\bwhat (?:temp|internal)",
            text,
        ) or bool(
            re.search(r"\b(?:reads?|says|probe|thermometer|its at)\b.*\d", text)
            and not re.match(r"\W*(?:what|is it|should)", text)
        )
    if event is EventType.DELAY:
        return not re.match(r"\W*(?:how|what|why|is it)\b", text) and signs.foods <= 1
    if (
        "?" in text
        and asked
        and event in (EventType.NOT_DONE, EventType.TOO_FAST, EventType.SKIP)
        and re.search(r"how (?:long|much|do)|poison|is it (?:safe|ok)|why", text)
    ):
        return False
    if event is EventType.SKIP:
        return not re.match(r"\W*(?:how|what|why|is it)\b", text)
    if asked and re.match(
        r"\W*(?:how|what|whats|why|is|are|can|does|do|should|when|will|would|which)\b", text
    ):
        return False
    return not (
        event in (EventType.STARTED, EventType.DONE_STEP)
        and signs.amounts
        and signs.foods
        and not re.search(r"\b(?:added|put|went|in at|flipped|stirred)\b", text)
    )


def _asks(signs: Signs, lists: bool) -> bool:
    text = signs.text
    if lists and signs.foods >= 3:
        return False
    if cue("kind", "plan_ask").search(text) and signs.foods >= 1:
        return False
    if "?" in text and cue("kind", "question").search(text):
        return True
    return (
        bool(cue("kind", "question").match(text) and (signs.foods <= 2 or text.endswith("?")))
        or bool(cue("kind", "question").search(text) and signs.foods <= 2 and not signs.amounts)
        or bool(
            re.search(r"\bhow (?:long|much|many|hot|to|do)\b|\bis it safe\b|\bwhat temp", text)
            and signs.foods <= 2
        )
    )


def intent_of(text: str) -> Intent | None:
    """A short request about the conversation itself, if the text is one."""
    if cue("kind", "abuse").search(text):
        return Intent.ABUSE
    for intent, pattern in (*cues("intent"), *((n, cue("kind", n)) for n in ("greeting", "thanks"))):
        if pattern.search(text):
            return Intent(intent)
    return None


def amends(text: str, context: Context, foods: int) -> bool:
    """Whether a message about foods changes the plan in hand rather than beginning a new one.

    "I have salmon" adds to it; "I have salmon, rice and peas" is another fridge.
    """
    if context.mode is Mode.IDLE:
        return False
    return bool(cue("amends", "").search(text)) or (
        foods < A_DINNER and bool(cue("amends", "have").search(text))
    )


def about_words(text: str) -> bool:
    """Whether a setting speaks of how to say things, not of what to eat."""
    return bool(re.search(r"\b(?:british|american|english|say|call (?:it|them)|language)\b", text))


_ONLY_NEXT = re.compile(
    r"^\W*(?:and |so |ok(?:ay)? |right )*(?:what(?:s| is) next|next(?: step)?|now what|what now)\W*$"
)


def did_something(text: str) -> bool:
    """Whether "what's next" comes with the news that a step is done."""
    return not _ONLY_NEXT.match(text)

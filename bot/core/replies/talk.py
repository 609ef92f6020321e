"""Greetings, help, settings, and what is said when nothing could be done."""

from __future__ import annotations

from collections.abc import Sequence

from bot.core.replies.layout import lines, listed, paragraphs, said
from bot.core.state import Profile
from knowledge.units import temperature

EXAMPLE = "4 chicken thighs, 3 carrots, potatoes, half a cabbage, for 3, by 7"

HELLO = (
    "Hello. Text me what is in the fridge and I plan a dinner with one vessel to wash, "
    f"then tell you what to do when.\n\nFor example: {EXAMPLE}"
)

HELP = (
    "Send what you have, in any words: amounts, how many eat, by when.\n"
    f"For example: {EXAMPLE}\n\n"
    "Then:\n"
    "• change it: “no carrots”, “make it 6”, “use the pot”, “more Thai”, “undo”\n"
    "• ask: “parsnip instead of carrot?”, “why?”, “is chicken safe at 70 C?”\n"
    "• “start”: I remind you of every step; answer “done”, “10 min late”, “still hard”, “stop”\n"
    "• set up: “I'm vegetarian”, “oven goes to 220”, “we are 4”, “settings”"
)

THANKS = "Glad to help."
THANKS_COOKING = "Glad to help. I'll keep the time."
CALM = "I'm only good at dinner. Tell me what's in the fridge and I'll plan it."
EMPTY = f"That came through empty. Send me what you have, for example: {EXAMPLE}"
NOTHING_EDIBLE = f"I found nothing to cook in that. Send me what you have, for example: {EXAMPLE}"
SAY_COOKING = "You can say “done”, “what's next”, “10 min late”, “still hard” or “stop”."
NO_PLAN_YET = f"There is no plan yet. Send me what you have, for example: {EXAMPLE}"
NO_COOK = "Nothing is cooking right now. Send me what you have and I'll plan it."
NOT_STARTED = "We haven't started yet. Say “start” and I'll keep the time."
NOTHING_TO_UNDO = "There is no earlier plan to go back to."
YES_TO_WHAT = "Yes to what? Say “start” to begin, or tell me what to change."
NO_TO_WHAT = "All right. Say “start” when you want to begin, or tell me what to change."
FORGOTTEN = "The plan is off the table. Send me a list when you want another."
NOTHING_TO_FORGET = "There is nothing on the table to forget."
SEND_EXAMPLE = f"Send me what you have, for example: {EXAMPLE}"
LEFT_OUT = "Left out, then. The plan stands."
GO_ON = "Noted. The cook goes on; say “done”, “later” or “what's next”."
HELLO_AGAIN = "Hello. Your plan is ready: say “start”, or change it (“no carrots”, “make it 6”)."
KEPT = "Kept as it was."
OLD_BUTTON = "That button belongs to an earlier message."
OLD_PLAN = "That button belongs to an earlier plan. This is the one on the table:"

ODD = {
    "photo": "I can't see photos. Write me what's in it, for example: " + EXAMPLE,
    "voice": "I can't hear voice notes. Write it in a line, for example: " + EXAMPLE,
    "sticker": "Nice. In words I can do more, for example: " + EXAMPLE,
}


def unknown_command(command: str) -> str:
    """A slash command that does not exist."""
    name = said("/" + command)
    return f"I don't know {name}. There are /start, /stop, /plan, /help and /settings; or just write."


def odd(kind: str) -> str:
    """A message without text."""
    return ODD.get(kind, "I can only read text. Write me what you have, for example: " + EXAMPLE)


def not_understood(words: str, mode: str) -> str:
    """What was not understood, in the cook's own words, and what can be said instead."""
    if mode == "cooking":
        return f"I didn't get {said(words)}; your cook goes on. {SAY_COOKING}"
    if mode == "planned":
        return (
            f"I didn't get {said(words)}; your plan stands. "
            "Say “start”, a change such as “no carrots”, or send a new list."
        )
    return f"I found nothing to cook in {said(words)}. {SEND_EXAMPLE}"


def not_in(mode: str) -> str:
    """An event that is not welcome in this mode."""
    return {"idle": NO_PLAN_YET, "planned": NOT_STARTED}.get(
        mode, f"Not now: your cook goes on. {SAY_COOKING}"
    )


SOURCES_MAX = 2  # the first ones carry the answer; more would fill the screen


def answer(known: bool, text: str, sources: Sequence[str]) -> str:
    """An answer to a kitchen question; the sources stand under it."""
    return paragraphs(text, f"Source: {'; '.join(sources[:SOURCES_MAX])}" if known and sources else "")


SETTING_UNCLEAR = "I can't keep that yet. I keep units, people, diet, allergies, oven, altitude and vessels."
RESET_ASK = (
    "Forget everything I keep about you: people, diet, allergies, kitchen, units, the foods you taught me?"
)
RESET_YES, RESET_NO = "Forget it all", "Keep it"
RESET_DONE = "Forgotten. From now on: an ordinary kitchen, no diet, no allergies. A running cook goes on."
RESET_KEPT = "Kept as it is. “settings” shows it."
TOWN = (
    "I know no towns. Tell me how high you live, for example “we're at 1600 m”; "
    "below 300 m it matters little."
)
UNITS_US = "ounces and Fahrenheit from now on"
UNITS_METRIC = "grams and Celsius from now on"
FAN = "your oven has a fan"
NO_FAN = "your oven has no fan"
SHEETS = {
    "dark": "a dark sheet", "dull": "a used sheet, neither dark nor bright", "bright": "a bright sheet",
    "foil": "a sheet lined with foil", "glass": "a glass dish in the oven",
}  # fmt: skip


def oven_max(value_degC: float, units: str) -> str:
    """The oven's highest setting."""
    return f"your oven goes up to {temperature(value_degC, units)}"


def zone(offset_min: int) -> str:
    """The cook's clock."""
    hours, minutes = divmod(abs(offset_min), 60)
    return f"your clock is UTC{'+' if offset_min >= 0 else '-'}{hours}" + (
        f":{minutes:02d}" if minutes else ""
    )


def people(value: float) -> str:
    """How many eat."""
    return f"cooking for {value:g}"


def lifted(diet: str, was_kept: bool) -> str:
    """A diet that holds no longer."""
    rule = f"“{diet}” " + ("holds no longer" if was_kept else "was not kept anyway")
    return rule


def changed(parts: Sequence[str]) -> str:
    """What was set, in one line."""
    return f"Noted: {listed(parts)}."


def known_already(food: str) -> str:
    """A lesson about a food of the tables."""
    return f"I know {food} already and figure it by its own. Name it in a list, a swap or “also …”."


def teach_what(like: str) -> str:
    """A lesson that does not say about what."""
    return f"Which food is like {like}? Name it: “salsify is like {like}”."


def joined(food: str) -> str:
    """A food said alone beside a plan."""
    return f"With {food} as well. For a dinner of its own, list what goes with it; “undo” takes this back."


def tonight(barred: Sequence[str], dropped: Sequence[str], allergy: bool) -> str:
    """An allergy or a food not wanted that came with a dinner: said back, so that the cook can trust it."""
    labels = " Packets differ, so read the labels too." if allergy else ""
    out = f"; left out: {listed(dropped)}" if dropped else ""
    return f"Noted for tonight: {listed(barred)}{out}.{labels}"


def oven_offset(offset_K: float, units: str) -> str:
    """An oven that runs hot or cold: what helps meanwhile."""
    degrees = f"{abs(round(offset_K * 9 / 5))} °F" if units == "us" else f"{abs(round(offset_K))} °C"
    way = "lower" if offset_K > 0 else "higher"
    return f"I don't keep that yet: set the dial {degrees} {way} than my plans say."


def no_such_size(vessel: str, words: str) -> str:
    """A size that the tables don't have."""
    return f"I know no {vessel} of {said(words)}. Which of the usual sizes comes nearest?"


def cooking_at(value_m: float, units: str) -> str:
    """The altitude, as kept."""
    return f"cooking at {altitude(value_m, units)}"


def setting_out_of_range(what: str, low: str, high: str) -> str:
    """A setting that no kitchen has."""
    return f"{what} should lie between {low} and {high}. Which is it?"


def profile(profile: Profile) -> str:
    """All that holds beyond tonight."""
    kitchen = profile.kitchen
    vessels = [v.id + (f" ({v.size})" if v.size else "") for v in kitchen.vessels]
    offset = profile.utc_offset_min
    return lines(
        (
            "What I keep for you:",
            f"• vessels: {', '.join(vessels)}",
            f"• oven: up to {temperature(kitchen.oven_max_degC, kitchen.units)}, "
            + ("fan" if kitchen.fan_oven else "no fan")
            + (f", {SHEETS[kitchen.sheet]}" if kitchen.sheet != "dull" else ""),
            f"• altitude: {altitude(kitchen.altitude_m, kitchen.units)}",
            f"• units: {'US' if kitchen.units == 'us' else 'metric'}",
            f"• people: {profile.eaters:g}" if profile.eaters else "• people: 2 unless you say",
            f"• diet: {', '.join(profile.diets)}" if profile.diets else "",
            f"• never: {', '.join(profile.excluded)}" if profile.excluded else "",
            lines(f"• {name} cooks like {like}" for name, like in profile.taught),
            f"• {zone(offset)}" if offset is not None else "",
            "To change one, say so: “we are 4”, “oven goes to 220”, “vegetarian”, “not vegetarian any more”.",
        )
    )


def altitude(value_m: float, units: str) -> str:
    """A height: "1600 m", "5200 ft"."""
    return f"{round(value_m / 0.3048, -2):.0f} ft" if units == "us" else f"{value_m:.0f} m"


def lesson_forgotten(name: str) -> str:
    """A taught food, forgotten."""
    return f"Forgotten: {said(name)}."

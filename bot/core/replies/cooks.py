"""What is said while something is on the heat. Short: read at arm's length in two seconds."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import datetime

from bot.core.replies.layout import (
    clock,
    duration,
    exact_minutes,
    lines,
    listed,
    paragraphs,
    sentence,
)
from knowledge.planner.model import Do, Step
from knowledge.units import temperature

DONE, LATER, NOT_YET, CARRY_ON = "Done", "Later (5 min)", "Not done yet", "Carry on"
JUST_NOW, ON_TIME = "Just now", "On time"
ALL_DONE, FROM_HERE, STOP_IT = "All done", "Go on from here", "Stop"
FROM_THE_TOP = "No, from the top"
STOP_AND_START, KEEP_COOKING = "Stop that, start this", "Keep cooking"

SHORT = {
    Do.BROWN: "brown {}",
    Do.ADD: "{} in",
    Do.TURN: "turn {}",
    Do.TAKE_OUT: "{} out",
    Do.RELEASE: "let the pressure out",
    Do.CHECK: "check {}",
    Do.SERVE: "serve",
}
CLAUSE_MAX = 72  # characters of a step's first clause that stand for the step


def short(step: Step, names: Sequence[str]) -> str:
    """A step in a few words, for "next": its kind and foods, or the first clause of its text."""
    if step.do in SHORT and (names or "{}" not in SHORT[step.do]):
        return SHORT[step.do].format(listed(names))
    clause = re.split(r"[,;:.]( |$)", step.text, maxsplit=1)[0]
    if len(clause) > CLAUSE_MAX:
        clause = clause[:CLAUSE_MAX].rsplit(" ", 1)[0] + " …"
    return clause[:1].lower() + clause[1:]


def in_minutes(seconds: float) -> str:
    """ "now", "in 12 min"."""
    return "now" if seconds < 30 else f"in {max(1, exact_minutes(seconds))} min"


def next_up(what: str, at: datetime, now: datetime, offset_min: int | None) -> str:
    """What is next and when."""
    wait = in_minutes((at - now).total_seconds())
    stop = "" if what.endswith("…") else "."
    return f"Next at {clock(at, offset_min)} ({wait}): {what}{stop}"


def todo(texts: Sequence[str], late_s: float = 0.0) -> str:
    """What to do now, one thing or several in order, and how late it comes."""
    late = f"({exact_minutes(late_s)} min late) " if late_s > 0 else ""
    if len(texts) == 1:
        return f"▶ {late}{sentence(texts[0])}"
    return lines([f"▶ {late}Now, in this order:", *(f"{n}. {sentence(t)}" for n, t in enumerate(texts, 1))])


def started(table: datetime, now: datetime, offset_min: int | None) -> str:
    """The cook begins."""
    left = duration((table - now).total_seconds())
    return f"Here we go. On the table at {clock(table, offset_min)}, in {left}."


def started_hot(table: datetime, offset_min: int | None) -> str:
    """The cook begins with food in the heat already."""
    return f"I count from food in the heat. On the table at {clock(table, offset_min)}."


def wait_label(at: datetime, offset_min: int | None) -> str:
    """A button: begin later, so that dinner is there at the time asked for."""
    return f"Not yet: start at {clock(at, offset_min)}"


def waits(begin: datetime, table: datetime, offset_min: int | None) -> str:
    """The cook begins later."""
    return f"Good: I'll call you at {clock(begin, offset_min)}. On the table at {clock(table, offset_min)}."


def already_started(at: datetime, table: datetime, offset_min: int | None) -> str:
    """A second start."""
    return f"It's running since {clock(at, offset_min)}. On the table at {clock(table, offset_min)}."


def second_cook(table: datetime, offset_min: int | None) -> str:
    """Starting a plan while another runs."""
    return f"Another dinner is still cooking (table {clock(table, offset_min)}). Stop that one?"


PLAN_BESIDE = "Tonight's cook goes on; this would be for after it. (To add to tonight's, say “also …”.)"


def missed(since: datetime, now: datetime, missed_lines: Sequence[str], offset_min: int | None) -> str:
    """After an outage: what was missed, and one question."""
    return paragraphs(
        f"I was away from {clock(since, offset_min)} to {clock(now, offset_min)}. In that time was due:",
        lines(missed_lines),
        "How do things stand?",
    )


def missed_line(at: datetime, text: str, safety: bool, offset_min: int | None) -> str:
    """A step that was missed; safety steps stand out."""
    mark = "❗" if safety else "•"
    return f"{mark} {clock(at, offset_min)} {text}"


def done(parts: Sequence[str]) -> str:
    """Noted; what is next."""
    return " ".join(["Good.", *parts])


NOTHING_LEFT = "That was the last step."
EARLIER_STEP = "That one is done already."
NOT_RUNNING = "That cook is over; nothing was changed."


def late_done(at: datetime, offset_min: int | None) -> str:
    """A step was ticked off long after it was due: when did the food go in?"""
    return f"Good. Did that happen just now, or at {clock(at, offset_min)} as planned?"


def moved(by_s: float, table: datetime, offset_min: int | None) -> str:
    """Everything left has moved."""
    way = "later" if by_s > 0 else "earlier"
    return (
        f"Moved: everything left is {duration(abs(by_s))} {way}. On the table at {clock(table, offset_min)}."
    )


def in_the_heat(names: Sequence[str], at: datetime, offset_min: int | None) -> str:
    """A delay while food is in: what cooked on does not wait."""
    when = clock(at, offset_min)
    return f"If {listed(names)} stayed on the heat all that time, check at {when} as planned."


def table(at: datetime, offset_min: int | None) -> str:
    """When dinner is."""
    return f"On the table at {clock(at, offset_min)}."


HOW_LONG = "How long?"
TOO_LONG = "More than 4 hours is a new evening. Say “stop”, and start again when you're back."


def put_back(at: datetime, offset_min: int | None) -> str:
    """Later: the step alone moves."""
    return f"I'll tell you again at {clock(at, offset_min)}."


def more_time(name: str, at: datetime, table: datetime, offset_min: int | None) -> str:
    """Not done yet: a check again."""
    who = f"{name} more time" if name else "it more time"
    return (
        f"Give {who}: check again at {clock(at, offset_min)}, I'll remind you. "
        f"On the table at {clock(table, offset_min)}."
    )


def not_due(name: str, at: datetime, offset_min: int | None) -> str:
    """Still hard, as it should be by now."""
    return f"As it should be: {name}, until about {clock(at, offset_min)}."


def already_in(label: str) -> str:
    """Told to be in once more."""
    return f"{label[:1].upper()}{label[1:]}: in already, noted."


def not_in_cook(name: str) -> str:
    """An event about a food that is not cooking."""
    return f"I don't have {name} in tonight's dinner."


def probe_done(name: str, read_degC: float, goal_degC: float, rest_s: float, units: str) -> str:
    """The thermometer says done."""
    rest = f" Take it out and let it rest {duration(rest_s)}." if rest_s >= 60 else ""
    goal = temperature(goal_degC, units)
    return f"{temperature(read_degC, units)}: done ({goal} at the core for {name}).{rest}"


def probe_more(
    name: str,
    read_degC: float,
    goal_degC: float,
    more_s: float,
    again: datetime,
    units: str,
    offset_min: int | None,
) -> str:
    """The thermometer says not yet."""
    return (
        f"{temperature(read_degC, units)}, on the way to {temperature(goal_degC, units)} for {name}: "
        f"about {duration(more_s)} more. Measure again at {clock(again, offset_min)}."
    )


def probe_not_rising(name: str, read_degC: float, goal_degC: float, units: str) -> str:
    """Too early to tell, or nothing that a tip in the middle could read."""
    return (
        f"{temperature(read_degC, units)}: not done, {name} must show {temperature(goal_degC, units)}, "
        "measured in the middle of the thickest part. Leave it in; measure again in 10 min."
    )


def probe_odd(read_degC: float, units: str) -> str:
    """A reading no kitchen has."""
    return f"{temperature(read_degC, units)} can't be food in a pan. What does it read at the thickest part?"


def read_low(name: str, goal_degC: float, units: str) -> str:
    """Served although the last reading was below the goal: asked once."""
    goal = temperature(goal_degC, units)
    return (
        f"Don't eat yet: {name} last read below {goal}. Measure again and send me the reading; "
        f"if it has reached {goal}, say “done” once more."
    )


def probe_soft(name: str) -> str:
    """Food that is judged by a knife, not a thermometer."""
    return f"For {name} a knife tells more than a thermometer: it should slip in easily."


def probe_which(names: Sequence[str]) -> str:
    """A reading of what?"""
    return f"Of which: {listed(names, 'or')}?"


PROBE_HOW_MUCH = "What does the thermometer read, at the thickest part?"
NO_PROBE = "Nothing in tonight's dinner goes by the thermometer; a knife that slips in easily is the test."


def out_early(name: str, core_degC: float | None, units: str) -> str:
    """Done before its time."""
    safe = ""
    if core_degC is not None:
        safe = f" First measure: it must show {temperature(core_degC, units)} at the core, else it stays in."
    return f"Then take {name} out now; keep it warm under a lid or foil.{safe} The rest goes on as planned."


BURNING = (
    "Turn the heat down a notch and move it away from the hottest spot; is the pan dry, loosen what sticks "
    "with a splash of liquid. The rest goes on as planned."
)


def not_through(name: str) -> str:
    """Burning outside long before it can be done inside."""
    return f"{sentence(f'not done yet, so it stays in: {name}')} {BURNING}"


def skipped(texts: Sequence[str]) -> str:
    """Steps that will not be told."""
    return f"Left out: {listed(texts)}."


SKIP_WHAT = "Leave out what? Name the food or the step, for example “skip the resting”."
NOTHING_TO_SKIP = "There is nothing left to do with that, so nothing to leave out."


def safety_stays(text: str) -> str:
    """A safety step cannot be skipped."""
    return f"That one stays, it keeps dinner safe: {sentence(text)}"


def add_now(name: str, by_s: float, table: datetime, offset_min: int | None) -> str:
    """Forgotten: in with it now."""
    later = f", {duration(by_s)} later" if by_s >= 60 else ""
    return f"{name.capitalize()} in now. On the table at {clock(table, offset_min)}{later}."


def cold_start(table: datetime, offset_min: int | None) -> str:
    """Food stood in a cold oven or pan."""
    return (
        f"Heat on now; I count from this moment. On the table at {clock(table, offset_min)}. "
        "Meat, fish or cooked food that stood warm for more than 2 hours should not be eaten."
    )


def wait_for_heat(at: datetime, offset_min: int | None, *, sealed: bool) -> str:
    """The oven or the pressure cooker (`sealed`) is not up yet, or does not open."""
    look = LID if sealed else "Is it switched on, on the right shelf and setting, the door or lid shut?"
    return f"Then we wait: everything moves, I'll ask again at {clock(at, offset_min)}. {look}"


LID = (
    "Not up to pressure: is the lid locked, the valve shut, enough liquid in, the heat high? "
    "A lid that won't open still holds pressure: never force it. Heat off, let it fall by itself until the "
    "indicator is down; the cooker's manual comes first."
)


STOPPED = "Stopped, no more reminders. Heat off."
STOPPED_SEALED = " The cooker is under pressure: let it down fully before you open the lid."
STOPPED_UNDERDONE = (
    " Don't eat meat, fish, egg or beans that aren't done; chill or finish them within 2 hours."
)


def carried_on(table: datetime, offset_min: int | None) -> str:
    """A stop taken back."""
    return f"On we go. On the table at {clock(table, offset_min)}."


def served(leftovers: str, source: str) -> str:
    """The end: eat, and how to keep the rest."""
    keep = f"{leftovers}" + (f" ({source})" if source else "") if leftovers else ""
    return paragraphs("Enjoy your meal.", keep)


def closed(leftovers: str, source: str) -> str:
    """A cook that nobody ended closes itself."""
    keep = f"{leftovers}" + (f" ({source})" if source else "") if leftovers else ""
    return paragraphs("I take it you have eaten, and close this one.", keep)


def changed_cook(change: Sequence[str], table: datetime, offset_min: int | None) -> str:
    """What a new plan changes in a running cook, and when it is on the table."""
    return paragraphs(lines(f"• {part}" for part in change), f"On the table at {clock(table, offset_min)}.")


def no_longer(name: str) -> str:
    """A food that the changed plan does not have."""
    return f"no {name}"


def at_line(at: datetime, what: str, offset_min: int | None) -> str:
    """A step of the changed plan."""
    return f"{clock(at, offset_min)} {what}"


def not_yet_in(name: str, at: datetime, offset_min: int | None) -> str:
    """Forgotten? It is not due."""
    return f"Nothing is lost: it is {clock(at, offset_min)} before you put {name} in. I'll tell you."


def in_already(name: str, at: datetime, offset_min: int | None) -> str:
    """Something is told of a food that should not be in the heat yet."""
    return f"By my clock the time to put {name} in is {clock(at, offset_min)}. In already? Say “{name} in”."


VESSEL_STAYS = "Dinner is in its vessel, so that stays. A food can still change: “parsnip instead of carrot?”"
NO_UNDO = "What is cooked can't be undone. Tell me what to change from here on, or “stop”."
TAKE_CHANGE = "Change it?"
NO_CHANGE = "That changes nothing from here on. To have more of it, add food: “also 2 potatoes”."
CANT_CHANGE = "What is in the vessel stays in, and with that it doesn't work out:"


def status(parts: Sequence[str], table: datetime, offset_min: int | None) -> str:
    """Where we are."""
    return lines([*parts, f"On the table at {clock(table, offset_min)}."])


def still_open(texts: Sequence[str]) -> str:
    """Told and not ticked off."""
    return f"Now: {' '.join(sentence(t) for t in texts)}"

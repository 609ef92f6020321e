"""What a message says beside its foods: how many eat, and until when. By patterns over flat text.

Each finder returns the value and the stretches of text it used, so that "for 5" is
not read as five of something.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from knowledge.text.amounts import WORD_VALUES
from knowledge.text.model import ReadyBy
from knowledge.text.normalise import FOOD

Span = tuple[int, int]

_WORD = "|".join(
    sorted((w for w in WORD_VALUES if w not in ("zero", "teen", "char", "ek")), key=len, reverse=True)
)
NUM = (
    rf"(?:\d{{1,5}}(?:[.,]\d{{1,2}})?|(?:(?:twenty|thirty|forty|fifty)[ ]?)?(?:{_WORD})|"
    r"a couple(?: of)?|(?:half )?a dozen)"
)
_PEOPLE_WORD = (
    r"(?:people|ppl|persons?|pax|adults?|kids?|children|child|guests?|eaters?|members|plates|mouths|diners?|"
    r"teens|teenagers?|toddlers?|grown ?ups?|friends|mates|flatmates|housemates|roommates|boys|girls|lads|"
    r"portions|servings|students|hungry \w+|family members|humans|folks?|log|"
    r"little ones?|littles|young ones?|bairns?|"
    r"bab(?:y|ies)|infants?|persone|personas?|personnes?|personen|pessoas?|leute|convives?|bambini|ninos?|"
    r"enfants?|kinder|erwachsene|adultes?|adultos?|adulti)"
)
_RELATIVE = (
    r"(?:(?:my|the|our) )?(?:wife|husband|hubby|partner|girlfriend|boyfriend|gf|bf|mum|mom|dad|"
    r"mother|father|son|"
    r"daughter|flatmate|housemate|roommate|friend|mate|sister|brother|gran|nan|grandma|grandad|"
    r"granny|toddler|kid|"
    r"fiance|fiancee|spouse|missus|(?:mother|father) in law)"
)
_ADJ = (
    r"(?:(?:(?:very|really|quite) )?(?:hungry|little|small|big|growing|young|older|more|other|fussy|picky|"
    r"starving|ravenous|tired|grown|hungry) )?"
)
_TERM = (
    rf"(?:(?:just )?(?:me|myself|i)\b|{NUM} {_ADJ}{_PEOPLE_WORD}|an? {_ADJ}(?:adult|kid|child|toddler|"
    rf"teenager|friend|guest|baby)|us {NUM}\b|(?:the|my|our|his|her) (?:\w+ )?(?:twins|triplets)|"
    rf"(?:an?|my|our|the) {NUM} (?:years?|yrs?|months?) olds?|{_RELATIVE})"
)
_SUM = re.compile(
    rf"\b(?:it'?s |its )?{_TERM}(?:(?: ?[+&,] ?| and | n | plus |, and | (?=\d+ (?:kids?|child))){_TERM})+",
    re.I,
)
_ONE_TERM = re.compile(_TERM)
_SOME = re.compile(
    rf"{NUM} {_ADJ}(?:people|persons|diners|eaters|guests|heads|mouths) ?, ?(?!(?:and|plus) )", re.I
)
_NOT_PEOPLE = (
    r"(?! ?(?:min|mins|minutes?|m\b|h\b|hrs?|hours?|am\b|pm\b|oclock|o clock|g\b|kg|lb|oz|ml|"
    r"cups?|days?|weeks?|"
    r"months?|c\b|f\b|degrees|deg|%|/|thirty|fifteen|forty|twenty|half|past|to \w+$|or so min)|"
    r"[:.]\d|\d|[ ]?x)"
)
_FOR = re.compile(
    rf"\b(?:for|feeds?|feeding|serves?|serving|cater(?:ing)? for|fur|pour|per|para) "
    rf"(?:about |around |roughly |up to |all |just |only )?"
    rf"(?:the )?(?:{NUM} ?(?:- ?(?=\d)|(?:to|or) ?))?({NUM}){_NOT_PEOPLE}\b"
)
_COUNTED = re.compile(rf"\b(?:{NUM} ?(?:-|to|or) ?)?({NUM}) {_ADJ}{_PEOPLE_WORD}\b")
_OF_US = re.compile(
    rf"\b(?:{NUM} ?(?:-|to|or) ?)?({NUM}) of us\b|\b(?:wir sind|nous sommes|somos|siamo)(?: in)? ({NUM})\b|"
    rf"\bus ({NUM})\b|\bthere(?:s| is| are|re)? ({NUM}) of us|\b(both) of us\b"
)
_SOME_OF_US = re.compile(
    r" (?:is|are|has|have|hates?|cant|cannot|dont|doesnt|does|wont|eats?|likes?|loves?|wants?|prefers?|with|"
    r"who|allergic|intolerant|under|aged)\b"
)
_FAMILY = re.compile(rf"\b(?:family|party|table|group|household|crowd) of ({NUM})\b")
_TABLE = re.compile(
    rf"\b({NUM}) (?:at the table|at table|to feed|coming|for dinner|for tea|eating|round the table)\b"
)
_MAKE = re.compile(
    rf"\b(?:make (?:it|that|this)|we(?:re| are)(?: now)?|now) (?:for )?({NUM})(?: now| of us| "
    rf"people| instead)?\s*[.!]?$"
)
_LAST_NUMBER = re.compile(rf"[.!\n] ?([2-9]|1[0-2])[^\w{FOOD}]*$")  # "... chicken stock. 3"
_ALONE = re.compile(
    r"\b(?:just me|only me|(?:dinner|cooking|something|tea|lunch|supper|just|only) for me|for "
    r"myself|cooking for one|on my own tonight|dinner for one|by myself)\b"
)
_TWO = re.compile(r"\b(?:me and (?:him|her|the (?:wife|husband|missus|mrs))|for us two|date night|us both)\b")


def value(number: str) -> float:
    """The value of a number written with digits or words."""
    number = number.strip()
    if number.startswith("a couple") or number == "both":
        return 2.0
    if number.endswith("a dozen"):
        return 6.0 if number.startswith("half") else 12.0
    if number[0].isdigit():
        return float(number.replace(",", "."))
    total = 0.0
    for word in re.findall("|".join(sorted(WORD_VALUES, key=len, reverse=True)), number):
        total += WORD_VALUES[word]
    return total


def _group(match: re.Match[str]) -> str:
    return next(g for g in match.groups() if g)


def people(text: str) -> tuple[float | None, list[Span]]:
    """How many eat, if said once; what is said of different days gives none."""
    if re.search(r"\bweekdays?\b.*\bweekends?\b|\bweekends?\b.*\bweekdays?\b", text):
        return None, []
    for match in _SUM.finditer(text):
        if _SOME.match(match.group()):
            break  # "4 people, one kid with an allergy": who is one of them
        terms = [_people_of(t.group()) for t in _ONE_TERM.finditer(match.group())]
        if sum(terms) >= 2 and not (len(terms) == 2 and terms == [0, 0]):
            return sum(terms), [match.span()]
    for pattern in (_FAMILY, _OF_US, _COUNTED, _TABLE, _FOR, _MAKE):
        for match in pattern.finditer(text):
            number = value(_group(match))
            if pattern in (_OF_US, _COUNTED) and _SOME_OF_US.match(text, match.end()):
                continue  # "one of us is vegetarian", "1 kid is allergic"
            if 1 <= number <= 60:
                return number, [match.span()]
    if last := _LAST_NUMBER.search(text):
        return value(last.group(1)), [last.span(1)]
    for number, said in ((1.0, _ALONE.search(text)), (2.0, _TWO.search(text))):
        if said:
            return number, [said.span()]
    return None, []


def _people_of(term: str) -> float:
    if term.endswith(("twins", "triplets")):
        return 2.0 if term.endswith("twins") else 3.0
    match = re.match(rf"(?:us )?({NUM})(?: |$)", term)
    return value(match.group(1)) if match and not term.startswith("a ") else 1.0


_CHILD = (
    r"(?:kids?|child(?:ren)?|toddlers?|bab(?:y|ies)|infants?|little ones?|littles|young ones?|"
    r"boys?|girls?|sons?|daughters?|grandchild(?:ren)?|grandkids?|nephews?|nieces?|twins|triplets|bambini|ninos?|enfants?|kinder)"
)
_AGES = re.compile(
    rf"\b{_CHILD}(?: (?:are|is|who are|who is))?(?:,? ?\(? ?(?:both |all )?(?:are |aged |age |ages )?)"
    rf"(?P<ages>(?<=[(,d es])\d{{1,2}}(?: ?(?:years?|yrs?|yo|months?|mths?)(?: ?old)?)?"
    rf"(?:(?:,| and| &| \+|,? ?and|/) ?\d{{1,2}}(?: ?(?:years?|yrs?|yo|months?|mths?)(?: ?old)?)?)*)"
    r"(?= ?(?:\)|years?|yrs?|yo\b|$|[.,;\n]))"
)
_OLD = re.compile(
    r"\b(?P<n>\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten) ?(?P<u>years?|yrs?|months?|mths?)? ?"
    r"(?:old|yo|olds)\b"
)
_AGE_OF = {"bab": 0.5, "inf": 0.5, "tod": 2.0}  # by how they are called, in years


def youngest(text: str) -> tuple[float | None, list[Span]]:
    """The age of the youngest eater [years], if a child is spoken of with an age, and where ages stand."""
    ages: list[float] = []
    used: list[Span] = []
    for match in _AGES.finditer(text):
        for number, unit in re.findall(r"(\d{1,2})(?: ?(months?|mths?))?", match["ages"]):
            ages.append(float(number) / (12.0 if unit else 1.0))
        used.append(match.span("ages"))
    for match in _OLD.finditer(text):
        ages.append(value(match["n"]) / (12.0 if (match["u"] or "").startswith("m") else 1.0))
    ages += [_AGE_OF[m.group()[:3]] for m in re.finditer(r"\b(?:bab(?:y|ies)|infants?|toddlers?)\b", text)]
    return min((age for age in ages if age < 18), default=None), used


# --- time ---------------------------------------------------------------------------------------

_UNIT_MIN = r"(?:minutes?|mins?|m)\b"
_UNIT_HOUR = r"(?:hours?|hrs?|hr|h)\b"
DURATION = (
    rf"(?:(?P<three>(?:three quarters|3/4|0\.75) of an hour)|(?P<quarter>(?:a )?quarter of an hour)|"
    rf"(?P<halfhour>half (?:an |a )?(?:hour|hr))|"
    rf"(?P<h>{NUM}|an|a|one|half) ?{_UNIT_HOUR}(?: ?(?:and )?(?:(?P<hm>{NUM})(?: ?{_UNIT_MIN})?(?! "
    rf"?{_UNIT_HOUR})|(?:a )?(?P<hpart>half|quarter)))?|"
    rf"(?P<h2>{NUM}) and a half {_UNIT_HOUR}|"
    rf"(?P<m>{NUM})(?:ish)?(?: ?(?:-|to|or) ?(?P<mto>{NUM}))? ?(?:ish |odd |more |extra |or so )?{_UNIT_MIN})"
)
_DURATION = re.compile(rf"(?<![\w.,/]){DURATION}")


def minutes_of(match: re.Match[str]) -> float:
    """Minutes of a match of DURATION."""
    got = match.groupdict()
    if got["three"]:
        return 45.0
    if got["quarter"]:
        return 15.0
    if got["halfhour"]:
        return 30.0
    if got["h2"]:
        return (value(got["h2"]) + 0.5) * 60
    if got["h"]:
        hours = 0.5 if got["h"] == "half" else 1.0 if got["h"] in ("an", "a") else value(got["h"])
        more = value(got["hm"]) if got["hm"] else {"half": 30.0, "quarter": 15.0}.get(got["hpart"] or "", 0.0)
        return hours * 60 + more
    if got["mto"]:
        return (value(got["m"]) + value(got["mto"])) / 2
    return value(got["m"])


_DAY_MIN = 24 * 60.0


def durations(text: str) -> Iterator[tuple[float, Span]]:
    """Every length of time in a text, in minutes."""
    for match in _DURATION.finditer(text):
        metres = match.group().endswith("m") and (
            minutes_of(match) >= _DAY_MIN or text[: match.start()].endswith(("at ", "live at ", "up at "))
        )
        if not metres:  # "we live at 2300m"
            yield minutes_of(match), match.span()


_HOUR_WORD = r"(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)"
_HOUR = rf"(?:\d{{1,2}}|{_HOUR_WORD})"
_MINUTE_WORD = rf"(?:quarter|a quarter|half|{NUM})(?: ?min(?:ute)?s?)?"
CLOCK = (
    rf"(?:(?P<past>half|quarter|a quarter|five|ten|twenty|twenty ?five|5|10|20|25)(?: "
    rf"min(?:ute)?s)? ?(?P<dir>past|after|to|before|till|til) (?P<hp>{_HOUR})(?P<ap0> ?[ap]m)?\b|"
    rf"half (?P<half>{_HOUR})(?! ?(?:{_UNIT_HOUR}|dozen))\b|"
    rf"(?P<h>\d{{1,2}}) ?[:.h] ?(?P<m>[0-5]\d)(?: ?(?P<ap1>[ap]\.?m)\b\.?)?(?![\d/])|"
    rf"(?:a|um|vers|gegen|alle|pour|pret\w*) (?P<he>1[1-9]|2[0-3]) ?h\b(?! ?\d)|(?P<hu>\d{{1,2}}) ?uhr\b|"
    rf"(?P<h2>{_HOUR}) ?(?P<ap2>[ap]\.?m)\b\.?|(?P<h3>{_HOUR}) ?(?:oclock|o clock)(?: ?(?P<ap3>[ap]m))?|"
    rf"(?P<hw>{_HOUR_WORD}) (?P<mw>thirty|fifteen|forty ?five|twenty|forty|ten)\b(?! ?(?:min|g\b))|"
    rf"(?P<noon>noon|midday|midnight)\b)"
)
_CLOCK = re.compile(rf"(?<![\w.,/#]){CLOCK}")
_CUED = re.compile(
    rf"(?:\b(?:by|at|for|before|around|about|til|till|until|round|arrive|guests|dinner|tea|eat)|@) "
    rf"(?:about |around |like |say )?(?P<bare>{_HOUR})(?:ish)?(?! ?(?:[:.,/]?\d|min|mins|minutes|m\b|h\b|"
    rf"hrs?|hours?|people|ppl|of us|pax|persons|adults|kids|guests|c\b|f\b|degrees|deg|%|g\b|kg|lb|"
    rf"oz|plates|members|servings|portions|x\b|past|to\b|cups?|tins?|cans?|children|quid|bucks|"
    rf"days?|weeks?|-|\w+ (?:in|at) the))\b"
)
_NOW = re.compile(r"\b(?:its|it is|it's|time is|now|currently)(?: now| like| about| only| already)? $")
_NO_DEADLINE = re.compile(
    r"(?:since|after|from|left out|went in|put (?:it|them|that) (?:on|in)|started|on at|off at|"
    r"text me|sat out|woke|until now|at work|"
    r"opened|bought|finished work|rang|been (?:out|on)|marinat\w+|soak\w+|out for)(?: \w+){0,3} "
    r"(?:at |about |around |for )?\(?(?:about |around )?$"
)
_NO_LIMIT_AFTER = re.compile(
    r"^ ?\)? ?(?:ago|old|soak|marina|out\b|early|late|behind|in\b(?! total)|left|away|per|each "
    r"side|a side|on the clock)"
)
_LIMIT_BEFORE = re.compile(
    r"\b(?:left|sat|been|stood|forgot\w*)\b[^.,]{0,45} \(?$|"
    r"(?:left out|soak\w*|marinat\w*|sat|been|boil\w*|defrost\w*|expires? in|for|since|chill\w*|"
    r"proved|took|takes|in there|cooked|simmer\w*|(?<![,.;] )(?<!^)(?<!have )(?<!got )(?<!ve )(?<!only )"
    r"about)"
    r"(?: \w+){0,3} \(?(?:about |for )?$"
)
_EATERS_THEN = re.compile(
    rf"\b(?:for|feeds?|serves?) (?:about )?{NUM}(?: {_PEOPLE_WORD})? (?:in|within|under)(?: about| around)? $"
)  # "for 4 in 30 minutes": the "for" is of the eaters
_IN_N = re.compile(
    rf"\b(?:done|ready|eat|finished|dinner|table|back|within|under|max|in) (?:in |within |under "
    rf")?(?P<n>{NUM})(?= ?(?:max|tops|$|[.,!?;\n]))"
)


_WITHIN = re.compile(r"\b(?:in|within|under|max)\b")
_HOURS = 12  # "ready 8" is at eight, "ready in 8" in as many minutes


def clock_of(match: re.Match[str]) -> str:
    """ "HH:MM" of a match of CLOCK; a bare hour from 1 to 11 is in the afternoon."""
    got = match.groupdict()
    if got["noon"]:
        return "00:00" if got["noon"] == "midnight" else "12:00"
    minute = 0.0
    half_day = next((got[k] for k in ("ap0", "ap1", "ap2", "ap3") if got[k]), "")
    hour_text = next(got[k] for k in ("hp", "half", "h", "he", "hu", "h2", "h3", "hw") if got[k])
    hour = int(value(hour_text))
    if got["half"]:
        minute = 30
    elif got["m"]:
        minute = int(got["m"])
    elif got["mw"]:
        minute = value(got["mw"])
    elif got["past"]:
        minute = {"half": 30.0, "quarter": 15.0, "a quarter": 15.0}.get(got["past"]) or value(got["past"])
        if got["dir"] not in ("past", "after"):
            hour, minute = hour - 1, 60 - minute
            hour = 12 if hour == 0 else hour
    return _clock(hour, int(minute), half_day)


def _clock(hour: int, minute: int, half_day: str = "") -> str:
    if hour > 23:
        return ""
    if "a" in half_day:
        hour = 0 if hour == 12 else hour
    elif "p" in half_day or 1 <= hour <= 11:
        hour = hour + 12 if hour < 12 else hour
    return f"{hour:02d}:{minute:02d}"


def clocks(text: str) -> Iterator[tuple[str, Span]]:
    """Every clock time in a text."""
    for match in _CLOCK.finditer(text):
        clock = clock_of(match)
        if clock:
            yield clock, match.span()


_SINCE = re.compile(
    rf"\b(?:since|from|at) (?:about |around )?{_HOUR} ?"
    r"(?:this morning|in the morning|last night|this afternoon)\b|"
    rf"\b(?:its|it is|now its) (?:about |nearly |almost )?{_HOUR} now\b|"
    rf"\bsince (?:about |around )?{_HOUR}\b(?! ?(?:min|hour|hrs?|h\b|days?|weeks?|months?|years?))"
)


_ISH = re.compile(
    r"\b(?:eat|eats|eating|dinner|tea|supper|served?|serving|home|sit down|sitting down|arrive|arriving|"
    rf"table)(?: is| at| by| around| about| for)* (?P<h>{_HOUR}) ?ish\b"
)
_DEGREES = re.compile(
    r"\b(?:at|to|reads?|reached) (?:[3-9]\d|1[0-9]\d|2[0-9]\d)\b(?! ?(?:g|kg|gr\w*|oz|lb|ml|p|x)\b)"
)


# Of several clock times the one at which it is eaten counts most, least what else goes on.
_EATEN = re.compile(
    r"\b(?:eat|eats|eating|dinner|tea|supper|lunch|serv\w+|ready|table|sit|sat|sitting|done|by|door|guests?|"
    r"arriv\w+|lands?|here|dine|dining)\b[^.;\d]{0,22}$"
)
_HOME = re.compile(r"\b(?:home|back|off work|leave|leaving|finish(?:es|ed)? work|i finish)\b[^.;\d]{0,14}$")
_ELSEWHERE = re.compile(
    r"\b(?:film|movie|match|game|show|kick ?off|swimming|practice|class|train|bus|meeting|football|school|"
    r"gym|shift|concert|bath|bed ?time)\b[^.,;\d]{0,22}$"
)


def _rank(before: str) -> int:
    said = before[-50:]
    if _ELSEWHERE.search(said):
        return 0
    if _HOME.search(said):
        return 1
    return 3 if _EATEN.search(said) else 2


def ready_by(text: str) -> tuple[ReadyBy | None, list[Span]]:
    """The deadline or the time available, and every stretch that is a time of any kind."""
    used: list[Span] = []
    told: list[tuple[int, int, int, str]] = []  # rank, is explicit, order, clock
    for clock, span in clocks(text):
        used.append(span)
        before = text[: span[0]]
        if not _NOW.search(before[-30:]) and not _NO_DEADLINE.search(before[-60:]):
            told.append((_rank(before), 1, span[0], clock))
    used += [match.span() for match in _SINCE.finditer(text)]
    used += [match.span() for match in _DEGREES.finditer(text)]
    for match in _ISH.finditer(text):
        if not any(a < match.end() and match.start() < b for a, b in used):
            used.append(match.span())
            hour = int(value(match.group("h")))
            told.append((_rank(text[: match.end()]), 0, -match.start(), _clock(hour, 0)))
    for match in _CUED.finditer(text):
        if any(a < match.end() and match.start() < b for a, b in used):
            continue
        hour = int(value(match.group("bare")))
        cue = match.group().split()[0]
        if not 1 <= hour <= 23 or _NO_DEADLINE.search(text[: match.end()][-60 : -len(match.group("bare"))]):
            continue
        if cue in ("for", "about", "around", "round") and not re.search(
            r"(?:ready|need(?:ed)?|want(?:ed)?|on the table|done|eat|it) (?:for|about|around|round)",
            text[: match.end()],
        ):
            continue
        used.append(match.span())
        told.append((_rank(text[: match.start("bare")]), 0, -match.start(), _clock(hour, 0)))
    best = ReadyBy(clock=max(told)[3]) if told else None
    for minutes, span in durations(text):
        if any(a < span[1] and span[0] < b for a, b in used):
            continue
        used.append(span)
        before, after = text[: span[0]][-40:], text[span[1] : span[1] + 20]
        spent = _LIMIT_BEFORE.search(before) and not _EATERS_THEN.search(before)
        if best is None and not _NO_LIMIT_AFTER.search(after) and not spent:
            best = ReadyBy(in_min=minutes)
    if best is None:
        for match in _IN_N.finditer(text):
            if not any(a < match.end() and match.start() < b for a, b in used):
                used.append(match.span())
                number = value(match.group("n"))
                hour = number <= _HOURS and not _WITHIN.search(match.group())
                best = ReadyBy(clock=_clock(int(number), 0)) if hour else ReadyBy(in_min=number)
    return best, used

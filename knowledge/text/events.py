"""What just happened at the stove: a closed set of event types, told by their words.

The types are tried in a fixed order, the rare and certain before the common: a
message that says "stop" or names a temperature is that, whatever else is in it.
"""

from __future__ import annotations

import re

from knowledge.text.fields import NUM, clocks, durations, value
from knowledge.text.model import EventType
from knowledge.text.normalise import FOOD as F

_HEATER = r"(?:oven|hob|stove|burner|grill|broiler|pan|cooker|pot|gas|ring|heat|pressure|it|element|water)"
_T = EventType

_CUES: tuple[tuple[EventType, re.Pattern[str]], ...] = tuple(
    (kind, re.compile(pattern))
    for kind, pattern in (
        (
            _T.STOP,
            r"\b(?:stop|cancel|end|kill|abort|quit) (?:(?:all|the|this|my|these|those|sending|every|tonights?) )*(?:reminders?|reminding(?: me)?|cook(?:ing)?|timers?|everything|it all|all of it|now|messages?|messaging|texting|pinging|notifications?|alerts?|dinner|plan|whole thing|pings?|session|alarms?)\b(?! suggest)|"
            r"^\W*(?:please |pls |just |ok |no |oh )*(?:stop|cancel|abort|quit)(?: it| that| all| please| pls| now| everything| this)*\W*$|"
            r"\b(?:call(?:ing)? it off|giv(?:e|ing) up|gave up|forget (?:it|dinner|the (?:dinner|cook|whole thing|rest))|ordering (?:in|out|pizza|takeaway|takeout|a)|getting (?:a )?(?:takeaway|takeout|pizza)|order(?:ed)? (?:pizza|takeaway|takeout|in)|"
            r"not cooking (?:anymore|any more|tonight|after all)|scrap (?:the (?:dinner|cook|whole thing|lot|plan)|it all|dinner)|bin(?:ned|ning)? (?:it|the lot|dinner|everything)|had to bin|going out (?:for dinner|to eat)? ?instead|dinner (?:is|s) (?:off|cancelled|canceled|ruined)|turn(?:ing|ed)? (?:everything|it all) off|fire alarm|power (?:cut|went|is out|out)|we(?:re| are) (?:done|finished) (?:here|cooking)|dropped (?:the (?:whole|tray|pot|pan|lot)|it all|everything)|no more reminders|leave me alone)\b",
        ),
        (
            _T.DELAY,
            r"^\W*(?:(?:i|we|ill|well|sorry|just|hi|ok) )*need(?:ing)? (?:another|an extra|an? (?:extra )?(?:few|couple)|\S+ more|more time|an? \w+ more)\b(?! pan)",
        ),
        (
            _T.FORGOT,
            r"\b(?:forgot(?:ten)?|didnt (?:turn|put|add|start|set|switch|do|notice|hear|flip|stir|see|realise|realize)|havent (?:even )?(?:put|turned|added|started|switched|flipped)|never (?:put|turned|added|started|switched|did|flipped)|slipped my mind|meant to (?:put|add|turn|flip|start)|(?:i |totally |completely )?missed (?:the|that|your|my|a|it)|"
            r"should (?:have|of|ve) (?:gone|been|put|added|turned|started|flipped|stirred)|shouldve|supposed to (?:put|add|go|have|flip|be in)|left (?:the )?(?:\S+ )?(?:out of|off) the|still (?:sitting |sat )?on the (?:counter|side|worktop|board|bench)|was switched off|oven was off|hob was off|gas was off)\b",
        ),
        (
            _T.OVEN_NOT_HOT,
            rf"\b{_HEATER}(?:s| is| has| was)? ?(?:still |just |only )*(?:isnt|not|wont|cant|doesnt|hasnt|never|nowhere near|barely|stuck|still|refuses|refusing|struggling|taking (?:ages|forever)|slow to|cold|lukewarm|only at|only)\b[^.]{{0,30}}\b(?:hot|heat(?:ing|ed)?|warm(?:ing)?|temp(?:erature)?|preheat(?:ed|ing)?|pressure|come up|coming up|ready|cold|on|lit|light|working|boil(?:ing)?|reach(?:ed|ing)?|get(?:ting)? there|\d+)\b|"
            rf"\b(?:oven|hob|stove|cooker|pan|pot)(?:s| is) (?:still )?(?:stone |freezing |ice )?cold\b|\bno (?:pressure|whistles?|heat|steam|flame|gas)\b|\b(?:not|isnt|hasnt|wont|never|no sign of) (?:\w+ ){{0,3}}?(?:whistl\w+|pressuri[sz]\w+|hissing|come up to pressure|coming to pressure|up to pressure|reached pressure|preheated|up to temp\w*|hot enough|at temp\w*|heating up|heat up)\b|"
            r"\bstill (?:preheating|heating up|waiting (?:for|on) the (?:oven|pressure|pan|pot|cooker)|warming up|coming up|coming to pressure)\b|\bwaiting (?:on|for) (?:the )?(?:oven|pressure|cooker)\b|\bpreheat(?:ing)? (?:is )?taking\b|\bsteam (?:leaking|escaping)|gas (?:ran|has run|run) out|element(?: has| is|s)? (?:gone|dead|blown)",
        ),
        (
            _T.PROBE,
            rf"\b(?:probe|thermometer|thermo|internal|temp(?:erature)?s?|reads?|reading|core|registers?|registering|showing|clocking|in the (?:middle|centre|center|thickest)|at the (?:bone|centre|center|core))\b[^.?]{{0,40}}?\b{NUM}\b|{NUM} ?(?:°|degrees?|deg|celsius|c\b|f\b|fahrenheit)|"
            rf"\b(?:hit|reached|is at|are at|at|is|says|reads|just hit|up to|only|now) {NUM} (?:in the (?:middle|centre|center|thickest)|inside|internal|core)|{F}s? (?:is |are |s |at |says |now |only |just |reads |hit |reached )*\d{{2,3}}(?:\.\d)? (?:in the (?:middle|centre|center)|inside|internal|core|now|on the probe)|^\W*\d{{2,3}}(?:\.\d)? ?(?:in the (?:middle|centre|center)|inside|internal|core|on the probe)",
        ),
        (
            _T.SKIP,
            r"\b(?:skip(?:ping|ped)?|leav(?:e|ing) out|leav(?:e|ing) (?:the |my |those )? out|left out(?! (?:since|for|on|over))|not (?:doing|bothering|gonna bother|going to bother|going to do|gonna do|gonna)|(?:no|dont have) time (?:to|for)|wont bother|cant be (?:bothered|arsed)|couldnt be bothered|cba|omit(?:ting)?|(?:drop|cut|ditch|lose|forget|scrap) the \S+ (?:step|bit|part)|without the \S+ (?:step|bit)|no (?:resting|searing|browning|marinating|preheating|garnish)(?: for us| tonight)?|jump(?:ing)? (?:over|past)|can (?:i|we) (?:miss|drop|skip)|never mind the|dont bother with|pass on the)\b|\bstraight in\W*$",
        ),
        (
            _T.TOO_FAST,
            rf"\b(?:burn(?:ing|t|ed|s)|burning|(?:are|is|s|its|looks?|look|seems?|all|cooked through|they(?:re)?) already (?:done|cooked|brown(?:ed)?|soft|tender|flaking|falling|mush\w*|black|ready|golden|crispy|crisp|wilted|charred|cooked through|perfect|at)|already (?:done|cooked|brown(?:ed)?|soft|tender|mush\w*|black|ready|golden|crispy|wilted|charred|falling apart|flaking|soggy|boiling over|burn\w*|catching|overcooked|dry)|"
            rf"{NUM} ?(?:min(?:ute)?s?|m|mins) (?:too )?(?:early|ahead|to go and|left)|done (?:too )?(?:already|early|way early)|early|ahead of (?:schedule|time|plan)|overcook(?:ed|ing)|over ?done|too fast|too quick(?:ly)?|charr(?:ed|ing)|blacken(?:ed|ing)|black(?: on| at| around|\W*$)|catching|smok(?:ing|y)|mush(?:y)?|turn(?:ed|ing) to mush|(?:getting|going|gone|looks?|looking) (?:too |very |really |a bit |quite )?(?:dark|brown|black)|scorch(?:ed|ing)|boiling (?:over|dry)|boiled (?:over|dry)|dried out|drying out|falling apart|disintegrat\w+|finished early|ready early|cooking (?:way )?too fast|faster than|sticking to the|stuck to the|singed|soggy|done before|before the|already flaking|flaking already)\b",
        ),
        (
            _T.NOT_DONE,
            r"\b(?:(?:isnt|arent|isn't|not|aint|nt|still not|nowhere near|far from|wasnt|never) (?:\w+ ){0,2}?(?:done|cooked|ready|soft|tender|finished|through|brown(?:ed|ing)?|crisp\w*|there(?: yet)?|falling apart|browned|cooking|wilted|set|golden|absorbed)|need(?:s|ing)? (?:\w+ ){0,3}?(?:longer|more time|more|another|ages|extra|more minutes)|under(?:done|cooked)|(?:still|quite|a bit|bit|very|really|pretty|kinda|so|too|super|totally|completely|all|half|is|are|s|feels?|seems?|looks?) (?:\w+ )?(?:raw|hard|crunchy|solid|tough|chewy|chalky|pink|bloody|frozen|firm|rubbery|al dente|stiff|squeaky|pale|cold|runny|gritty|grainy|stringy|woody|wobbly|jiggly|bleeding|white|soupy|wet|watery|liquid|rock hard|undercooked|translucent|leathery)|rock (?:solid|hard)|raw (?:in|inside|at|on)|cold (?:in|inside) the|pink (?:in|inside|at|near|by)|bleeding|like chewing|chewing a|got (?:a )?bite|have (?:a )?bite|crunchy?|chalky|takes? (?:ages|forever)|taking (?:ages|forever|longer)|not (?:yet|quite)|bones? (?:still )?(?:pink|red|bloody)|blood|juices? (?:run|running|are|is|s) (?:pink|red|bloody)|could do with (?:a bit |a few |some )?(?:longer|more)|wants? (?:a bit |a few |some )?(?:longer|more time)|wont (?:go soft|soften|cook|brown|crisp)|(?:isnt|arent|meat isnt|veg isnt|chicken isnt)\W*$)\b",
        ),
        (
            _T.DELAY,
            r"\b(?:run(?:ning)? (?:a bit |about |really |very |like )?(?:\S+ (?:min\w*|hours?|hrs?) )?(?:late|behind|slow)|(?:late|behind)\b|delay(?:ed|s|ing)?|paus(?:e|ed|ing)|hold (?:on|off|up|everything|it|that|the)|hang on|gonna be (?:a bit|a while|late)|going to be (?:a bit|late)|traffic|give (?:me|us) (?:\w+|\d+)|back in (?:a|\d+|an|ten|five|twenty)|be right back|brb|wait(?: up| a| for| \d| five| ten|\W*$)|push (?:\w+ ){0,3}back|put (?:\w+ )?(?:off|back)|postpone|shift (?:everything|it|dinner|the)|need (?:another |an extra |a few )?(?:\S+ )?more (?:min\w*|time)|phone call|slow(?:er)? (?:today|than)|baby (?:woke|crying|is)|kid(?:s)? (?:woke|fell|needs?)|interrupt\w*|got (?:held up|stuck|distracted|a call|called)|held up|stuck (?:on|in|at)|at the door|doorbell|snooze|later than|take(?:s|n)? longer to (?:chop|prep|peel|cut)|stopped (?:since|for)|taking me longer|not (?:home|back) (?:yet|until|till)|on hold|nappy|diaper|move (?:everything|it all|dinner) (?:back|by|to)|extend|add (?:\d+|ten|five) min\w*|everything (?:\S+ ){0,2}later|(?:min\w*|hours?|hrs?) later)\b",
        ),
        (
            _T.STARTED,
            rf"^\W*(?:(?:ok|okay|right|yes|yep|alright|so|and|hey|well|yeah|cool|great|done|haan|all|everything|thumbs up|👍|🔥|✅|here|im|we(?:re)?|just|now) ?)*(?:start(?:ed|ing)?|begun|begin(?:ning)?|go(?:ing)?|in|lets (?:go|start|cook|do (?:it|this))|here we go|off we go|we(?:re)? (?:off|go)|kicked off|start now|start cooking|ready to (?:start|go|cook)|cooking|game on)(?: now| cooking| the (?:cook|clock|timer)| please| it| everything| then| already)*\W*$|"
            rf"\b(?:started|starting|began|begun|kicked (?:it )?off)\b(?! eating)|\b(?:tray|pan|pot|dish|tin|it|its|everything|all|lot|roast|sheet|casserole|skillet|joint|dinner)(?:s| is| are| has| have| just| all| now| went| gone)* (?:in|on)(?: the (?:oven|hob|heat|stove|pot|pan|cooker))?(?: now| \d| since| at\b|[.!,]|$| and)|"
            rf"\b(?:put|popped|stuck|shoved|bunged|slid|got|chucked|placed|whacked|set|threw) (?:the |my |it |everything |all |them |that )*(?:tray|pan|pot|dish|tin|it|all|everything|lot|lid|casserole|cooker|{F}s?)?(?: all| now| just)? ?(?:in|on|into|onto)\b(?! (?:the )?(?:table|fridge|freezer|plate))|\blid(?: is|s)? (?:on|locked|down)\b.*\bpressure|up to pressure|(?:reached|at|hit|full) (?:full )?pressure|(?:first )?whistle|(?:cooker|oven|hob|heat|gas|flame|fire|stove|timer) (?:is )?on\b|(?:went|going|go|gone) (?:in|on)\b.*|shuru|timer (?:is )?(?:on|started|set|running)|turned (?:the |it )?(?:oven|hob|heat|gas|cooker) on|switched (?:it |the oven |the hob )?on|{F}s? (?:are|is|s|just|went|has|have|all|now)*? ?(?:in|on) (?:at|since) \d|{F}s? (?:have |has |just )*(?:went|gone) (?:in|on)\b|fired up",
        ),
        (
            _T.DONE_STEP,
            rf"^\W*(?:(?:ok|okay|right|yes|yep|yeah|all|and|that(?:s| is)?|step|it(?:s| is)|👍|im|just) ?)*(?:done|finished|did (?:it|that)|sorted|complete[d]?|check(?:ed)?|ready|next|what(?:s)? next|✅|✔|☑|tick)(?: done| it| that| now| next| then| what(?:s)? next| with (?:that|the .*)| chopping| peeling| the .*)*[\W]*$|✅|✔|☑|"
            rf"\b(?:added|adding|flipped|stirred|turned|took|taken|drained|chopped|peeled|browned|seared|covered|uncovered|tossed|basted|rotated|shook|shaken|sliced|diced|poured|mixed|seasoned|rinsed|salted|removed|moved|lowered|raised|released|vented|deglazed|reduced|rested|resting|preheated|cut|prepped|trimmed|wrapped|marinated|toasted|sauteed|softened|fried|threw in|chucked in|tipped in|dumped|topped|opened|swapped racks|given it a|gave (?:it|them|everything|the)|sprinkled|scattered|splashed|squeezed|whisked|carved|served|plated|skimmed|strained|simmering|put (?:the |some )?{F}s? (?:on top|round|around|underneath|under|beside))\b|"
            rf"{F}s? (?:is|are|s|has|have|just|now|gone|went|all|both|now)*? ?(?:in|on|out|done|off|resting|chopped|peeled|browned|added|sliced|turned|flipped|prepped|drained|up|cut)(?: now| too| as well| already)?\b|\b(?:lid|foil|cover)(?:s| is)? (?:on|off)|heat(?:s| is)? (?:down|up|off|low)|turn(?:ed)? (?:the heat |it |heat )?(?:down|up)|out of the (?:oven|pot|pan)|oven(?:s| is)? (?:hot|preheated|ready|at \d+)|simmering|boiling now|at a simmer|water(?:s| is)? boiling|it(?:s| is) boiling|all chopped|all peeled|prep(?:s| is)? done|mise en place|rested|veg (?:is |are )?(?:in|chopped|done)",
        ),
    )
)

_TEMP = re.compile(
    rf"(?P<n>\d{{2,3}}(?:[.,]\d)?|(?:(?:one|a|two) )?hundred(?: and)?(?: (?:{NUM}))?|(?:twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)(?: ?(?:one|two|three|four|five|six|seven|eight|nine))?)"
    r" ?(?:°|degrees?|deg\b)? ?(?P<u>c\b|f\b|celsius\b|fahrenheit\b|centigrade\b)?"
)
_OVEN_TEMP = re.compile(r"\b(?:oven|hob|air|grill|fan|gas mark)(?: \w+){0,4}? ?$")


def event_type(masked: str) -> EventType | None:
    """The type of event that a masked text reports, if it reports one."""
    for kind, pattern in _CUES:
        if pattern.search(masked):
            if kind is EventType.PROBE and temperature(masked) is None:
                continue
            return kind
    return None


def temperature(text: str) -> float | None:
    """A food's temperature in °C, the lowest of two; without a unit 100 or less is °C, above is °F."""
    found = []
    for match in _TEMP.finditer(text):
        before = text[: match.start()]
        after = text[match.end() : match.end() + 12]
        if before[-1:].isalnum() or before[-1:] in (":", "."):
            continue
        if re.match(r" ?(?:min|mins|minutes|m\b|hrs?|hours?|g\b|kg|lb|oz|ml|people|%|:|x\b|k\b)", after):
            continue
        if _OVEN_TEMP.search(before[-40:]) and not match.group("u"):
            continue
        number = _number(match.group("n"))
        unit = (match.group("u") or "")[:1]
        degrees = number if unit in ("c",) or (not unit and number <= 100) else (number - 32) * 5 / 9
        if -30 <= degrees <= 150:
            found.append(round(degrees, 1))
    return min(found) if found else None


def _number(text: str) -> float:
    if text[0].isdigit():
        return float(text.replace(",", "."))
    hundred, _, rest = text.partition("hundred")
    if "hundred" not in text:
        return value(text)
    base = 100 * (value(hundred) if hundred.strip() not in ("", "a") else 1)
    rest = rest.replace("and", "").strip()
    return base + (value(rest) if rest else 0)


def event_minutes(text: str, kind: EventType) -> float | None:
    """Minutes that belong to an event, told or worked out from two clock times."""
    if kind in (EventType.STOP, EventType.SKIP):
        return None
    times = list(clocks(text)) + _bare_clocks(text)
    if len(times) >= 2 and kind is not EventType.DELAY:
        times.sort(key=lambda t: t[1])
        minutes = sorted(_minute(clock) for clock, _ in times[:2])
        return float(minutes[1] - minutes[0])
    spans = [m for m, _ in durations(text)]
    if spans:
        return spans[0]
    if kind is EventType.DELAY:
        bare = re.search(
            rf"\b(?:give (?:me|us)|im|i am|we(?:re)?(?: are)?|running|about|by|need|wait|back in|in|another) (?:about |like |another )?(?P<n>{NUM})\b(?! ?(?:c\b|f\b|people|g\b|:|pm))",
            text,
        )
        if bare:
            return value(bare.group("n"))
    if kind in (
        EventType.TOO_FAST,
        EventType.NOT_DONE,
        EventType.DONE_STEP,
        EventType.STARTED,
        EventType.FORGOT,
    ):
        bare = re.search(rf"\b(?P<n>{NUM}) (?:early|ago|ahead|in\b|late)", text)
        if bare:
            return value(bare.group("n"))
    return None


def _bare_clocks(text: str) -> list[tuple[str, tuple[int, int]]]:
    """Hours said without minutes beside another clock time: "put it on at 4, it's 5:30"."""
    known = list(clocks(text))
    if len(known) != 1:
        return []
    out = []
    for match in re.finditer(
        r"\b(?:at|since|from|its|now) (\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)\b(?! ?(?:min|[:.]\d|c\b|f\b|deg|past|to\b|h\b|hour|[ap]m))",
        text,
    ):
        hour = int(value(match.group(1)))
        if 1 <= hour <= 23 and not any(a < match.end() and match.start() < b for _, (a, b) in known):
            out.append((f"{hour + 12 if hour < 12 else hour:02d}:00", match.span()))
    return out


def _minute(clock: str) -> int:
    hour, _, minute = clock.partition(":")
    return int(hour) * 60 + int(minute)

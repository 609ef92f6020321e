"""What a message wants: plan, swap, event, question, setting or nothing we can do.

The order of the tests is the order of trust: attacks and noise first, then what
holds for later, then what just happened, then a change, a question, and last the
plan, which is what a list of foods means when nothing else is said.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from knowledge.text.events import event_type
from knowledge.text.model import Context, EventType, Intent, Kind, Mode
from knowledge.text.settings import is_setting

_ATTACK = re.compile(
    r"\b(?:ignore|disregard|forget|override|bypass) (?:\w+ ){0,3}(?:instructions?|rules?|prompts?|guidelines|orders)\b|system prompt|\bjailbreak|\bdeveloper mode\b|\bprint (?:the|your|all)\b|\b(?:api|bot|access) ?(?:token|key)|\bpassword\b|"
    r"\breply only with\b|\brepeat after me\b|\bpretend (?:to be|you)|\byou are now\b|\bdrop table\b|<script|\bsudo\b|\brm -rf\b|\bselect \*|\breveal your\b|\bact as (?:a|an|my)\b"
)
_OFF_TOPIC = re.compile(
    r"\b(?:python|javascript|java|script|code|poem|essay|limerick|haiku|song|lyrics|novel|story about|homework|email (?:it|to|my)|translate|capital of|president|prime minister|weather|football|score|bitcoin|stocks?(?= (?:price|market))|stock market|movie|film|netflix|joke|lottery|horoscope|"
    r"meaning of life|who won|who is|how tall|how old are you|population|exchange rate|flight|hotel|dating|girlfriend problems|taxes?|mortgage|wifi|phone (?:case|charger)|buy me|amazon|order me (?:a )?(?:taxi|uber)|math|square root|my (?:cat|dog)|what year|history of|news|spell|rap)\b"
)
_ABUSE = re.compile(
    r"\b(?:stupid|idiot|useless|dumb|moron|shut up|f+u+c+k\w*|fck|shit\w*|crap bot|bullshit|bitch|wanker|bastard|asshole|arsehole|piss off|screw you|you suck|garbage bot|rubbish bot|hate you|trash bot|worst bot|terrible bot|bloody useless|go to hell|twat|dick|cunt)\b"
)
_GREETING = re.compile(
    r"^\W*(?:hi+|hey+|hello+|hiya|yo|howdy|good (?:morning|afternoon|evening|day)|morning|evening|afternoon|gday|g day|sup|whats up|hola|namaste|salaam|salam|bonjour|ciao|hallo|greetings|heya|oi)(?: (?:there|all|bot|chef|again|mate|everyone|you|folks|panwright))?\W*$"
)
_THANKS = re.compile(
    r"^\W*(?:(?:ok|okay|great|perfect|awesome|brilliant|amazing|lovely|wow|that was|it was|cool|nice|delicious|yum+y?|so|oh|much|really|and|very|many|well)[ ,]*)*(?:thanks?|thx|ty|cheers|thank you|thankyou|ta|tysm|shukriya|gracias|dhanyavaad|merci|delicious|yum+y?|lovely|brilliant|perfect|awesome|great|amazing)(?: (?:so much|a lot|a million|loads|again|mate|bot|chef|everyone|very much|you|for \w+(?: \w+)?|that was \w+|everyone loved it|it was \w+|a ton))*\W*$"
)
_PLAN_ASK = re.compile(
    r"\b(?:what (?:can|could|should|shall|do|would|to|will) (?:i|we|you)?(?: be able to)? ?(?:make|cook|do|whip up|suggest|have for|throw together|rustle up|create|eat|prepare)|what (?:to|can) (?:make|cook|go)|whats for (?:dinner|tea|supper)|dinner ideas?|any ideas|ideas\b|can these go|what goes (?:first|in first|in when)|go together\?|plan (?:dinner|for tonight|me|a|something|it)|help me (?:cook|make|plan)|something (?:with|from|for)|how (?:do|can|should|would) i (?:cook|make|do) (?:this|these|it all|them|all)|make (?:me )?(?:dinner|something|a)|use (?:it|them|these|this) up|need(?:s)? using)\b"
)
_QUESTION = re.compile(
    r"^\W*(?:ok |so |hey |hi |quick question |question |quick q |um |and |but |wait |also |just wondering |please |pls |sorry |help )*(?:how|what|whats|when|why|which|where|who|is|are|can|could|does|do|did|should|shall|will|would|may|am|has|have (?:i|you)|any(?:one)?|must|isnt|arent|doesnt)\b|"
    r"\b(?:how (?:long|much|many|hot|do|does|small|big|thick|often|should|can|to|far|late|well|come|soon)|what (?:temp\w*|heat|size|is|are|does|do|s\b|kind|can|setting|oven|internal|about)|whats|is it (?:ok|okay|safe|alright|fine|true|bad|possible|dangerous|too)|(?:is|are|was) (?:it|that|this|they|these|those) (?:ok|okay|safe|alright|fine|true|bad|still|edible|good)|safe to|ok to|okay to|still (?:good|ok|safe|edible|fine)|can (?:i|you|we|it|u|one)|should (?:i|we|it)|do (?:i|you|we) (?:need|have)|does (?:it|the)|difference between|why (?:do|does|is|are|did)|when (?:do|should|is|to)|explain|tell me (?:about|how|why|what)|mean(?:s|ing)?\?|i wonder|wondering|meaning of|need to (?:soak|wash|peel|rinse|salt)|the (?:difference|safe temp\w*|best way))\b"
)


@dataclass(frozen=True, slots=True)
class Signs:
    """What is known of a message when its kind is decided."""

    text: str  # flat
    masked: str
    foods: int  # foods at hand, refused ones not counted
    refused: int
    amounts: int  # foods with an amount or a state
    swap: bool
    diet: bool
    people: bool
    deadline: bool
    vessel: bool
    vessel_out: bool
    unknown: bool


def kind_of(signs: Signs, context: Context) -> Kind:
    """The kind of a message."""
    text, masked = signs.text, signs.masked
    if _ATTACK.search(text):
        return Kind.OTHER
    if _GREETING.match(text) or _THANKS.match(text):
        return Kind.OTHER
    if signs.foods < 2 and _OFF_TOPIC.search(text):
        return Kind.OTHER
    if _ABUSE.search(text) and signs.foods < 2:
        return Kind.OTHER
    lists = signs.foods >= 3 or (signs.foods >= 2 and signs.amounts >= 1)
    setting = is_setting(masked)
    event = event_type(masked)
    if event is EventType.STOP and not lists:
        return Kind.COOK_EVENT
    if setting and not lists and not _urgent(event, text) and _lasting(signs) and not _swaps_tonight(signs):
        return Kind.SETTING
    if signs.swap and not (lists and signs.foods >= 4) and not _one_sided(signs, event):
        return Kind.SWAP
    if signs.foods >= 3 and _PLAN_ASK.search(text):
        return Kind.PLAN
    if event and not lists and _is_event(event, signs, context):
        return Kind.COOK_EVENT
    if _asks(signs, lists):
        return Kind.QUESTION
    if signs.foods or signs.refused or signs.unknown:
        return Kind.PLAN
    if event:
        return Kind.COOK_EVENT
    if setting:
        return Kind.SETTING
    if signs.people or signs.deadline or signs.vessel or signs.vessel_out:
        return Kind.PLAN
    if signs.diet:
        return Kind.SETTING
    if _PLAN_ASK.search(text):
        return Kind.QUESTION
    return Kind.OTHER


def _urgent(event: EventType | None, text: str) -> bool:
    return event in (EventType.FORGOT, EventType.OVEN_NOT_HOT) and bool(
        re.search(r"\bnow\b|\btonight\b|isnt heating|still cold", text)
    )


def _lasting(signs: Signs) -> bool:
    """A setting carries no list of foods at hand; one food may be the refused one."""
    return (
        signs.foods == 0
        or (bool(
            re.search(
                r"\b(?:suggest|from now on|always|never|remember|allerg|hates?|british|american)\w*",
                signs.text,
            )
        )
        and signs.foods <= 2
        and not signs.amounts)
    )


def _swaps_tonight(signs: Signs) -> bool:
    return signs.swap and not re.search(r"\b(?:from now on|always|never|remember|british|american|suggest\w*)\b", signs.text)


def _one_sided(signs: Signs, event: EventType | None) -> bool:
    """A food refused or missing in a list of others is no swap."""
    return (
        (signs.foods >= 3
        and signs.refused >= 1)
        or (event in (EventType.SKIP,) and signs.foods < 2 and "instead" not in signs.text)
    )


def _is_event(event: EventType, signs: Signs, context: Context) -> bool:
    text = signs.text
    asked = bool(_QUESTION.search(text))
    if context.mode is Mode.COOKING and not re.search(r"^\W*(?:how|what|why|is it safe|can i eat)\b", text):
        return True
    if event is EventType.PROBE:
        return not re.search(
            r"\b(?:is|are) (?:\w+ ){0,3}(?:safe|ok|done|cooked) at\b|^\W*(?:what|whats|how|is|are|does|should|can)\b|\bwhat (?:temp|internal)",
            text,
        ) or bool(
            re.search(r"\b(?:reads?|says|probe|thermometer|its at)\b.*\d", text)
            and not re.match(r"\W*(?:what|is it|should)", text)
        )
    if event is EventType.DELAY:
        return not re.match(r"\W*(?:how|what|why|is it)\b", text) and signs.foods <= 1
    if "?" in text and asked and event in (EventType.NOT_DONE, EventType.TOO_FAST, EventType.SKIP) and re.search(
        r"how (?:long|much|do)|poison|is it (?:safe|ok)|why", text
    ):
        return False
    if event is EventType.SKIP:
        return not re.match(r"\W*(?:how|what|why|is it)\b", text)
    if asked and re.match(
        r"\W*(?:how|what|whats|why|is|are|can|does|do|should|when|will|would|which)\b", text
    ):
        return False
    if (
        event in (EventType.STARTED, EventType.DONE_STEP)
        and signs.amounts
        and signs.foods
        and not re.search(r"\b(?:added|put|went|in at|flipped|stirred)\b", text)
    ):
        return False
    return True


def _asks(signs: Signs, lists: bool) -> bool:
    text = signs.text
    if lists and signs.foods >= 3:
        return False
    if _PLAN_ASK.search(text) and signs.foods >= 1:
        return False
    if "?" in text and _QUESTION.search(text):
        return True
    return (
        bool(_QUESTION.match(text) and (signs.foods <= 2 or text.endswith("?")))
        or bool(_QUESTION.search(text) and signs.foods <= 2 and not signs.amounts)
        or bool(
            re.search(r"\bhow (?:long|much|many|hot|to|do)\b|\bis it safe\b|\bwhat temp", text)
            and signs.foods <= 2
        )
    )


_INTENTS: tuple[tuple[Intent, re.Pattern[str]], ...] = tuple(
    (intent, re.compile(pattern))
    for intent, pattern in (
        (Intent.ABUSE, _ABUSE.pattern),
        (
            Intent.UNDO,
            r"^\W*(?:undo|go back|back|revert|swap (?:it|them|those|these|those two|the two) back|(?:put|change) (?:it|them) back|never ?mind(?: that)?|as (?:it was|before)|the (?:old|first|previous) (?:one|plan)|undo that)(?: please| pls)?\W*$",
        ),
        (
            Intent.FORGET,
            r"^\W*(?:forget (?:it|that|the plan|everything)|start over|new (?:plan|dinner)|clear(?: the plan| it| everything)?|reset|scrap that|from scratch)(?: please)?\W*$",
        ),
        (
            Intent.START,
            r"^\W*(?:(?:ok|okay|right|yes|yep|alright|so|cool|great|perfect|good|looks good|sounds good|lovely|and)[ ,]*)*(?:start|begin|lets (?:go|start|cook|do (?:it|this)|begin)|go|im ready|ready|start (?:now|cooking|the (?:cook|clock|timer|plan)|it)|ready to (?:start|go|cook)|off we go|here we go|cook it|do it|im starting|starting(?: now)?|shuru\w*(?: karo)?)(?: now| please| then)?\W*$",
        ),
        (
            Intent.HELP,
            r"^\W*(?:/?help(?: me)?|/start|what can (?:you|i) (?:do|say|ask)(?: here)?|what do you do|how (?:do|does) (?:you|this|it) work|who are you|what are you|commands?|instructions|how do i use (?:this|you)|what is this)(?: please)?\W*$",
        ),
        (Intent.GREETING, _GREETING.pattern),
        (Intent.THANKS, _THANKS.pattern),
        (
            Intent.OTHER_VESSEL,
            r"\b(?:another|different|other) (?:way|vessel|pan|pot|option|method)\b|\b(?:show me|what about) (?:another|the other|an alternative)|\balternatives?\W*$|^\W*(?:something else|other options?|another one)\W*$",
        ),
        (
            Intent.STATUS,
            r"\b(?:whats next|what is next|what now|now what|next step|how long (?:left|to go|until|till|now|more|have i|do i have|is left)|how much (?:longer|time)|when (?:is it|will it be|are we|do we eat|is dinner|will dinner be)|status|where (?:are we|am i)|time left|are we (?:there|on track)|whats (?:happening|left|the status))\b|^\W*next\W*$",
        ),
        (Intent.WHY, r"^\W*(?:but |and |ok |so )*(?:why|how come|explain|whats the reason|reason)\b"),
        (
            Intent.SHOW,
            r"^\W*(?:show (?:me )?(?:the |my )?(?:plan|steps|it|timeline|list|recipe|whole (?:plan|thing))(?: again)?|(?:the )?(?:plan|steps|timeline)(?: again| please)?|repeat(?: that| it| the plan)?|again|say that again|what was the plan|full plan|whole plan|recap)(?: please| again)?\W*$",
        ),
        (
            Intent.SETTINGS,
            r"^\W*/?(?:(?:show (?:me )?|what are )?(?:my |the )?settings|preferences|my kitchen|what do you (?:know|remember)(?: about me)?|list what you know)\W*$",
        ),
        (
            Intent.YES,
            r"^\W*(?:yes|yep|yeah|yup|ya|sure|ok|okay|correct|right|thats right|that one|please do|haan|si|oui|y|fine|sounds good|looks good|go for it|works for me|of course|absolutely|👍|✅|👌)(?: please| thanks| do| that| it is| exactly)*\W*$",
        ),
        (
            Intent.NO,
            r"^\W*(?:no|nope|nah|not really|no thanks|no thank you|n|nahi|neither|wrong|thats wrong|👎|none of (?:them|those))\W*$",
        ),
    )
)


def intent_of(text: str) -> Intent | None:
    """A short request about the conversation itself, if the text is one."""
    for intent, pattern in _INTENTS:
        if pattern.search(text):
            return intent
    return None


_AMENDS = re.compile(
    r"\b(?:after all|actually|instead|as well|too\b|also\b|make it (?:for )?\d|make it (?:two|three|four|five|six|seven|eight)|we(?:re| are) now|now (?:for )?\d|one more|another (?:person|guest)|forgot(?: to (?:say|mention))?|i (?:also )?(?:have|found|got)|found (?:some|a|an)|"
    r"add|without|no \S+ after|use the (?:pot|pan|tray|oven|pressure cooker|skillet|wok)|by \d+ instead|can it be|change (?:it|that|the)|but (?:for|by|in)|faster|quicker|crispier|crisper|saucier|softer|less|more sauce|earlier|later|oh and|and also|plus)\b"
)
_WISHES: tuple[tuple[str, re.Pattern[str]], ...] = tuple(
    (wish, re.compile(rf"\b(?:{pattern})\b"))
    for wish, pattern in (
        ("crisp", r"crisp(?:y|ier|er)?|crunchy(?! still)|browned|golden|charred bits"),
        ("saucy", r"sauc(?:y|ier)|more sauce|soupy|brothy|stewy|gravy please|with (?:a )?sauce|juicy"),
        ("soft", r"softer|very soft|soft please|mushy please|melting|fall(?:ing)? apart tender|fork tender"),
        ("quick", r"quick(?:er|est|ly)?|fast(?:er|est)?|asap|in a (?:hurry|rush)|speedy|starving|no time"),
        (
            "less chopping",
            r"less chopping|no chopping|dont (?:want|wanna|feel like) (?:to )?chop\w*|minimal (?:chopping|prep)|lazy|low effort|easy|easiest|least (?:effort|chopping|prep|work)",
        ),
        (
            "less washing up",
            r"less washing up|one (?:pan|pot|tray|vessel)|fewest dishes|least washing up|no washing up",
        ),
        ("light", r"light(?:er)?(?! soy)|healthy|healthier"),
        ("spicy", r"(?<!not )(?<!nothing )(?<!too )spicy|extra hot|lots of heat"),
        ("oven", r"in the oven|roast(?:ed)? please|baked please|use the oven"),
        (
            "hob",
            r"on the (?:hob|stove)|stove ?top|dont (?:want|wanna) (?:to )?(?:turn on|use) the oven|hob only",
        ),
        ("no frying", r"dont (?:want|wanna) (?:to )?fry|no frying|not fried|without frying"),
        ("soup", r"soup(?:y)?(?! pot)"),
    )
)


def amends(text: str, context: Context) -> bool:
    """Whether a message about foods changes the plan in hand rather than beginning a new one."""
    return context.mode is not Mode.IDLE and bool(_AMENDS.search(text))


def wishes(text: str) -> tuple[str, ...]:
    """How the dinner is wanted, beside the fields that have names of their own."""
    return tuple(wish for wish, pattern in _WISHES if pattern.search(text))


def about_words(text: str) -> bool:
    """Whether a setting speaks of how to say things, not of what to eat."""
    return bool(re.search(r"\b(?:british|american|english|say|call (?:it|them)|language)\b", text))

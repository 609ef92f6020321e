"""How small to cut one food so that it is done together with another."""

from __future__ import annotations

from knowledge.answers.cite import cited
from knowledge.answers.heating import minutes
from knowledge.answers.model import Answer, Mention, Question
from knowledge.answers.sizes import as_said, at_size, shown, whole
from knowledge.answers.ways import cooks, saying, way_of
from knowledge.foods.model import DoneKind

SIZES_MM = (8.0, 10.0, 12.0, 15.0, 18.0, 20.0, 25.0, 30.0, 35.0, 40.0)
# Nobody cuts larger pieces to eat (common practice): what is slower still goes in first.
TRAY_MIN_MM = 15.0  # smaller pieces scorch on a tray before they are soft (common practice)
CUTTING = ("cut", "size", "thick", "dice", "slice", "chunk", "piece", "cube", "thin")
MATCHING = (
    "match", "same", "as fast", "together", "alongside", "to go with", "finish with", "ready",
    "keep up", "done",
    "equal", "in time", "with", "for_",
)  # fmt: skip


ASKS = (
    "how small", "how big", "how thick", "what size", "which size", "how large", "how thin",
    "how should i cut",
    "how do i cut", "cut small", "size to cut", "size should", "cut size", "size of", "size for", "how fine",
    "bigger or smaller",
    "smaller or bigger", "larger or smaller", "thicker or thinner", "same size", "finish together",
    "done together",
    "ready together", "even size", "cut to cook", "cut to go", "cut to match", "cut for",
)  # fmt: skip


def cut_to_match(question: Question) -> Answer | None:
    """The size at which one food is done together with another."""
    foods = _foods(question)
    pair = question.says(*CUTTING) and question.says(*MATCHING)
    timed = question.says("how long", "minutes", "when")
    if len({m.food.id for m in foods}) < 2 or not (question.says(*ASKS) or (pair and not timed)):
        return None
    cut, other = foods[0], foods[1]
    wet = any(question.store.doneness(m.food.doneness).kind is DoneKind.HYDRATE for m in (cut, other))
    if wet and way_of(question) == "roast":
        return None  # dry grain and pulses do not roast done
    way = way_of(question) or (
        "boil" if wet or question.says("pot_", "soup", "stew", "curry", "broth") else "roast"
    )
    fixed = as_said(question, other.food)
    ((_, target_min, _),) = minutes(question, other.food, [fixed], way)
    least_mm = TRAY_MIN_MM if way == "roast" else 0.0
    tried = [
        at_size(question.store, cut.food, mm)
        for mm in SIZES_MM
        if least_mm <= mm <= max(cut.food.whole_mm or SIZES_MM[-1], least_mm)
    ]
    if not tried:  # thin as it is, like the wall of a pepper: no cut makes it slower
        ((_, mins, _),) = minutes(question, cut.food, [whole(question.store, cut.food)], way)
        usual = question.store.cut(cut.food.cuts[0]).name
        text = f"{cut.phrase.capitalize()} are thin: any cut ({usual}) takes {mins:.0f} min, while "
        text += f"{other.phrase} ({shown(fixed)}) takes {target_min:.0f} min, {saying(question, way)}."
        return Answer(known=True, answer=text, sources=cited(question.store, "A-PHYSICS"))
    times = minutes(question, cut.food, tried, way)
    fits = [
        (abs(m - target_min), p, m) for p, (_, m, _) in zip(tried, times, strict=True) if m and target_min
    ]
    if not fits:
        return None
    off, piece, mins = min(fits, key=lambda entry: (round(entry[0], 1), -entry[1].size_mm))
    text = (
        f"Cut {cut.phrase} to about {piece.size_mm:.0f} mm ({piece.size_mm / 25.4:.1f} in): "
        f"{mins:.0f} min, while {other.phrase} ({shown(fixed)}) takes {target_min:.0f} min, "
        f"{saying(question, way)}."
    )
    if off > max(3.0, 0.15 * target_min):
        if mins > target_min:
            text += f" Even so it is slower: give {cut.phrase} {mins - target_min:.0f} min start."
        else:
            text += f" It is quicker even so: add it {target_min - mins:.0f} min later."
    return Answer(known=True, answer=text, sources=cited(question.store, "A-PHYSICS"))


def usual_cuts(question: Question) -> Answer | None:
    """How a food is usually cut, where nothing is named that it goes with."""
    foods = _foods(question)
    cutting = question.says("cut", "chop", "dice", "slice")
    if not foods or not cutting or not question.says(*ASKS) or len({m.food.id for m in foods}) > 1:
        return None
    mention = foods[0]
    cuts = [question.store.cut(cut_id).name for cut_id in mention.food.cuts[:3]]
    return Answer(
        known=True,
        answer=f"{mention.phrase.capitalize()}: usually {', '.join(cuts)}. "
        "Name what it goes with and I compute the size.",
        sources=cited(question.store, "CP"),
    )


def _foods(question: Question) -> list[Mention]:
    return [m for m in question.mentions if cooks(question.store, m.food)]

"""While nothing is on the heat: the offer, its changes, swaps, other ways, reasons."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from bot.core.actions import Button, Outcome, Say
from bot.core.questions import Asked, ask, cleared, plan_button, yes_no
from bot.core.replies import cooks, plans, talk
from bot.core.replies.layout import duration, local, paragraphs
from bot.core.state import Chat, Profile
from bot.core.teaching import unknown_question
from knowledge import Knowledge
from knowledge.planner.model import Have, NoPlan, Plan, Request, SwapAnswer, Verdict
from knowledge.text.model import Reading, SwapRead

EATERS_CHOICES = (2, 4, 6)
JOINS_WITHIN = timedelta(minutes=30)  # of a plan: later it is the next evening


# --- asking the planner -------------------------------------------------------------------------


def reading_request(
    state: Chat, reading: Reading, now: datetime, knowledge: Knowledge, base: Request | None = None
) -> Request:
    """What a reading asks for, under this cook's profile."""
    profile = state.profile
    request = knowledge.request_of(
        reading,
        kitchen=profile.kitchen,
        eaters=profile.eaters,
        diets=profile.diets,
        excluded=profile.excluded,
        now=local(now, profile.utc_offset_min),
        base=base,
    )
    return replace(request, learned=profile.learned)


def ready_at(state: Chat) -> datetime | None:
    """When dinner of the plan on the table is wanted."""
    if state.offer is None or state.offered_at is None or state.offer.request.ready_in_s is None:
        return None
    return state.offered_at + timedelta(seconds=state.offer.request.ready_in_s)


def under_profile(request: Request, profile: Profile, knowledge: Knowledge) -> Request:
    """A request laid under a changed profile: kitchen, people, diets, foods never wanted."""
    barred = [food.id for name in profile.excluded if (food := knowledge.named(name)) is not None]
    return replace(
        request,
        kitchen=profile.kitchen,
        eaters=request.eaters if request.eaters_said or profile.eaters is None else profile.eaters,
        diets=tuple(dict.fromkeys((*request.diets, *profile.diets))),
        excluded=tuple(dict.fromkeys((*request.excluded, *barred))),
    )


def current_request(state: Chat, now: datetime) -> Request | None:
    """The request of the plan on the table (or of the refusal), its deadline counted from now."""
    held = state.offer or state.refusal
    if held is None:
        return None
    wanted = ready_at(state)
    if wanted is None:
        return held.request
    return replace(held.request, ready_in_s=(wanted - now).total_seconds())


# --- the offer ----------------------------------------------------------------------------------


def buttons(offer_no: int) -> tuple[tuple[Button, ...], ...]:
    """What can be done with an offer."""
    return (
        (plan_button(plans.START, offer_no, "start"), plan_button(plans.WAYS, offer_no, "ways")),
        (plan_button(plans.WHY, offer_no, "why"), plan_button(plans.CHANGE, offer_no, "change")),
    )


def offer(
    state: Chat,
    answer: Plan | NoPlan,
    now: datetime,
    *,
    lead: str = "",
    read_as: Sequence[str] = (),
    tail: str = "",
    rows: tuple[tuple[Button, ...], ...] = (),
) -> Outcome:
    """The answer of the planner becomes what is on the table, and is said."""
    turn = state.turn + 1
    cautioned = state.offer.cautions if state.offer is not None else ()
    refused = answer if isinstance(answer, NoPlan) else None
    plan = answer.nearest if isinstance(answer, NoPlan) else answer
    state = replace(
        state,
        turn=turn,
        offer=plan,
        offer_no=turn,
        offered_at=now,
        refusal=refused,
        previous=state.offer or state.previous,
    )
    text = ""
    if plan is not None:
        text = plans.offer(
            plan,
            now=now,
            ready_at=ready_at(state),
            offset_min=state.profile.utc_offset_min,
            read_as=read_as,
            cautioned=cautioned,
        )
        rows = (*rows, *buttons(turn))
    if refused is not None:
        text = paragraphs(plans.refusal(refused), text)
    return Outcome(state=state, actions=(Say(text=paragraphs(lead, text, tail), buttons=rows),))


def shown(state: Chat, now: datetime, lead: str = "") -> Outcome:
    """The plan on the table, again."""
    if state.offer is None:
        return Outcome(state=state, actions=(Say(text=paragraphs(lead, talk.NO_PLAN_YET)),))
    text = plans.offer(
        state.offer, now=now, ready_at=ready_at(state), offset_min=state.profile.utc_offset_min, read_as=()
    )
    return Outcome(state=state, actions=(Say(text=paragraphs(lead, text), buttons=buttons(state.offer_no)),))


def new_plan(state: Chat, reading: Reading, now: datetime, knowledge: Knowledge) -> Outcome:
    """A message with foods: a plan at once, with one question about what nobody knows."""
    state = cleared(state)
    if not any(item.food_id for item in reading.items):
        return _nothing_placed(state, reading, knowledge)
    request = reading_request(state, reading, now, knowledge)
    fresh = replace(state, previous=None, offer=None)
    return _planned(replace(fresh, previous=state.offer), request, reading, now, knowledge)


def joined_or_new(state: Chat, reading: Reading, now: datetime, knowledge: Knowledge) -> Outcome:
    """Foods while a plan is on the table: one alone, said soon after, joins it; a list is another dinner.

    A second protein is another dinner too: nobody wants salmon in with the chicken.
    """
    placed = [item for item in reading.items if item.food_id is not None]
    soon = state.offered_at is not None and now - state.offered_at < JOINS_WITHIN
    if state.offer is None or len(placed) != 1 or not soon or reading.people or reading.ready_by:
        return new_plan(state, reading, now, knowledge)
    foods = [knowledge.named(item.food) for item in state.offer.items]
    new = knowledge.named(placed[0].name)
    main = any(food is not None and food.part == "protein" for food in foods)
    if len(foods) < 2 or new is None or (main and new.part == "protein"):
        return new_plan(state, reading, now, knowledge)
    if placed[0].food_id in {item.food_id for item in state.offer.items} and placed[0].qty is None:
        return shown(state, now)
    lead = talk.joined(placed[0].phrase or placed[0].name)
    return _led(amended(state, replace(reading, amends=True), now, knowledge), lead)


def amended(state: Chat, reading: Reading, now: datetime, knowledge: Knowledge) -> Outcome:
    """A message that changes the plan on the table."""
    base = current_request(state, now)
    if base is None:
        return new_plan(state, reading, now, knowledge)
    request = reading_request(state, reading, now, knowledge, base=base)
    return _planned(cleared(state), request, reading, now, knowledge)


def _planned(state: Chat, request: Request, reading: Reading, now: datetime, knowledge: Knowledge) -> Outcome:
    before = state.offer
    answer = knowledge.plan(request)
    unplaced = tuple(item for item in reading.items if item.food_id is None)
    state = replace(state, unplaced=unplaced)
    sure = [plans.read_as(item.phrase, item.name) for item in reading.items if item.food_id and not item.sure]
    lead = plans.difference(before, answer) if before is not None and isinstance(answer, Plan) else ""
    lead = paragraphs(_without(reading, before, knowledge), lead)
    if before is not None and isinstance(answer, Plan) and _tastes_otherwise(before, answer):
        return _flavoured(state, answer)
    hurried = "quick" in reading.wishes
    same = reading.ready_by is None and _is_the_same(before, answer)
    if same and before is not None and isinstance(answer, Plan) and not unplaced:
        text = paragraphs(
            _without(reading, before, knowledge), plans.unchanged(before, answer, hurried=hurried)
        )
        state = replace(state, offer=answer)
        return Outcome(state=state, actions=(Say(text=text, buttons=buttons(state.offer_no)),))
    if unplaced:
        asked, question, rows = unknown_question(state, knowledge)
        return offer(asked, answer, now, lead=lead, read_as=sure, tail=question, rows=rows)
    return offer(state, answer, now, lead=lead, read_as=sure, tail=reading.asks[0] if reading.asks else "")


def _is_the_same(before: Plan | None, answer: Plan | NoPlan) -> bool:
    """Whether what was wanted changes nothing that the cook does."""
    same = before is not None and isinstance(answer, Plan) and answer.steps == before.steps
    return same and before is not None and answer.request.eaters == before.request.eaters


def _tastes_otherwise(before: Plan, answer: Plan) -> bool:
    """Whether a direction of flavour was asked for and is all that changes."""
    asked = answer.request.flavours != before.request.flavours
    return asked and replace(answer, request=before.request, flavour=before.flavour) == before


def _flavoured(state: Chat, answer: Plan) -> Outcome:
    """The plan on the table with another direction of flavour: one line, the rest stands as it is."""
    state = replace(cleared(state), offer=answer)
    text = plans.flavoured(answer)
    return Outcome(state=state, actions=(Say(text=text, buttons=buttons(state.offer_no)),))


def _without(reading: Reading, before: Plan | None, knowledge: Knowledge) -> str:
    """An allergy said with a dinner is said back; a food just taken out shows in the plan itself."""
    had = {name for item in (before.items if before else ()) for name in (item.food, item.label)}
    barred = [d for d in reading.diet if d.startswith("no ")]
    allergens = {name: knowledge.allergens(name) for name in reading.allergies}
    barred += [f"no {token}" for tokens in allergens.values() for token in tokens]
    barred += [f"no {name}" for name in reading.excluded if name not in had and not allergens.get(name)]
    allergy = bool(reading.allergies) or "allerg" in reading.text.lower() or bool(reading.diet)
    return talk.tonight(list(dict.fromkeys(barred)), reading.dropped, allergy) if barred else ""


def _nothing_placed(state: Chat, reading: Reading, knowledge: Knowledge) -> Outcome:
    unplaced = tuple(item for item in reading.items if item.food_id is None)
    if not unplaced:
        return Outcome(state=state, actions=(Say(text=talk.NOTHING_EDIBLE),))
    asked, question, rows = unknown_question(replace(state, unplaced=unplaced), knowledge)
    return Outcome(state=asked, actions=(Say(text=question, buttons=rows),))


def again(state: Chat, request: Request, now: datetime, knowledge: Knowledge, lead: str = "") -> Outcome:
    """Plan a changed request."""
    return offer(cleared(state), knowledge.plan(request), now, lead=lead)


def undone(state: Chat, now: datetime) -> Outcome:
    """Back to the plan before; a second "undo" comes forward again."""
    if state.previous is None:
        return Outcome(state=state, actions=(Say(text=talk.NOTHING_TO_UNDO),))
    return offer(cleared(state), state.previous, now)


def dropped(state: Chat) -> Outcome:
    """The plan is off the table."""
    state = replace(cleared(state), offer=None, previous=state.offer, refusal=None, unplaced=())
    return Outcome(state=state, actions=(Say(text=talk.FORGOTTEN),))


# --- what is asked about an offer -----------------------------------------------------------------


def why(state: Chat, reading: Reading, now: datetime, knowledge: Knowledge) -> Outcome:
    """The reasons behind the plan on the table, or behind the refusal; "why not the pot?" compares."""
    if state.offer is not None and reading.vessel not in (None, state.offer.vessel):
        return _compared(state, reading.vessel or "", now, knowledge)
    if state.offer is not None:
        return Outcome(state=state, actions=(Say(text=plans.why(state.offer)),))
    if state.refusal is not None:
        return Outcome(state=state, actions=(Say(text=plans.why_not(state.refusal)),))
    return Outcome(state=state, actions=(Say(text=talk.NO_PLAN_YET),))


def _compared(state: Chat, vessel: str, now: datetime, knowledge: Knowledge) -> Outcome:
    """The same dinner in another vessel beside the one on the table, to be taken or left."""
    base, here = current_request(state, now), state.offer
    if base is None or here is None:
        return Outcome(state=state, actions=(Say(text=talk.NO_PLAN_YET),))
    free = tuple(v for v in base.not_vessels if v != vessel)
    other = knowledge.plan(replace(base, vessel=vessel, not_vessels=free))
    if isinstance(other, NoPlan):
        return Outcome(state=state, actions=(Say(text=plans.why_not(other)),))
    asked = ask(state, Asked.TAKE, other)
    row = yes_no(plans.TAKE_IT, plans.LEAVE_IT, asked)
    return Outcome(state=asked, actions=(Say(text=plans.compared(here, other), buttons=(row,)),))


def ways(state: Chat) -> Outcome:
    """The other vessels, a button each."""
    if state.offer is None:
        return Outcome(state=state, actions=(Say(text=talk.NO_PLAN_YET),))
    rows = tuple(
        (
            plan_button(
                f"{way.vessel.capitalize()}, {duration(way.total_s)}", state.offer_no, "vessel", way.vessel
            ),
        )
        for way in state.offer.alternatives
    )
    return Outcome(state=state, actions=(Say(text=plans.ways(state.offer), buttons=rows),))


def in_vessel(state: Chat, vessel: str, now: datetime, knowledge: Knowledge) -> Outcome:
    """The same dinner in another vessel."""
    base = current_request(state, now)
    if base is None:
        return Outcome(state=state, actions=(Say(text=talk.NO_PLAN_YET),))
    not_vessels = tuple(v for v in base.not_vessels if v != vessel)
    return again(state, replace(base, vessel=vessel, not_vessels=not_vessels), now, knowledge)


def directions(state: Chat, reading: Reading, now: datetime, knowledge: Knowledge) -> Outcome:
    """Directions of flavour that suit the dinner: a button each for the plan on the table, to read while
    it cooks.
    """
    held = state.cook.plan.request if state.cook is not None else current_request(state, now)
    if held is None:
        return Outcome(state=state, actions=(Say(text=talk.NO_PLAN_YET),))
    families = knowledge.flavours(replace(held, flavours=reading.flavours))
    text = plans.directions([(f.name, [knowledge.food(i).name for i in f.tellers]) for f in families])
    rows = tuple(
        (plan_button(f.name[0].upper() + f.name[1:], state.offer_no, "flavour", f.id),) for f in families
    )
    return Outcome(state=state, actions=(Say(text=text, buttons=rows if state.cook is None else ()),))


def flavoured(state: Chat, family_id: str, now: datetime, knowledge: Knowledge) -> Outcome:
    """The same dinner in one direction of flavour."""
    base = current_request(state, now)
    if base is None:
        return Outcome(state=state, actions=(Say(text=talk.NO_PLAN_YET),))
    before, answer = state.offer, knowledge.plan(replace(base, flavours=(family_id,)))
    if before is not None and isinstance(answer, Plan) and _tastes_otherwise(before, answer):
        return _flavoured(state, answer)
    return offer(cleared(state), answer, now)


def for_eaters(state: Chat, eaters: float, now: datetime, knowledge: Knowledge) -> Outcome:
    """The same dinner for more or fewer."""
    base = current_request(state, now)
    if base is None:
        return Outcome(state=state, actions=(Say(text=talk.NO_PLAN_YET),))
    return again(state, replace(base, eaters=eaters, eaters_said=True), now, knowledge)


def changes(state: Chat) -> Outcome:
    """What can be changed, with examples."""
    row = tuple(plan_button(f"For {n}", state.offer_no, "eaters", str(n)) for n in EATERS_CHOICES)
    return Outcome(state=state, actions=(Say(text=plans.CHANGES, buttons=(row,)),))


# --- swaps --------------------------------------------------------------------------------------


def swap_answer(
    plan: Plan, reading: Reading, knowledge: Knowledge, elapsed_s: float | None
) -> SwapAnswer | str:
    """The planner's verdict on a swap, or what has to be said before it can be asked."""
    pairs: list[tuple[str | None, Have | None]] = []
    for read in (reading.swap or SwapRead(frm=None, to=None), *reading.also):
        to = None
        if read.to is not None:
            food = knowledge.named(read.to)
            if food is None:
                return plans.swap_unknown(read.to, knowledge.near(read.to))
            read_items = [item for item in reading.items if item.food_id == food.id]
            to = knowledge.have_of(read_items[0]) if read_items else Have(food_id=food.id, said=read.to)
        pairs.append((read.frm, to))
    return knowledge.swaps(plan, pairs, elapsed_s=elapsed_s)


def swapped(state: Chat, reading: Reading, now: datetime, knowledge: Knowledge) -> Outcome:
    """ "Parsnip instead of carrot?" about the plan on the table: the verdict, and a button to take it."""
    if state.offer is None:
        return Outcome(state=state, actions=(Say(text=talk.NO_PLAN_YET),))
    answer = swap_answer(state.offer, reading, knowledge, elapsed_s=None)
    if isinstance(answer, str):
        return Outcome(state=state, actions=(Say(text=answer),))
    if answer.plan is None or answer.plan.items == state.offer.items:
        return Outcome(state=cleared(state), actions=(Say(text=plans.swap(replace(answer, plan=None))),))
    asked = ask(state, Asked.TAKE, answer.plan)
    yes = plans.TAKE_THIS if answer.verdict is Verdict.NO else plans.TAKE_IT
    row = yes_no(yes, plans.LEAVE_IT, asked)
    return Outcome(state=asked, actions=(Say(text=plans.swap(answer), buttons=(row,)),))


def take(state: Chat, plan: Plan, now: datetime) -> Outcome:
    """The proposed plan goes on the table."""
    before = state.offer
    lead = plans.difference(before, plan) if before is not None else ""
    return offer(cleared(state), plan, now, lead=lead)


def beside(state: Chat, reading: Reading, now: datetime, knowledge: Knowledge) -> Outcome:
    """A new list while a cook is running: planned, for after it."""
    return _led(new_plan(state, reading, now, knowledge), cooks.PLAN_BESIDE)


def _led(outcome: Outcome, lead: str) -> Outcome:
    """The same, with a line before what is said."""
    return Outcome(
        state=outcome.state,
        actions=tuple(
            replace(a, text=paragraphs(lead, a.text)) if isinstance(a, Say) else a for a in outcome.actions
        ),
    )

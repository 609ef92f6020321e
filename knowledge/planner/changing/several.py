"""Several swaps in one message: one after the other, each with what the ones before have made of the plan."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from knowledge.planner.model import Have, Plan, SwapAnswer, Verdict

WEIGHT = {Verdict.TOGETHER: 0, Verdict.ADJUST: 1, Verdict.NO: 2}
Pair = tuple[str | None, Have | None]  # what leaves, what comes in


def one_by_one(
    plan: Plan, pairs: Sequence[Pair], swap: Callable[[Plan, str | None, Have | None], SwapAnswer]
) -> SwapAnswer:
    """The answer to all of them: every text, the heaviest verdict and the plan of those that work.

    A swap that does not work is left out, and the others are made all the same, which is then a
    change of what was asked; no is the answer only when none works.
    """
    if len(pairs) == 1:
        return swap(plan, *pairs[0])
    answers = []
    now = plan
    for frm, to in pairs:
        answer = swap(now, frm, to)
        answers.append(answer)
        if answer.verdict is not Verdict.NO and answer.plan is not None:
            now = answer.plan
    made = [a for a in answers if a.verdict is not Verdict.NO]
    heaviest = max((a.verdict for a in made or answers), key=WEIGHT.__getitem__)
    partly = len(made) < len(answers) and heaviest is Verdict.TOGETHER
    return SwapAnswer(
        verdict=Verdict.ADJUST if partly else heaviest,
        finish_shift_s=sum(a.finish_shift_s for a in made),
        change=tuple(change for a in made for change in a.change),
        text=" ".join(a.text for a in answers),
        cautions=tuple(dict.fromkeys(c for a in answers for c in a.cautions)),
        plan=now if made else None,
    )

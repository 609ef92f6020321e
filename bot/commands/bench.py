"""`panwright bench`: measure speed on this machine, one figure a line: name, value, unit, reference.

Every figure is a median over repeats within this one process, so that two runs on
one machine can be compared; times of other machines mean nothing beside it.
"""

from __future__ import annotations

import argparse
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from datetime import datetime
from pathlib import Path

from bot.commands.bench_solvers import compare_finite_volumes, compare_solve_ivp
from knowledge import Knowledge, open_knowledge
from knowledge.foods.build import build
from knowledge.foods.store import Store, open_store
from knowledge.physics import Case, Phase, cook, goal, media, piece
from knowledge.planner.checking.verify import check
from knowledge.planner.model import Have, Kitchen, Plan
from knowledge.text.model import Context

# Fridges of our own making: each vessel, each kind of food, long and short.
MESSAGES = (
    "3 turkey thighs, half a savoy cabbage, a swede, some pearl barley, 4 of us, by 7",
    "chicken thighs, potatoes, carrots, an onion",
    "2 salmon fillets, asparagus, new potatoes",
    "pork shoulder 1.2 kg, parsnips, apples, cider, thyme",
    "red lentils, spinach, onion, tin of tomatoes, cumin",
    "6 sausages, kale, a tin of white beans, garlic",
    "stewing beef 700g, mushrooms, carrots, celery, red wine, pearl barley, dinner for 4",
    "firm tofu, broccoli, red pepper, soy sauce, rice noodles, 25 min",
    "half a cauliflower, chickpeas, sweet potato, yoghurt, curry powder",
    "lamb shanks x2, butternut squash, couscous, dried apricots",
    "basmati rice, prawns frozen, peas frozen, spring onions, eggs",
    "whole chicken 1.5 kg, leeks, new potatoes, lemon, tarragon",
    "pork chops, green beans, apples, half an onion, no oven",
    "chicken drumsticks 8, corn, bell peppers, red onion, lime, for 4 people",
    "mince 500 g, kidney beans tin, rice, onion, bell pepper, chilli",
)
LONG = (
    "chicken thighs, potatoes, carrots, parsnips, onion, leeks, celery, mushrooms, green beans, "
    "peas, pearl barley, spinach, for 4"
)
REPEATED = ("and ", "no ", "1/", "((", "9**", ", ", "7:30 ", "not soaked ", "swap leeks for peas ", "use by ")
NOW = datetime(2026, 3, 4, 17, 10)  # noqa: DTZ001  (a cook's local time, read off a wall clock)

Figure = tuple[str, float, str, str]


def _ms(call: Callable[[], object]) -> float:
    start = time.perf_counter()
    call()
    return (time.perf_counter() - start) * 1000


def _median_ms(call: Callable[[], object], *, repeats: int) -> float:
    return statistics.median(_ms(call) for _ in range(repeats))


def _planned(knowledge: Knowledge, text: str) -> object:
    reading = knowledge.read(text, context=Context(), now=NOW)
    request = knowledge.request_of(reading, kitchen=Kitchen(), eaters=None, diets=(), excluded=(), now=NOW)
    return knowledge.plan(request)


def _store_figures() -> Iterator[Figure]:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "knowledge.sqlite"
        yield "build", _median_ms(lambda: build(path), repeats=3), "ms", "<= 3000"
        yield "knowledge_file", path.stat().st_size / 1e6, "MB", "<= 5"
        yield "open_store", _median_ms(lambda: open_store(path), repeats=9), "ms", "<= 20"
        store = open_store(path)
        names = ("carrot", "swede", "chicken thigh", "pearl barley", "spring onion")
        for name in names:
            store.named(name)
        each = _median_ms(lambda: [store.named(name) for name in names], repeats=99) / len(names)
        yield "named", each * 1000, "us", "<= 50"


def _cases(count: int) -> list[Case]:
    """Pieces of many sizes in every kind of heat."""
    store = open_store()
    foods = [store.food(i) for i in ("carrot", "potato", "chicken-thigh", "cod", "pork-loin", "broccoli")]
    places = (media.oven(220.0), media.simmering(), media.open_pan(180.0), media.pressure(80.0))
    ends = [goal(food, store.doneness(food.doneness)) for food in foods]
    return [
        Case(
            piece=piece(
                foods[i % 6], size_mm=10.0 + 5.0 * (i // 24 % 8), shape="brick", ratio_1=1.2, ratio_2=2.5
            ),
            phases=(Phase(medium=places[i // 6 % 4], duration_s=None),),
            goal=ends[i % 6],
        )
        for i in range(count)
    ]


def _cooking_figures() -> Iterator[Figure]:
    """The cooking model alone, and how many times faster than other solvers of the same equations."""
    for count, wanted in ((192, "<= 12"), (2000, "<= 40")):
        cases = _cases(count)
        cook(cases)
        yield f"cases_{count}", _median_ms(lambda: cook(cases), repeats=15), "ms", wanted  # noqa: B023
    with open_store() as store:
        volumes = compare_finite_volumes(store)
        yield "finite_volumes_over_ours", volumes.ratio, f"times, within {volumes.worst_K:.2f} K", ">= 4"
        if beside := beside_scipy(store):
            yield beside
        else:
            print('solve_ivp_over_ours: needs scipy; pip install "panwright[bench]"')


def beside_scipy(store: Store) -> Figure | None:
    """How many times longer scipy takes for the same pieces; None where it is not installed."""
    try:
        scipy = compare_solve_ivp(store)
    except ImportError:
        return None
    return "solve_ivp_over_ours", scipy.ratio, f"times, within {scipy.worst_K:.2f} K", ">= 50"


def _message_figures(knowledge: Knowledge, messages: tuple[str, ...]) -> Iterator[Figure]:
    def read(text: str) -> Callable[[], object]:
        return lambda: knowledge.read(text, context=Context(), now=NOW)

    def plan(text: str) -> Callable[[], object]:
        return lambda: _planned(knowledge, text)

    plan(LONG)()  # the parts are loaded; of the messages nothing is remembered yet
    first = sorted(_ms(plan(text)) for text in messages)
    reads = [_ms(read(text)) for _ in range(3) for text in messages]
    yield "read_median", statistics.median(reads), "ms", "<= 2"
    yield "read_noise_5000", _median_ms(read("xq 7z ,;" * 625), repeats=5), "ms", "<= 20"
    repeated = (_median_ms(read((said * 5000)[:5000]), repeats=3) for said in REPEATED)
    yield "read_repeated_5000_worst", max(repeated), "ms", "<= 100"
    again = [_ms(plan(text)) for _ in range(3) for text in messages]
    yield "message_to_plan_median", statistics.median(first), "ms", "<= 30"
    yield "message_to_plan_p99", first[min(len(first) - 1, int(len(first) * 0.99))], "ms", "<= 100"
    yield "message_to_plan_again_median", statistics.median(again), "ms", "<= 30"
    made = [p for text in (*messages, LONG) if isinstance(p := _planned(knowledge, text), Plan)]
    sound = sum(check(p, store=knowledge.store).sound for p in made)
    yield "plans_sound_when_followed", 100.0 * sound / len(made) if made else 100.0, "percent", ">= 95"
    yield "twelve_foods", _median_ms(plan(LONG), repeats=3), "ms", "<= 200"
    in_hand = _planned(knowledge, messages[0])
    if isinstance(in_hand, Plan):
        to = Have(food_id="parsnip", said="parsnips")
        swap = _median_ms(lambda: knowledge.swap(in_hand, frm=in_hand.items[-1].food, to=to), repeats=9)
        yield "swap", swap, "ms", "<= 30"


def _start_figures() -> Iterator[Figure]:
    """From the shell to the end of a chat with no input, in a state folder of its own."""
    with tempfile.TemporaryDirectory() as folder:
        command = [sys.executable, "-m", "bot", "chat", "--data", str(Path(folder) / "chat.sqlite")]
        call = lambda: subprocess.run(command, input=b"", capture_output=True, check=True)  # noqa: E731
        yield "chat_opens_and_closes", _median_ms(call, repeats=3), "ms", "<= 800"


def run(argv: list[str]) -> int:
    """Print every figure; `--messages FILE` measures messages of your own, one a line."""
    parser = argparse.ArgumentParser(prog="panwright bench", description=run.__doc__)
    parser.add_argument("--messages", type=Path, help="a file of messages, one a line")
    options = parser.parse_args(argv)
    messages = MESSAGES
    if options.messages:
        try:
            lines = options.messages.read_text(encoding="utf-8").splitlines()
        except (OSError, UnicodeDecodeError) as error:
            print(f"panwright bench: cannot read {options.messages}: {error}", file=sys.stderr)
            return 2
        messages = tuple(line for line in lines if line.strip())
        if not messages:
            print(f"panwright bench: {options.messages} holds no message", file=sys.stderr)
            return 2
    knowledge = open_knowledge()
    figures = [_store_figures(), _cooking_figures(), _message_figures(knowledge, messages), _start_figures()]
    for group in figures:
        for name, value, unit, reference in group:
            print(f"{name} {value:.3g} {unit}  (wanted {reference})")
    return 0

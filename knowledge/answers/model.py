"""Records of the answers: a question as it was understood, and what is said to it."""

from __future__ import annotations

from dataclasses import dataclass, field

from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.planner.model import Kitchen
from knowledge.text.clauses import says


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What is said to a question. `known` is False when the tables do not hold it."""

    known: bool
    answer: str
    sources: tuple[str, ...]  # readable: author, year, title


@dataclass(frozen=True, slots=True, kw_only=True)
class Mention:
    """A food named in a question: where (word positions), by which words."""

    food: Food
    phrase: str
    start: int
    end: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Quantity:
    """A number with a unit word of `measures.csv`; `unit` is the row's id, `most` the end of a range."""

    value: float
    most: float
    unit: str
    has_number: bool  # "a cup", "2 cups"; not the bare "cups"
    start: int  # position in the plain text
    end: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """A question, read. `plain` is lower-case words with one space between and around them."""

    text: str
    plain: str
    words: tuple[str, ...]  # singular
    mentions: tuple[Mention, ...]
    store: Store
    kitchen: Kitchen = field(default_factory=Kitchen)
    ruled_out: tuple[str, ...] = ()  # what the eaters must not have, beyond what the question says: "no nuts"

    @property
    def foods(self) -> tuple[Food, ...]:
        """The foods named, in order, each once."""
        return tuple({m.food.id: m.food for m in self.mentions}.values())

    def says(self, *starts: str) -> bool:
        """True if a word (or run of words) of the question begins with one of `starts`.

        A trailing underscore asks for the end of the word too: "rice_" is not "riced".
        """
        return says(self.plain, *starts)

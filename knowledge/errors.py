"""What can go wrong inside `knowledge`, as a small tree.

    KnowledgeError
    ├── OutOfRange       a number no kitchen has (a 3 m carrot, an oven at 900 °C)
    ├── NeverReached     the medium can never bring the piece to its end point
    ├── UnknownWord      a word where one of a few is wanted (a method that no kitchen has)
    ├── UnknownFood      a name nothing in the tables comes near to
    └── BadData          the tables, or the file built from them, cannot be used

An error carries facts; the edge phrases them. Expected situations of planning
(no vessel fits, an unclear name) are results, not exceptions.
"""

from __future__ import annotations


class KnowledgeError(Exception):
    """Anything `knowledge` raises on purpose."""


class OutOfRange(KnowledgeError):
    """A value outside the range for which a function holds.

    Attributes: name, value, low, high, unit.
    """

    def __init__(self, name: str, value: float, low: float, high: float, unit: str) -> None:
        self.name, self.value, self.low, self.high, self.unit = name, value, low, high, unit
        super().__init__(f"{name}: {value:g} {unit} is outside {low:g} to {high:g} {unit}")


class NeverReached(KnowledgeError):
    """The end point lies beyond what the surroundings can do.

    Attributes: name, target, limit, unit.
    """

    def __init__(self, name: str, target: float, limit: float, unit: str) -> None:
        self.name, self.target, self.limit, self.unit = name, target, limit, unit
        super().__init__(f"{name}: {target:g} {unit} is never reached; the limit is {limit:g} {unit}")


class UnknownWord(KnowledgeError):
    """A word where one of a few is wanted.

    Attributes: name (of what), word (as given), known (the words that are).
    """

    def __init__(self, name: str, word: str, known: tuple[str, ...]) -> None:
        self.name, self.word, self.known = name, word, known
        super().__init__(f"no {name} called {word!r}; there are: {', '.join(known)}")


class UnknownFood(KnowledgeError):
    """A food name that is not in the tables.

    Attributes: name (as given), nearest (names that come near, best first).
    """

    def __init__(self, name: str, nearest: tuple[str, ...] = ()) -> None:
        self.name, self.nearest = name, nearest
        near = f"; near: {', '.join(nearest)}" if nearest else ""
        super().__init__(f"no food called {name!r}{near}")


class BadData(KnowledgeError):
    """The data tables or the built file cannot be used.

    Attributes: problems, one line each: file, line, column, value, what was expected.
    """

    def __init__(self, problems: tuple[str, ...]) -> None:
        self.problems = problems
        super().__init__("\n".join(problems))

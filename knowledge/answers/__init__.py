"""Kitchen questions, answered offline from the tables, with their sources.

`ask` tries a small set of typed answers in order, dangers first; what none of them
takes is looked up in the notes on technique; what is not there is not known, and the
answer says so.
"""

from __future__ import annotations

from knowledge.answers.ask import ask
from knowledge.answers.model import Answer
from knowledge.answers.storing.keeping import leftovers

__all__ = ["Answer", "ask", "leftovers"]

"""`python -m tests.golden.rewrite`: write the dialogues as they go now. Read the diff line by line."""

from __future__ import annotations

import sys

from knowledge import open_knowledge
from tests.golden.replay import FOLDER, README, dialogues, replay, with_dialogue


def main() -> int:
    """Rewrite every dialogue; 1 when the verifier has something against a plan."""
    knowledge = open_knowledge()
    wrong = 0
    for path in dialogues():
        before = path.read_text(encoding="utf-8")
        after, faults = replay(before, knowledge)
        if after != before:
            path.write_text(after, encoding="utf-8")
            print(f"rewritten: {path.name}")
        for fault in faults:
            print(f"{path.name}: {fault}", file=sys.stderr)
        wrong += len(faults)
    readme = README.read_text(encoding="utf-8")
    shown = (FOLDER / "readme.txt").read_text(encoding="utf-8")
    README.write_text(with_dialogue(readme, shown), encoding="utf-8")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())

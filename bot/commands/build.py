"""`panwright build`: tables -> knowledge file; `--check` only lists what is wrong with the tables."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

from knowledge.errors import BadData
from knowledge.foods.build import build
from knowledge.foods.load import load
from knowledge.foods.store import default_path
from knowledge.tables import DATA


def run(argv: Sequence[str]) -> int:
    """Exit status 0, or 2 when the tables have problems: each is one line on stderr."""
    parser = argparse.ArgumentParser(prog="panwright build", description=__doc__)
    parser.add_argument("--check", action="store_true", help="read and check the tables, write nothing")
    parser.add_argument("--tables", type=Path, default=DATA, metavar="FOLDER", help="the folder of tables")
    parser.add_argument(
        "--out", type=Path, metavar="FILE", help="the file to write; by default where it is looked for"
    )
    args = parser.parse_args(argv)
    try:
        if args.check:
            tables = load(args.tables)
            print(f"{len(tables.tables)} tables, no problems")
            return 0
        built = build(args.out or default_path(args.tables), args.tables)
    except BadData as error:
        print(error, file=sys.stderr)
        found = len(error.problems)
        print(
            f"panwright build: {found} {'problem' if found == 1 else 'problems'}; nothing was written",
            file=sys.stderr,
        )
        return 2
    for what, count in (
        ("foods that cook", built.cooking),
        ("foods that season or finish", built.seasoning),
        ("names and synonyms", built.names),
        ("portion weights", built.portions),
        ("sources", built.sources),
    ):
        print(f"{count:>6} {what}")
    print(f"{built.path} ({built.size_bytes / 1e6:.2f} MB, {built.seconds:.2f} s)")
    return 0

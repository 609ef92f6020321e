"""The model's page is what its command would write."""

from __future__ import annotations

from tests.benchmarks.model_page import PAGE, parameter_table, times_table


def test_the_tables_of_the_page_are_those_of_the_model() -> None:
    page = PAGE.read_text(encoding="utf-8")
    for table in (times_table(), parameter_table()):
        assert "\n".join(table) in page, "run python -m tests.benchmarks.model_page"

"""`panwright plan` and `panwright swap`: lines in, JSON lines out, honest exit status."""

from __future__ import annotations

import io
import json
import sys

import pytest

from bot.commands import plan as plan_command
from bot.commands import swap as swap_command


def lines(
    command: object, text: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> tuple[int, list[dict[str, object]], str]:
    with io.TextIOWrapper(io.BytesIO(text.encode()), encoding="utf-8") as stdin:
        monkeypatch.setattr(sys, "stdin", stdin)
        monkeypatch.setattr(sys.stdout, "reconfigure", lambda **_: None, raising=False)
        status = command.run([])  # type: ignore[attr-defined]
    out, err = capsys.readouterr()
    return status, [json.loads(line) for line in out.splitlines()], err


FIELDS = {
    "id", "ok", "vessel", "settings", "serves", "total_min", "hands_on_min", "cooking_min", "items", "liquid",
    "steps", "cautions", "left_out", "assumed", "alternatives", "why",
}  # fmt: skip


def test_plan_speaks_the_interface(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    status, got, _ = lines(plan_command, "2 salmon fillets, potatoes, asparagus\n", monkeypatch, capsys)
    assert status == 0
    assert set(got[0]) >= FIELDS
    item = got[0]["items"][0]  # type: ignore[index]
    assert {"food", "grams", "cut", "in_min", "out_min", "done", "why"} <= set(item)
    assert {"kind", "at_min", "window_min", "core_degC", "rest_min"} <= set(item["done"])


def test_bad_lines_are_named_and_the_good_ones_answered(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    text = (
        '{"text": 3}\n{broken\n\nsausages, potatoes\n{"id": "k", "text": "rice", "kitchen": {"vessels": 3}}\n'
    )
    status, got, err = lines(plan_command, text, monkeypatch, capsys)
    assert status == 2
    assert len(got) == 2
    assert "line 1" in err
    assert "line 2" in err
    assert "kitchen.vessels" in err


def test_a_refusal_is_an_answer(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    status, got, _ = lines(plan_command, "salt and pepper\n🙂🙂\nqwerty " * 3, monkeypatch, capsys)
    assert status == 0
    assert all(answer["ok"] is False and answer["reasons"] for answer in got)


def test_swap_speaks_the_interface(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    text = json.dumps(
        {"id": 7, "text": "4 chicken thighs, potatoes, carrots", "from": "carrots", "to": "parsnips"}
    )
    status, got, _ = lines(swap_command, text + '\n{"text": "x"}\n', monkeypatch, capsys)
    assert status == 2
    assert set(got[0]) == {"id", "verdict", "finish_shift_min", "change", "text", "cautions", "plan"}
    assert got[0]["verdict"] in ("together", "adjust")

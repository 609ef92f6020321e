"""`panwright read`: lines in, JSON lines out, bad lines told on stderr."""

from __future__ import annotations

import io
import json
import sys

import pytest

from bot.commands import read as command


def _run(monkeypatch: pytest.MonkeyPatch, lines: str, *argv: str) -> int:
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(lines.encode()), encoding="utf-8"))
    return command.run(argv)


def test_plain_and_json_lines_are_told_apart(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    status = _run(
        monkeypatch, 'chicken, rice\n{"id": "m1", "text": "2 carrots"}\n', "--now", "2026-03-04T17:10"
    )
    first, second = map(json.loads, capsys.readouterr().out.splitlines())
    assert status == 0
    assert [i["name"] for i in first["items"]] == ["chicken", "rice"]
    assert (second["id"], second["items"][0]["qty"]) == ("m1", 2)


def test_a_bad_line_is_named_and_the_good_ones_answered(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    status = _run(monkeypatch, '{"id": 1}\n{broken\nrice\n')
    out = capsys.readouterr()
    assert status == 2
    assert "line 1" in out.err
    assert "line 2" in out.err
    assert len(out.out.splitlines()) == 1


def test_a_clock_that_is_none_is_refused(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as ended:
        _run(monkeypatch, "rice\n", "--now", "teatime")
    assert ended.value.code == 2
    assert "teatime" in capsys.readouterr().err

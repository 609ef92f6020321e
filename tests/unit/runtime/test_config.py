"""Settings: all problems at once, sensible defaults, no token in what is said."""

from __future__ import annotations

from pathlib import Path

import pytest

from bot.config import PLATFORM, SettingsError, home, settings_of

GOOD = {"PANWRIGHT_TELEGRAM_TOKEN": "123:abc", "PANWRIGHT_HOME": "/somewhere"}


def test_the_defaults_need_only_a_token() -> None:
    settings = settings_of(GOOD)
    assert (settings.api, settings.pace) == (PLATFORM, 1.0)
    assert settings.database == Path("/somewhere/telegram.sqlite")


def test_everything_wrong_is_named_at_once() -> None:
    wrong = {"PANWRIGHT_TELEGRAM_API": "ftp://x", "PANWRIGHT_PACE": "fast", "PANWRIGHT_LOG": "loud"}
    with pytest.raises(SettingsError) as caught:
        settings_of(wrong)
    named = {problem.split()[0] for problem in caught.value.problems}
    assert named == {"PANWRIGHT_TELEGRAM_TOKEN", *wrong}


def test_a_malformed_token_is_not_repeated() -> None:
    with pytest.raises(SettingsError) as caught:
        settings_of({"PANWRIGHT_TELEGRAM_TOKEN": "secret-word"})
    assert "secret-word" not in str(caught.value)


@pytest.mark.parametrize(
    "api", ["http://127.0.0.1:8081", "http://127.0.0.1:8081/", "http://127.0.0.1:8081/bot"]
)
def test_an_address_without_a_path_gets_the_usual_one(api: str) -> None:
    assert settings_of(GOOD | {"PANWRIGHT_TELEGRAM_API": api}).api == "http://127.0.0.1:8081/bot"


@pytest.mark.parametrize("pace", ["0", "-3", "nan", "inf", "1e9", ""])
def test_a_pace_is_at_least_real_time(pace: str) -> None:
    if not pace:
        assert settings_of(GOOD | {"PANWRIGHT_PACE": pace}).pace == 1.0
        return
    with pytest.raises(SettingsError, match="PANWRIGHT_PACE"):
        settings_of(GOOD | {"PANWRIGHT_PACE": pace})


def test_the_data_folder_follows_the_users_conventions() -> None:
    assert home({"XDG_DATA_HOME": "/data"}) == Path("/data/panwright")
    assert home({"PANWRIGHT_HOME": "/mine", "XDG_DATA_HOME": "/data"}) == Path("/mine")

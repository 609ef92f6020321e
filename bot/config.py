"""Environment -> frozen settings; everything that is missing or wrong is named at once."""

from __future__ import annotations

import math
import os
import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import urlsplit

TOKEN = re.compile(r"\d+:[A-Za-z0-9_-]+")
PLATFORM = "https://api.telegram.org/bot"
FASTEST = 3_600.0
LEVELS = ("DEBUG", "INFO", "WARNING", "ERROR")


class SettingsError(Exception):
    """Settings that cannot be used. Attributes: problems, one line each."""

    def __init__(self, problems: tuple[str, ...]) -> None:
        self.problems = problems
        super().__init__("; ".join(problems))


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """What `panwright serve` needs to know."""

    token: str
    api: str  # base address, the token is appended to it
    database: Path
    pace: float
    log_level: str


def home(environ: Mapping[str, str]) -> Path:
    """The folder for what the bot keeps: PANWRIGHT_HOME, else the user's data folder."""
    if given := environ.get("PANWRIGHT_HOME"):
        return Path(given).expanduser()
    if os.name == "nt" and (local := environ.get("LOCALAPPDATA")):
        return Path(local) / "panwright"
    data = environ.get("XDG_DATA_HOME")
    return (Path(data) if data else Path("~/.local/share").expanduser()) / "panwright"


def pace_of(text: str) -> float:
    """How many times as fast the clock runs. Raises ValueError with what is allowed."""
    try:
        pace = float(text)
    except ValueError:
        pace = math.nan
    if not 1.0 <= pace <= FASTEST:
        raise ValueError(f"{text!r} is not a number from 1 (real time) to {FASTEST:.0f}")
    return pace


def settings_of(environ: Mapping[str, str]) -> Settings:
    """The settings from environment variables. Raises SettingsError."""
    problems: list[str] = []
    token = environ.get("PANWRIGHT_TELEGRAM_TOKEN", "").strip()
    if not token:
        problems.append("PANWRIGHT_TELEGRAM_TOKEN is missing: the token the platform gave your bot")
    elif not TOKEN.fullmatch(token):
        problems.append("PANWRIGHT_TELEGRAM_TOKEN is not a token: digits, a colon, then letters and digits")
    api = environ.get("PANWRIGHT_TELEGRAM_API", "").strip() or PLATFORM
    address = _split(api)
    if address is None:
        problems.append(f"PANWRIGHT_TELEGRAM_API {api!r} is not an address such as {PLATFORM}")
    elif address in ("", "/"):
        api = api.rstrip("/") + "/bot"
    pace = 1.0
    try:
        pace = pace_of(environ.get("PANWRIGHT_PACE", "").strip() or "1")
    except ValueError as error:
        problems.append(f"PANWRIGHT_PACE {error}")
    level = environ.get("PANWRIGHT_LOG", "").strip().upper() or "INFO"
    if level not in LEVELS:
        problems.append(f"PANWRIGHT_LOG {level!r} is not one of {', '.join(LEVELS)}")
    if problems:
        raise SettingsError(tuple(problems))
    database = environ.get("PANWRIGHT_DB", "").strip()
    return Settings(
        token=token,
        api=api,
        database=Path(database).expanduser() if database else home(environ) / "telegram.sqlite",
        pace=pace,
        log_level=level,
    )


def _split(address: str) -> str | None:
    """The path of an http address, None when it is none."""
    try:
        parts = urlsplit(address)
        port_is_fine = parts.port is None or parts.port > 0
    except ValueError:
        return None
    return parts.path if parts.scheme in ("http", "https") and parts.hostname and port_is_fine else None

"""Settings from the environment, validated once at start."""

import os
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import urlsplit

PREFIX = "UNDERCROFT_"


class BadSetting(ValueError):
    """A setting that cannot be used; the text says which, what is wrong and what would be right."""


@dataclass(frozen=True, slots=True)
class Settings:
    """How this process runs.

    database: path of a SQLite file, or a postgresql:// address.
    origin: the address that people type, like https://coach.example.org; cookies are marked
        Secure when it begins with https. None: whatever address the request came to.
    proxy_hops: reverse proxies in front whose X-Forwarded-* headers are to be believed.
    sync_per_minute: requests with entries that one device may send in a minute.
    cheap_passwords: hash passwords with the least cost; for tests only.
    """

    database: str
    origin: str | None = None
    proxy_hops: int = 0
    host: str = "127.0.0.1"
    port: int = 8000
    threads: int = 8
    sync_per_minute: int = 120
    cheap_passwords: bool = False

    @property
    def secure(self) -> bool:
        return self.origin is not None and self.origin.startswith("https://")


def from_environment(environment: Mapping[str, str] | None = None) -> Settings:
    """Settings from UNDERCROFT_* variables. Raises BadSetting."""
    given = os.environ if environment is None else environment
    return Settings(
        database=given.get(PREFIX + "DATABASE") or str(default_database(given)),
        origin=_origin(given.get(PREFIX + "ORIGIN")),
        proxy_hops=_whole(given, "PROXY_HOPS", 0, 0, 10),
        host=given.get(PREFIX + "HOST", "127.0.0.1"),
        port=_whole(given, "PORT", 8000, 0, 65535),
        threads=_whole(given, "THREADS", 8, 1, 64),
        sync_per_minute=_whole(given, "SYNC_PER_MINUTE", 120, 1, 1_000_000),
    )


def default_database(environment: Mapping[str, str]) -> Path:
    """Where the data of a single machine are kept when nothing else is said."""
    return default_data_folder("undercroft", environment) / "undercroft.sqlite3"


def default_data_folder(name: str, environment: Mapping[str, str] | None = None) -> Path:
    """A folder of that name where this machine keeps programs' data."""
    share = (os.environ if environment is None else environment).get("XDG_DATA_HOME")
    base = Path(share) if share else Path.home() / ".local" / "share"
    return base / name


def _whole(given: Mapping[str, str], name: str, default: int, least: int, most: int) -> int:
    text = given.get(PREFIX + name)
    if text is None or text == "":
        return default
    if not text.isdecimal() or not least <= int(text) <= most:
        raise BadSetting(f"{PREFIX}{name} is {text!r}; give a whole number from {least} to {most}")
    return int(text)


def _origin(text: str | None) -> str | None:
    if not text:
        return None
    parts = urlsplit(text)
    if parts.scheme not in ("http", "https") or not parts.netloc or parts.path.strip("/"):
        raise BadSetting(
            f"{PREFIX}ORIGIN is {text!r}; give scheme and host only, like https://coach.example.org"
        )
    return f"{parts.scheme}://{parts.netloc}"

"""Settings from the environment: read once, refused with what would be right."""

import pytest

from undercroft.config import BadSetting, Settings, from_environment


def test_without_any_variable_the_data_lie_in_the_users_own_folder() -> None:
    settings = from_environment({"XDG_DATA_HOME": "/data"})
    assert settings == Settings(database="/data/undercroft/undercroft.sqlite3")
    assert (settings.host, settings.port) == ("127.0.0.1", 8000)


def test_every_variable_is_read() -> None:
    given = {
        "UNDERCROFT_DATABASE": "postgresql://db/undercroft",
        "UNDERCROFT_ORIGIN": "https://coach.example.org/",
        "UNDERCROFT_PROXY_HOPS": "1",
        "UNDERCROFT_HOST": "0.0.0.0",
        "UNDERCROFT_PORT": "9000",
        "UNDERCROFT_THREADS": "16",
        "UNDERCROFT_SYNC_PER_MINUTE": "30",
    }
    assert from_environment(given) == Settings(
        database="postgresql://db/undercroft",
        origin="https://coach.example.org",
        proxy_hops=1,
        host="0.0.0.0",
        port=9000,
        threads=16,
        sync_per_minute=30,
    )


@pytest.mark.parametrize(
    ("name", "value", "right"),
    [
        ("PORT", "eighty", "whole number from 0 to 65535"),
        ("PORT", "70000", "whole number from 0 to 65535"),
        ("PORT", "-1", "whole number from 0 to 65535"),
        ("PROXY_HOPS", "many", "whole number from 0 to 10"),
        ("THREADS", "0", "whole number from 1 to 64"),
        ("ORIGIN", "coach.example.org", "https://coach.example.org"),
        ("ORIGIN", "https://coach.example.org/app", "https://coach.example.org"),
        ("ORIGIN", "ftp://coach.example.org", "https://coach.example.org"),
    ],
)
def test_a_wrong_value_is_refused_with_its_name_and_what_would_be_right(
    name: str, value: str, right: str
) -> None:
    with pytest.raises(BadSetting) as refused:
        from_environment({f"UNDERCROFT_{name}": value})
    assert f"UNDERCROFT_{name} is {value!r}" in str(refused.value)
    assert right in str(refused.value)


@pytest.mark.parametrize(
    ("origin", "secure"),
    [("https://coach.example.org", True), ("http://192.0.2.7:8000", False), (None, False)],
)
def test_cookies_are_secure_where_the_origin_is_https(origin: str | None, secure: bool) -> None:
    assert Settings(database="", origin=origin).secure is secure

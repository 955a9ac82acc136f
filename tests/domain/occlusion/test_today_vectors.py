"""The lock right before the first wrap, by the cases that the phone is held to as well."""

import json
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from tests.domain.occlusion.people import DAY, cleared, read, screened, today

from undercroft.domain.occlusion import (
    TODAY,
    Answered,
    ScreeningFile,
    Signature,
    start_on,
    state_on,
)

FILE = Path(__file__).parents[3] / "fixtures" / "screening" / "today.json"
CASES = json.loads(FILE.read_text(encoding="utf-8"))["cases"]


def file_for(case: dict[str, Any], on: date) -> ScreeningFile:
    """A file whose lock is what the case's sheet says, with the answers of the day."""
    sheet = case["sheet"]
    keys = ["kidney"] if sheet["company"] else []
    whole = screened(**dict.fromkeys(keys, "yes"))
    told = []
    if case["today"] is not None:
        given = {one.key: "no" for one in TODAY} | case["today"]
        told = [Answered("t1", on, {k: v for k, v in given.items() if k not in case["missing"]})]
    file = read(
        whole,
        *told,
        clearances=tuple(cleared(key, alone=False) for key in keys),
        trains_alone=not sheet["company"],
    )
    if sheet["open"]:
        return file
    return ScreeningFile(file.answered, (Signature("another", "Ysolt Brenner", DAY),))


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_phone_and_server_agree_on_who_may_start(case):
    on = date.fromisoformat(case["on"])
    file = file_for(case, on)
    assert start_on(on, file, case["after_check_due"]).open is case["may_start"]


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_the_sheet_of_a_case_is_one_that_the_server_makes(case):
    lock = state_on(DAY, file_for(case | {"today": None}, DAY))
    until = lock.until and lock.until.isoformat()
    assert {"open": lock.open, "until": until, "company": lock.company} == case["sheet"]


def test_the_cases_ask_only_what_is_asked():
    keys = {key for case in CASES for key in [*(case["today"] or {}), *case["missing"]]}
    assert keys <= {one.key for one in TODAY}
    assert set(today().given) == {one.key for one in TODAY}

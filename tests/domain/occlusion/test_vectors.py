"""The files that hold the phone to the server's occlusion work are what the present code writes."""

import pytest
from tests.domain.occlusion.vectors import FOLDER, REPS, files, next_loads


@pytest.mark.parametrize(("name", "text"), files().items())
def test_the_files_are_what_the_present_code_writes(name: str, text: str) -> None:
    assert (FOLDER / name).read_text(encoding="utf-8") == text


def test_every_step_is_among_the_vectors() -> None:
    steps = {case["step"] for case in next_loads()["cases"]}
    assert steps == {"up", "hold", "down", "down-a-tenth"}
    assert len(next_loads()["cases"]) > len(REPS)

"""While a kit or an athlete is saved, sets are taken, and count in what is worked out."""

import threading
from collections.abc import Callable
from typing import Any

import pytest
from tests.api.training import entries_of, finished, send, sheets
from tests.fixtures import athlete_data, block_data, kit_data
from tests.people import AtDesk, Phone, statuses

from undercroft.services import looking_over, planning
from undercroft.store import database, revisions


@pytest.fixture
def meanwhile(monkeypatch: pytest.MonkeyPatch) -> Callable[[Callable[[], None]], list[int]]:
    """Something that happens elsewhere while sheets are worked out for the first time."""
    real = planning.work_out

    def arranged(happens: Callable[[], None]) -> list[int]:
        times: list[int] = []

        def work_out(*order: Any, **more: Any) -> Any:
            times.append(1)
            if len(times) == 1:
                elsewhere = threading.Thread(target=happens)
                elsewhere.start()
                elsewhere.join()
            return real(*order, **more)

        for module in (planning, looking_over):
            monkeypatch.setattr(module, "work_out", work_out)
        return times

    return arranged


SAVED = {"kit": kit_data, "document": athlete_data}


@pytest.mark.parametrize("what", SAVED)
def test_a_set_is_stored_while_sheets_are_worked_out_for_what_the_coach_saves(
    coach: AtDesk, ready: str, block: str, device: Phone, what: str, meanwhile: Any
) -> None:
    send(coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    heard: list[str] = []
    begun = entries_of(device, monday)[:2]
    times = meanwhile(lambda: heard.extend(statuses(device.syncs(*begun))))
    answer = coach.post(f"/desk/athletes/{ready}/{what}", {"document": SAVED[what]()})
    assert answer.status_code == 200
    assert heard == ["stored", "stored"]
    assert len(times) == 2, "worked out once more, because the set came first"


@pytest.mark.parametrize("what", SAVED)
def test_what_came_in_meanwhile_is_in_the_sheets(
    coach: AtDesk, ready: str, block: str, device: Phone, what: str, meanwhile: Any
) -> None:
    send(coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    lines = [*entries_of(device, monday, extra_rir=2), finished(device, monday)]
    changed: dict[str, Any] = {"kit": kit_data(), "document": athlete_data()}
    changed["kit"]["plates"][0]["count"] -= 2
    changed["document"]["maxima"][0]["kg"] += 2.5
    places: list[int] = []

    def does_the_session() -> None:
        places.extend(v["position"] for v in device.syncs(*lines)["verdicts"])

    meanwhile(does_the_session)
    coach.post(f"/desk/athletes/{ready}/{what}", {"document": changed[what]})
    database.connect()
    kept = revisions.sheets_of(ready, 1)
    database.disconnect()
    assert kept["w1-mon"]["through"] < places[0], "it was begun: it keeps its sheet"
    later = [sheet["through"] for session, sheet in kept.items() if session != "w1-mon"]
    assert min(later) >= places[-1]


def test_saving_with_nobody_else_about_works_out_once(
    coach: AtDesk, ready: str, block: str, meanwhile: Any
) -> None:
    send(coach, block, ready)
    times = meanwhile(lambda: None)
    coach.post(f"/desk/athletes/{ready}/kit", {"document": kit_data()})
    assert len(times) == 1


def test_nothing_is_sent_by_a_coach_whose_right_ends_while_it_is_worked_out(
    coach: AtDesk, writing_coach: AtDesk, ready: str, meanwhile: Any
) -> None:
    block = writing_coach.post("/desk/blocks", {"document": block_data()}).json["id"]
    ending = f"/desk/athletes/{ready}/sharing/{writing_coach.id}/end"
    meanwhile(lambda: coach.post(ending))
    answer = writing_coach.post(f"/desk/blocks/{block}/send", {"athletes": [ready]})
    assert answer.status_code == 404
    assert coach.get(f"/desk/athletes/{ready}").json["revision"] is None

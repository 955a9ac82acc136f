"""What the monitoring's plots show is what the server answers."""

import random
from datetime import UTC, date, datetime, time, timedelta
from typing import Any

import pytest
from playwright.sync_api import Page, expect
from tests.browser import hands
from tests.browser.chromium import Handset
from tests.browser.conftest import EMAIL, PASSWORD, Squad
from tests.browser.looks import look
from tests.browser.plots import Drawn, about, drawn_in, plotted, titles
from tests.fixtures import athlete_data, kit_data
from tests.server_process import ServerProcess

from undercroft.demo.history import Trained, session_entries, sessions_in_order
from undercroft.domain.program.calendar import monday_of
from undercroft.services import athlete_page, athletes, devices, sending, sync
from undercroft.services.clock import DAY_MS, day_of, now_ms
from undercroft.services.tokens import new_id
from undercroft.store import database, revisions
from undercroft.store.feed import athlete_lock
from undercroft.store.migrate import epoch

pytestmark = pytest.mark.browser

MAXIMA = {one["lift"]: one["kg"] for one in athlete_data()["maxima"]}


@pytest.fixture
def trained(data: str, squad: Squad) -> str:
    """An athlete of the squad's coach, with two weeks behind her, measured and all sent."""
    now = now_ms()
    database.open_database(data)
    database.connect()
    athlete = athletes.add_athlete(squad.coach_id, "Tove Lind", now - 40 * DAY_MS).id
    athlete_page.save_document(athlete, {**athlete_data(), "name": "Tove Lind"})
    athlete_page.save_kit(athlete, kit_data())
    began = monday_of(day_of(now)) - timedelta(weeks=2)
    wanted = sending.Wanted([athlete], began)
    sending.send(squad.coach_id, squad.block_id, wanted, now - 15 * DAY_MS)
    _does_everything(athlete, now)
    database.close_all()
    return athlete


def _does_everything(athlete: str, now: int) -> None:
    with athlete_lock(athlete):
        devices.pair(athlete, "a phone", now - 15 * DAY_MS)
    (phone,) = devices.devices_of(athlete)
    who, chance = Trained(MAXIMA, 68, measures=True), random.Random(7)
    n = 0
    for sheet in sessions_in_order(revisions.sheets_of(athlete, 1)):
        evening = datetime.combine(date.fromisoformat(sheet["on"]), time(18), UTC)
        lines = session_entries(sheet, who, evening, n, chance)
        lines += _wears_a_wrap(lines[-1]) if n == 0 else []
        n += len(lines)
        sync.exchange(phone, sync.Asked(phone.id, epoch(), 0, lines), now, 1000)


def _wears_a_wrap(last: dict[str, Any]) -> list[dict[str, Any]]:
    """Five minutes on one arm, and a word of pain, after the first session's last entry."""
    began, arm = datetime.fromisoformat(last["at"]), "left-upper-arm"
    told = (
        (0, "wrap.on", {"limb": arm}),
        (5, "wrap.off", {"limb": arm, "seconds": 300}),
        (6, "pain.reported", {"where": "left elbow", "level": 3}),
    )
    return [
        {
            **last,
            "id": new_id(now_ms() + more),
            "n": last["n"] + more,
            "at": (began + timedelta(minutes=minutes)).isoformat(timespec="milliseconds"),
            "kind": kind,
            "body": body,
        }
        for more, (minutes, kind, body) in enumerate(told, 1)
    ]


def rows_of(page: Page, title: str) -> list[list[str]]:
    """The table under a plot, cell by cell, as it is read."""
    page.get_by_role("button", name=f"Table: {title}").click()
    group = page.get_by_role("group", name=title, exact=True)
    expect(group.get_by_role("table")).to_be_visible()
    return [row.locator("th, td").all_inner_texts() for row in group.locator("tbody tr").all()]


def number(text: str) -> float | None:
    plain = text.replace("−", "-").replace("+", "").removesuffix(" %")
    return None if plain in ("undefined", "not known yet", "—") else float(plain)


def rounded(value: float, half: float) -> Any:
    """A cell that is written to twice that."""
    return pytest.approx(value, abs=half * 1.001)


def figures(row: list[str]) -> list[float | None]:
    """All but the first cell, which names the row."""
    return [number(cell) for cell in row[1:]]


def asked(page: Page, server: ServerProcess, athlete: str, what: str) -> Any:
    answer = page.request.get(f"{server.url}/api/v1/desk/athletes/{athlete}/{what}")
    assert answer.ok, answer.text()
    return answer


def test_the_tables_under_the_plots_are_the_numbers_of_the_api(
    trained: str, server: ServerProcess, laptop: Handset
) -> None:
    page = laptop.switch_on()
    hands.log_in(page, server.url, EMAIL, PASSWORD)
    page.get_by_role("link", name="Tove Lind").first.click()
    page.get_by_role("link", name="Monitoring").click()

    weeks = asked(page, server, trained, "load").json()["weeks"]
    shown = [figures(row) for row in rows_of(page, "Load of each week")]
    assert shown == [
        [
            one["load_au"],
            pytest.approx(one["day_mean_au"], abs=0.05),
            pytest.approx(one["day_sd_au"], abs=0.05),
            one["monotony"] and pytest.approx(one["monotony"], abs=0.005),
            one["strain_au"] and pytest.approx(one["strain_au"], abs=0.5),
            one["unrated_sessions"],
        ]
        for one in reversed(weeks)
    ]
    assert weeks[0]["monotony"] > 0

    work = asked(page, server, trained, "work").json()["weeks"]
    counts = [figures(row) for row in rows_of(page, "Planned sets of each week")]
    assert counts == [list(one["adherence"].values()) for one in reversed(work)]

    (pull,) = asked(page, server, trained, "speed").json()["exercises"]
    sets = pull["sessions"][-1]["sets"]
    course = rows_of(page, "Hex bar deadlift, set by set")
    assert [number(row[6]) for row in course] == [
        pytest.approx(one["mean_power_w"], abs=0.5) for one in sets
    ]
    assert [row[0].endswith("best") for row in course].index(True) + 1 == (
        pull["sessions"][-1]["course"]["best_set"]
    )
    look(page, "desk-monitoring-tables")


@pytest.fixture
def monitored(trained: str, server: ServerProcess, laptop: Handset) -> Page:
    page = laptop.switch_on()
    hands.log_in(page, server.url, EMAIL, PASSWORD)
    page.goto(f"{server.url}/desk/athletes/{trained}/monitoring")
    return page


def test_every_plot_draws_the_numbers_of_the_api(
    monitored: Page, trained: str, server: ServerProcess
) -> None:
    """A bar's height, a dot's place: measured against the rules of the same drawing."""
    page, seen = monitored, set[str]()

    def drawn(title: str) -> list[Drawn]:
        seen.add(title.replace("Hex bar deadlift", "…"))
        return drawn_in(plotted(page, title))

    load = asked(page, server, trained, "load").json()
    (weeks,) = drawn("Load of each week")
    assert weeks.heights == about([one["load_au"] for one in load["weeks"]])
    (weighted,) = drawn("Weighted load of each day")
    for line, field in (("solid 0", "weighted_7_days_au"), ("dashed 1", "weighted_28_days_au")):
        assert weighted.lines[line] == about([day[field] for day in load["days"]])

    work = asked(page, server, trained, "work").json()["weeks"]
    (fates,) = drawn("Planned sets of each week")
    for filling, field in FATES.items():
        shown = [bar["parts"].get(filling, 0) for bar in fates.bars]
        assert shown == about([one["adherence"][field] for one in work])
    for one in drawn("Hard sets of each muscle"):
        muscle = one.label.partition(":")[0].lower().replace(" ", "-")
        assert one.heights == about([week["hard_sets"].get(muscle, 0) for week in work])
    (tonnage,) = drawn("Tonnage of each week")
    assert tonnage.heights == about([one["tonnage_kg"] / 1000 for one in work])
    (arm,) = drawn("Occlusion work of each limb")
    assert arm.label.startswith("Left upper arm")
    assert arm.heights == about([sum(limb["minutes"] for limb in one["limbs"]) for one in work])
    assert max(arm.heights) == pytest.approx(5)

    (pull,) = asked(page, server, trained, "speed").json()["exercises"]
    last = pull["sessions"][-1]
    (course,) = drawn("Hex bar deadlift, set by set")
    assert course.heights == about([round(one["mean_power_w"]) for one in last["sets"]])
    peaks = [peak for bar in course.bars for peak in bar["peaks"]]
    assert peaks == about([one["peak_power_w"] for one in last["sets"]])
    best = [place for place, bar in enumerate(course.bars, 1) if "best" in bar["words"]]
    assert best == [last["course"]["best_set"]]
    (over_weeks,) = drawn("Hex bar deadlift, best set of each session")
    assert over_weeks.dots == about([one["course"]["best_w"] for one in pull["sessions"]])
    (line,) = drawn("Hex bar deadlift, load and velocity")
    assert line.dots == about([one["velocity_m_s"] for one in pull["velocity"]["points"]])

    told = asked(page, server, trained, "condition").json()
    for title, field, name in (
        ("Pain", "pains", "level"),
        ("Readiness", "readiness", "score"),
        ("Body mass", "body_masses", "kg"),
    ):
        (dots,) = drawn(title)
        assert dots.dots == about([one[name] for one in told[field]])
        assert dots.dots
    assert seen == titles()


FATES = {
    "full": "done_sets",
    "hatched": "changed_sets",
    "hollow": "skipped_sets",
    "dotted": "unknown_sets",
}


def test_every_table_under_a_plot_holds_the_numbers_of_the_api(
    monitored: Page, trained: str, server: ServerProcess
) -> None:
    page = monitored
    load = asked(page, server, trained, "load").json()
    days = [figures(row) for row in rows_of(page, "Weighted load of each day")]
    assert days == [
        [
            one["load_au"],
            rounded(one["weighted_7_days_au"], 0.05),
            rounded(one["weighted_28_days_au"], 0.05),
            rounded(one["difference_au"], 0.05),
            one["change_percent"] and rounded(one["change_percent"], 0.5),
        ]
        for one in reversed(load["days"])
    ]
    work = asked(page, server, trained, "work").json()["weeks"]
    by_muscle = {row[0].lower().replace(" ", "-"): figures(row) for row in hard_sets(page)}
    assert set(by_muscle) == {muscle for week in work for muscle in week["hard_sets"]}
    for muscle, sets in by_muscle.items():
        assert sets == about([week["hard_sets"].get(muscle, 0) for week in work])
    tonnage = [figures(row) for row in rows_of(page, "Tonnage of each week")]
    assert tonnage == [
        [
            rounded(one["tonnage_kg"], 0.05),
            one["reps"],
            one["mean_resistance_kg"] and rounded(one["mean_resistance_kg"], 0.05),
            one["left_out_sets"],
        ]
        for one in reversed(work)
    ]
    (limb,) = rows_of(page, "Occlusion work of each limb")
    assert limb[1:] == ["Left upper arm", "5", "0", "1"]

    (pull,) = asked(page, server, trained, "speed").json()["exercises"]
    best = [figures(row) for row in rows_of(page, "Hex bar deadlift, best set of each session")]
    fields = ("best_set", "best_w", "rise_percent", "drop_percent")
    assert best == [
        [rounded(one["course"][field], 0.5) for field in fields]
        for one in reversed(pull["sessions"])
    ]
    velocities = [figures(row) for row in rows_of(page, "Hex bar deadlift, load and velocity")]
    assert velocities == [
        [
            rounded(one["load_kg"], 0.05),
            rounded(one["velocity_m_s"], 0.005),
        ]
        for one in reversed(pull["velocity"]["points"])
    ]
    told = asked(page, server, trained, "condition").json()
    assert [row[1:3] for row in rows_of(page, "Pain")] == [["3", "left elbow"]]
    scores = [float(row[1]) for row in rows_of(page, "Readiness")]
    assert scores == [one["score"] for one in reversed(told["readiness"])]
    masses = [float(row[1]) for row in rows_of(page, "Body mass")]
    assert masses == rounded([one["kg"] for one in reversed(told["body_masses"])], 0.05)


def hard_sets(page: Page) -> list[list[str]]:
    return rows_of(page, "Hard sets of each muscle")


def test_the_maximum_is_drawn_as_the_api_tells_it(
    trained: str, server: ServerProcess, laptop: Handset
) -> None:
    page = laptop.switch_on()
    hands.log_in(page, server.url, EMAIL, PASSWORD)
    page.goto(f"{server.url}/desk/athletes/{trained}")
    section = page.locator("section").filter(
        has=page.get_by_role("heading", name="The maximum", exact=True)
    )
    (trend,) = drawn_in(section)
    lift = section.get_by_label("Lift").input_value()
    points = asked(page, server, trained, f"maxima/{lift}").json()["points"]
    assert len(points) > 2
    assert trend.dots == about([one["kg"] for one in points])
    high, low, smooth = trend.lines.values()
    assert high == about([one["high_smooth_kg"] for one in points])
    assert low == about([one["low_smooth_kg"] for one in reversed(points)])
    assert smooth == about([one["smooth_kg"] for one in points])


def test_the_file_beside_a_plot_is_the_same_table(
    trained: str, server: ServerProcess, laptop: Handset
) -> None:
    page = laptop.switch_on()
    hands.log_in(page, server.url, EMAIL, PASSWORD)
    page.goto(f"{server.url}/desk/athletes/{trained}/monitoring")
    with page.expect_download() as download:
        page.get_by_role("link", name="CSV: Tonnage of each week").click()
    assert download.value.suggested_filename == "tonnage.csv"
    lines = download.value.path().read_text(encoding="utf-8").splitlines()
    work = asked(page, server, trained, "work").json()["weeks"]
    assert [float(line.split(",")[1]) for line in lines[1:]] == [
        pytest.approx(one["tonnage_kg"], abs=0.001) for one in work
    ]

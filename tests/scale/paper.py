"""What was measured of growth, as plots and tables in a folder."""

import csv
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from tests.scale.svg import Plot, Series, drawn

Costs = Mapping[str, Mapping[int, float]]
"""By what was asked, milliseconds at each size."""

PROCESSOR = "ms of the server's processor for one request"


@dataclass(frozen=True, slots=True)
class Sheet:
    """One plot: which of what was measured, under which names, and the places on its axis."""

    file: str
    title: str
    x: str
    lines: Mapping[str, str]
    ticks: Mapping[int, str]
    y: str = PROCESSOR
    bound: float | None = None


WEEKS = {4: "1 month", 13: "3 months", 52: "1 year", 130: "2½", 260: "5", 520: "10 years"}
SCREENS = {
    "results.show_results": "results",
    "monitoring.show_work 52 weeks": "work of 52 weeks",
    "monitoring.show_load 52 weeks": "session load of 52 weeks",
    "monitoring.show_condition 52 weeks": "condition of 52 weeks",
    "monitoring.show_table maxima": "all maxima, as CSV",
    "proposals.show_proposals": "proposals",
    "blocks.show_loads": "loads beside the text",
    "results.show_athlete": "athlete's page",
}
ROUND = {10: "10", 100: "100", 1_000: "1,000", 10_000: "10,000"}
WITH_OTHERS = {
    "results.show_squad": "squad",
    "exercises.show_exercise": "one exercise",
    "results.show_results": "results",
    "monitoring.show_work 12 weeks": "work of 12 weeks",
    "results.show_athlete": "athlete's page",
    "held.list_held": "held entries",
    "a sync of one set": "sync of one set",
}

SHEETS: Mapping[str, tuple[Sheet, ...]] = {
    "history": (
        Sheet(
            "history-screens",
            "Screens of one athlete, by training behind them",
            "training behind them, three sessions a week",
            SCREENS,
            WEEKS,
            bound=150,
        ),
        Sheet(
            "history-sync",
            "A phone's sync, by training behind it",
            "training behind them, three sessions a week",
            {
                "a sync that ends a session": "ends a session",
                "a sync of one set": "one set",
                "a sync with nothing to say": "nothing to say",
            },
            WEEKS,
        ),
    ),
    "squad": (
        Sheet(
            "squad",
            "Requests of a coach, by athletes of that coach",
            "athletes of one coach",
            WITH_OTHERS,
            {10: "10", 30: "30", 100: "100", 300: "300", 1_000: "1,000"},
            bound=150,
        ),
    ),
    "athletes": (
        Sheet(
            "athletes",
            "Requests of a coach of ten, by athletes on the server",
            "athletes on the server, ten to a coach",
            WITH_OTHERS,
            ROUND,
            bound=150,
        ),
    ),
    "batch": (
        Sheet(
            "batch",
            "A sync, by sets in it",
            "new sets in one request",
            {"the request": "the request", "each entry": "for each set"},
            {1: "1", 5: "5", 20: "20", 50: "50", 100: "100", 500: "500"},
            y="ms of the server's processor",
        ),
    ),
}


def put_down(name: str, costs: Costs, folder: Path) -> None:
    """The plots of one measurement, and all of its figures as a table."""
    folder.mkdir(parents=True, exist_ok=True)
    for sheet in SHEETS[name]:
        (folder / f"{sheet.file}.svg").write_text(drawn(_plot(sheet, costs)), encoding="utf-8")
    with (folder / f"{name}.csv").open("w", encoding="utf-8", newline="") as file:
        table = csv.writer(file)
        sizes = sorted({size for by_size in costs.values() for size in by_size})
        table.writerow(["milliseconds of the processor", *sizes])
        table.writerows([what, *map(by_size.get, sizes)] for what, by_size in costs.items())


def _plot(sheet: Sheet, costs: Costs) -> Plot:
    series = [
        Series(words, tuple(sorted((float(at), ms) for at, ms in costs[what].items())))
        for what, words in sheet.lines.items()
    ]
    last = max(at for one in series for at, _ in one.points)
    ticks = tuple((float(at), words) for at, words in sheet.ticks.items() if at <= last)
    return Plot(sheet.title, sheet.x, sheet.y, ticks, tuple(series), sheet.bound)

"""A plot is whole XML, says its units, names every line, and fits its paper."""

import re
from xml.etree import ElementTree

from tests.scale.svg import HEIGHT, WIDTH, Plot, Series, drawn

PLOT = Plot(
    "Costs & sizes",
    "athletes",
    "ms of the processor",
    ((1.0, "1"), (100.0, "100")),
    (Series("squad", ((1.0, 2.0), (100.0, 180.0))), Series("held", ((1.0, 2.0), (100.0, 180.0)))),
    bound=150,
)


def test_it_says_title_units_budget_and_the_name_of_each_line() -> None:
    words = {one.text for one in ElementTree.fromstring(drawn(PLOT)).iter() if one.text}
    assert {PLOT.title, PLOT.x, PLOT.y, "budget 150", "● squad", "■ held"} <= words


def test_lines_lie_on_the_paper_and_rise_where_costs_rise() -> None:
    (way, _) = re.findall(r' d="M([^"]+)"', drawn(PLOT))
    (left, low), (right, high) = (map(float, place.split()) for place in way.split("L"))
    assert 0 < left < right < WIDTH
    assert 0 < high < low < HEIGHT


def test_names_of_lines_that_end_together_stand_apart() -> None:
    places = re.findall(r'y="([\d.]+)">[●■] ', drawn(PLOT))
    assert abs(float(places[0]) - float(places[1])) >= 12

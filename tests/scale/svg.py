"""Small line plots as SVG: logarithmic axes, readable on light and dark paper.

Lines differ by colour and by mark, and each is named at its end.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape
from math import ceil, floor, log10

WIDTH, HEIGHT = 760, 420
LEFT, RIGHT, TOP, BOTTOM = 84, 210, 40, 52
LINE_HEIGHT = 15
"""How far apart the names at the ends of lines stand at the least."""

COLOURS = ("#0b6e99", "#b04a00", "#2f7d32", "#8e3a8e", "#8a6d00", "#b3261e", "#4a5bb5", "#5f6368")
DARK = ("#5cc3ee", "#ff9a52", "#7fd084", "#e09be0", "#e0c04f", "#ff8a80", "#9fabff", "#bdc1c6")
MARKS = "●■▲◆▼○□△"

STYLE = """
text{font:12px system-ui,sans-serif;fill:#1d1d1f}
.grid{stroke:#d5d5da}.axis{stroke:#6e6e73}.bound{stroke:#6e6e73;stroke-dasharray:5 4}
.title{font-weight:600;font-size:14px}path{fill:none;stroke-width:2}
%s
@media(prefers-color-scheme:dark){text{fill:#f2f2f4}.grid{stroke:#3a3a3f}.paper{fill:#1b1b1d}
.axis,.bound{stroke:#a1a1a6}
%s}
"""


@dataclass(frozen=True, slots=True)
class Series:
    """One line: points (x, y), both above 0, rising in x."""

    name: str
    points: tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class Plot:
    """`ticks` name places on the x axis; `bound` is a budget in the unit of y, None for none."""

    title: str
    x: str
    y: str
    ticks: tuple[tuple[float, str], ...]
    series: tuple[Series, ...]
    bound: float | None = None


def drawn(plot: Plot) -> str:
    """The plot as the text of an SVG file."""
    return "\n".join(_parts(plot)) + "\n"


@dataclass(frozen=True, slots=True)
class _Scale:
    """From values to places on the paper; decades of y from `low` to `high`."""

    first: float
    last: float
    low: int
    high: int

    def x(self, value: float) -> float:
        share = log10(value / self.first) / log10(self.last / self.first)
        return LEFT + share * (WIDTH - LEFT - RIGHT)

    def y(self, value: float) -> float:
        share = (log10(value) - self.low) / (self.high - self.low)
        return HEIGHT - BOTTOM - share * (HEIGHT - TOP - BOTTOM)


def _scale(plot: Plot) -> _Scale:
    xs = [x for one in plot.series for x, _ in one.points] + [x for x, _ in plot.ticks]
    ys = [y for one in plot.series for _, y in one.points] + [plot.bound or 1]
    return _Scale(min(xs), max(xs), floor(log10(min(ys))), ceil(log10(max(ys))))


def _parts(plot: Plot) -> Iterator[str]:
    scale = _scale(plot)
    size = f'width="{WIDTH}" height="{HEIGHT}" viewBox="0 0 {WIDTH} {HEIGHT}"'
    yield f'<svg xmlns="http://www.w3.org/2000/svg" {size} role="img" aria-labelledby="t">'
    yield f'<title id="t">{escape(plot.title)}</title><style>{_style()}</style>'
    yield f'<rect class="paper" width="{WIDTH}" height="{HEIGHT}" fill="#fff"/>'
    yield f'<text class="title" x="{LEFT}" y="20">{escape(plot.title)}</text>'
    yield from _axes(plot, scale)
    for number, one in enumerate(plot.series):
        yield _line(one, number, scale)
    yield from _names(plot.series, scale)
    yield "</svg>"


def _style() -> str:
    light, dark = (
        "".join(f".s{n}{{stroke:{c}}}.f{n}{{fill:{c}}}" for n, c in enumerate(colours))
        for colours in (COLOURS, DARK)
    )
    return STYLE % (light, dark)


def _axes(plot: Plot, scale: _Scale) -> Iterator[str]:
    right, foot = WIDTH - RIGHT, HEIGHT - BOTTOM
    for decade in range(scale.low, scale.high + 1):
        y = scale.y(10.0**decade)
        yield f'<line class="grid" x1="{LEFT}" y1="{y:.1f}" x2="{right}" y2="{y:.1f}"/>'
        yield f'<text x="{LEFT - 6}" y="{y + 4:.1f}" text-anchor="end">{10.0**decade:g}</text>'
    for value, words in plot.ticks:
        x = scale.x(value)
        yield f'<line class="grid" x1="{x:.1f}" y1="{TOP}" x2="{x:.1f}" y2="{foot}"/>'
        yield f'<text x="{x:.1f}" y="{foot + 17}" text-anchor="middle">{escape(words)}</text>'
    middle = (LEFT + right) / 2
    yield f'<text x="{middle}" y="{HEIGHT - 12}" text-anchor="middle">{escape(plot.x)}</text>'
    yield f'<text x="{LEFT}" y="{TOP - 6}">{escape(plot.y)}</text>'
    yield f'<line class="axis" x1="{LEFT}" y1="{foot}" x2="{right}" y2="{foot}"/>'
    if plot.bound is not None:
        y = scale.y(plot.bound)
        yield f'<line class="bound" x1="{LEFT}" y1="{y:.1f}" x2="{right}" y2="{y:.1f}"/>'
        place = f'x="{LEFT - 6}" y="{y + 4:.1f}" text-anchor="end"'
        yield f"<text {place}>budget {plot.bound:g}</text>"


def _line(one: Series, number: int, scale: _Scale) -> str:
    places = [(scale.x(x), scale.y(y)) for x, y in one.points]
    way = "M" + "L".join(f"{x:.1f} {y:.1f}" for x, y in places)
    mark, colour = MARKS[number % len(MARKS)], number % len(COLOURS)
    marks = "".join(
        f'<text class="f{colour}" x="{x:.1f}" y="{y + 4:.1f}" text-anchor="middle">{mark}</text>'
        for x, y in places
    )
    return f'<path class="s{colour}" d="{way}"/>{marks}'


def _names(series: Sequence[Series], scale: _Scale) -> Iterator[str]:
    """At the ends of lines, apart from each other."""
    ends = sorted((scale.y(one.points[-1][1]), n) for n, one in enumerate(series))
    at = TOP - LINE_HEIGHT
    places = []
    for y, number in ends:
        at = max(at + LINE_HEIGHT, y)
        places.append((at, number))
    over = max(0.0, at - (HEIGHT - BOTTOM))
    for y, number in places:
        words = f"{MARKS[number % len(MARKS)]} {series[number].name}"
        colour = number % len(COLOURS)
        place = f'x="{WIDTH - RIGHT + 14}" y="{y - over + 4:.1f}"'
        yield f'<text class="f{colour}" {place}>{escape(words)}</text>'

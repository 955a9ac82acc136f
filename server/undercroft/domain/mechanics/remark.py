"""What is to be said about a rig: slack, stretched far, guessed, uneven, off the share."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from undercroft.domain.mechanics.band import Basis
from undercroft.domain.mechanics.chain import HungChain, lies_still
from undercroft.domain.mechanics.path import Path
from undercroft.domain.mechanics.pulley import STANDARD_GRAVITY
from undercroft.domain.mechanics.rig import HungBand, left_and_right_n, pull
from undercroft.domain.mechanics.settings import DEFAULT
from undercroft.domain.program.finding import Severity

ENDS = np.array([0.0, 1.0])


class About(StrEnum):
    SLACK_AT_START = "slack-at-start"
    SLACK_AT_END = "slack-at-end"
    BEYOND_READINGS = "beyond-readings"
    ESTIMATED = "estimated"
    UNEVEN = "uneven"
    SIDEWAYS = "sideways"
    OFF_SHARE = "off-share"
    CHANGES_NOTHING = "changes-nothing"
    RANGE_GUESSED = "range-guessed"


@dataclass(frozen=True, slots=True)
class Remark:
    about: About
    severity: Severity
    words: str


SLACK = (
    (About.SLACK_AT_START, Severity.WARN, "start"),
    (About.SLACK_AT_END, Severity.NOTE, "end"),
)


def about_bands(hung: Sequence[HungBand], path: Path, load_kg: float) -> list[Remark]:
    """Remarks on hung bands under a load in kg, most serious first."""
    return [*_slack(hung, path), *_stretch(hung, path), *_sides(hung, path, load_kg)]


def about_chains(hung: HungChain, path: Path) -> list[Remark]:
    """Remarks on hung chains."""
    if not lies_still(hung, path):
        return []
    words = f"{hung.chain.label}: as much off the floor all the way, so it changes nothing"
    return [Remark(About.CHANGES_NOTHING, Severity.WARN, words)]


def about_range(path: Path) -> list[Remark]:
    """Whether the range is a guess from stature."""
    if path.measured:
        return []
    words = "range worked out from stature: measure the hands' height at start and end"
    return [Remark(About.RANGE_GUESSED, Severity.NOTE, words)]


def about_share(kg: float, wanted_kg: float, load_kg: float, where: str) -> list[Remark]:
    """Whether what the rig gives at its point is further off its share than it should be."""
    if abs(kg - wanted_kg) <= DEFAULT.off_share * load_kg:
        return []
    words = f"{abs(kg):.1f} kg {where}, wished were {abs(wanted_kg):.1f}: the nearest that this kit"
    return [Remark(About.OFF_SHARE, Severity.WARN, f"{words} makes")]


def sides_kg(hung: Sequence[HungBand], path: Path) -> tuple[float, float]:
    """What the bands of the left and of the right give in kg, where they differ most."""
    both = np.array(left_and_right_n(hung, path, ENDS)) / STANDARD_GRAVITY
    end = int(np.argmax(np.abs(both[0] - both[1])))
    left, right = both[:, end].tolist()
    return left, right


def _slack(hung: Sequence[HungBand], path: Path) -> list[Remark]:
    found = []
    along = np.array([pull(one, path, ENDS).along_n for one in hung])
    for end, (about, severity, words) in enumerate(SLACK):
        loose = [one.law.label for one, at in zip(hung, along[:, end], strict=True) if not at]
        if loose:
            text = f"slack at the {words}: {', '.join(dict.fromkeys(loose))}"
            found.append(Remark(about, severity, text))
    return found


def _stretch(hung: Sequence[HungBand], path: Path) -> list[Remark]:
    found = []
    for one in hung:
        law, flat = one.law, float(np.max(pull(one, path, ENDS).flat_m))
        if law.basis is Basis.ESTIMATED:
            words = f"{law.label}: estimated from its size, measure this band"
            found.append(Remark(About.ESTIMATED, Severity.WARN, words))
        elif law.longest_m is not None and flat > law.longest_m:
            words = f"{law.label}: stretched to {flat:.2f} m, read only to {law.longest_m:.2f} m"
            found.append(Remark(About.BEYOND_READINGS, Severity.WARN, words))
    return found


def _sides(hung: Sequence[HungBand], path: Path, load_kg: float) -> list[Remark]:
    found = []
    left, right = sides_kg(hung, path)
    if abs(left - right) > DEFAULT.uneven_share * load_kg:
        words = f"left {abs(left):.1f} kg and right {abs(right):.1f} kg"
        found.append(Remark(About.UNEVEN, Severity.WARN, f"the pair differs: {words}"))
    aside = sum(float(np.max(pull(one, path, ENDS).sideways_n)) for one in hung) / STANDARD_GRAVITY
    if aside > DEFAULT.sideways_share * load_kg:
        words = f"pulls up to {aside:.1f} kg sideways, towards the anchors"
        found.append(Remark(About.SIDEWAYS, Severity.NOTE, words))
    return found

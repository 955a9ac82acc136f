"""Where each screen of the desk stands, and which screens its routes have."""

import re
from collections.abc import Mapping
from pathlib import Path

from tests.browser.conftest import Squad

ROUTES = Path(__file__).parents[2] / "pwa" / "src" / "coach" / "shell" / "route.ts"

PLACES: Mapping[str, str] = {
    "squad": "",
    "results": "athletes/{athlete}",
    "next": "athletes/{athlete}/next",
    "monitoring": "athletes/{athlete}/monitoring",
    "person": "athletes/{athlete}/person",
    "kit": "athletes/{athlete}/kit",
    "screening": "athletes/{athlete}/screening",
    "phones": "athletes/{athlete}/phones",
    "held": "athletes/{athlete}/held",
    "sharing": "athletes/{athlete}/sharing",
    "sheets": "athletes/{athlete}/sheets",
    "blocks": "blocks",
    "take-in": "blocks/take-in",
    "writer": "blocks/{block}",
    "own": "blocks/{block}/own/{athlete}",
    "send": "blocks/{block}/send",
    "exercises": "exercises",
    "exercise": "exercises/back-squat",
    "new-exercise": "exercises/new",
    "calculators": "calculators",
    "calculator": "calculators/cuff-pressure",
    "account": "account",
    "join": "join",
    "nowhere": "no/such/page",
}
"""Paths below /desk, by the name of the route or of the part of an athlete's page."""


def place_of(screen: str, squad: Squad) -> str:
    return PLACES[screen].format(athlete=squad.athlete_id, block=squad.block_id)


def screens() -> set[str]:
    """Every screen that the desk's routes know, an athlete's page by its parts."""
    text = ROUTES.read_text(encoding="utf-8")
    union = text.partition("export type Route =")[2].partition(";\n\n")[0]
    parts = text.partition("ATHLETE_PARTS = [")[2].partition("]")[0]
    named = {
        name
        for told in re.findall(r"screen: ([^;}]+)", union)
        for name in re.findall(r'"([\w-]+)"', told)
    }
    assert "athlete" in named
    return (named - {"athlete"}) | set(re.findall(r'"([\w-]+)"', parts))

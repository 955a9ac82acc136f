"""The load sheets that an athlete has, as the phone shows them: for paper."""

from dataclasses import dataclass
from typing import Any

from undercroft.domain.occlusion.stop_signs import ORDER, TWO_LINES
from undercroft.services import planning
from undercroft.store import athletes, revisions

NOT_TODAY = (
    "Not today with a fever, dehydrated, after alcohol or a long journey, or with a new pain."
)


@dataclass(frozen=True, slots=True)
class SheetsShown:
    """`revision` None: nothing was sent yet. `sheets` in the order of the plan.

    `wrap_signs`: what forbids and what ends work with a wrap on, which a phone would ask and show.
    """

    name: str
    block: str
    revision: int | None
    sheets: list[dict[str, Any]]
    wrap_signs: tuple[str, ...] = (NOT_TODAY, *TWO_LINES, " ".join(ORDER))


def sheets_shown(athlete_id: str) -> SheetsShown:
    """Each session's newest sheet; one that was begun keeps the sheet it was begun with."""
    name = str(athletes.athlete_with_coach(athlete_id).name)
    now = planning.current(athlete_id)
    if now is None:
        return SheetsShown(name, "", None, [])
    kept = sorted(revisions.sheets_of_many(athlete_id, now.numbers), key=lambda s: int(s.revision))
    newest: dict[str, Any] = {sheet.session: sheet.document for sheet in kept}
    ordered = [newest[key] for key in now.sessions if key in newest]
    return SheetsShown(name, now.block.name, now.number, ordered)

"""An athlete's documents as typed objects."""

from typing import Any

from undercroft.documents.athlete import InjuryShape
from undercroft.documents.made import made
from undercroft.documents.reading import read_athlete, read_kit
from undercroft.domain.athlete import Athlete, Injury
from undercroft.domain.exercise import Catalogue
from undercroft.domain.kit import Kit
from undercroft.services.catalogues import catalogue_of
from undercroft.store import models

NO_KIT = Kit(key="none", name="no kit yet")


def athlete_document(row: models.Athlete, known: Catalogue | None = None) -> Athlete:
    """The athlete as last saved, or just the name where nothing was saved yet.

    `known` is the coach's catalogue, where it is at hand already.
    """
    if row.document is None:
        return Athlete(key=row.id, name=row.name)
    return read_athlete(row.document, known or catalogue_of(row.coach_id))


def injuries_of(row: models.Athlete) -> list[Injury]:
    """Of the athlete's document the injuries alone: this is asked of a whole squad."""
    told = (row.document or {}).get("injuries", ())
    return [made(InjuryShape).load(one) for one in told]


def kit_document(row: models.Athlete) -> Kit:
    """The kit as last saved, or an empty one."""
    return NO_KIT if row.kit is None else read_kit(row.kit)


def feed_body(row: models.Athlete, coach: str) -> dict[str, Any]:
    """What a phone keeps of the athlete: names and the unit of mass, no more."""
    pounds = bool((row.document or {}).get("pounds", False))
    return {"id": row.id, "name": row.name, "coach": coach, "pounds": pounds}

"""Tell phones which pictures the exercises of their programme have."""

from typing import Any

from undercroft.domain.program.block import Block
from undercroft.services import planning
from undercroft.services.catalogues import catalogue_of
from undercroft.store import athletes, feed, pictures
from undercroft.store.models import Athlete

KIND = "pictures"


def publish(row: Athlete, block: Block) -> None:
    """What a phone with this block may show, if it is news; call with the athlete's lock held."""
    now = _of_block(row.coach_id, block)
    if now != (feed.newest(row.id, KIND, "") or {}):
        feed.publish(row.id, KIND, "", now)


def tell(row: Athlete) -> None:
    """The same by what the athlete trains by, as after another coach has taken over."""
    now = planning.current(row.id)
    if now is not None:
        publish(row, now.block)


def tell_all(coach_id: str, key: str) -> None:
    """Everybody whose programme may come to that exercise, after its picture has changed."""
    known = catalogue_of(coach_id)
    for athlete in athletes.own_athletes(coach_id):
        now = planning.current(athlete.id)
        if now is not None and key in planning.exercises_of(now.block, known):
            with feed.athlete_lock(athlete.id) as row:
                tell(row)


def _of_block(coach_id: str, block: Block) -> dict[str, Any]:
    shown = pictures.facts_of(coach_id)
    wanted = planning.exercises_of(block, catalogue_of(coach_id)) if shown else set()
    return {
        one.key: {"hash": one.hash, "media": one.media, "bytes": one.bytes, "words": one.words}
        for one in shown
        if one.key in wanted
    }

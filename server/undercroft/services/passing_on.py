"""The block that an athlete trains by, given to the coach who goes on with it.

Call with the athlete's lock held.
"""

from undercroft.services import tokens
from undercroft.store import athletes, blocks, revisions


def pass_block_on(athlete_id: str, to: str, now: int) -> None:
    """As it was sent, own changes in it; revisions made from it name the new block from now on."""
    sent = revisions.latest_revision(athlete_id)
    if sent is not None:
        block_id = tokens.new_id(now)
        blocks.add_block(block_id, to, sent.document["name"], sent.document, now)
        revisions.rename_block(athlete_id, sent.block, block_id)


def take_back_from(writer: str, athlete_id: str, now: int) -> None:
    """To the athlete's own coach, where it is a block of that writer, who may not write any more.

    Else nobody could go on with it: a block's text is its writer's alone.
    """
    sent = revisions.latest_revision(athlete_id)
    if sent is not None and sent.block in blocks.ids_of(writer):
        pass_block_on(athlete_id, athletes.coach_of(athlete_id), now)

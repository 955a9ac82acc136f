"""An athlete passes from one coach to another: ledger, revisions and phones stay as they are.

The next coach gets what the athlete trains by as a block of their own, so that the running block
goes on where it stands. Nobody else keeps a right that the next coach did not give.
"""

from undercroft.services import lending, passing_on, picture_feed, planning
from undercroft.services.people import feed_body
from undercroft.store import athletes, offers, own_layers, pairing, rights
from undercroft.store.feed import publish


def hand_over(athlete_id: str, to: str, keeps: str | None, now: int) -> list[str]:
    """Call with the athlete's lock held. `keeps`: the right that the coach until now keeps.

    Names of exercises that both coaches have and that differ: the next coach's count from now on.
    """
    giver = athletes.coach_of(athlete_id)
    loan = lending.of_athlete(athlete_id, giver, to)
    lending.lend(loan, now)
    passing_on.pass_block_on(athlete_id, to, now)
    own_layers.forget_layers(athlete_id)
    offers.forget_athlete(athlete_id)
    pairing.revoke_all(athlete_id, now)
    rights.take_all_back(athlete_id)
    athletes.give_to(athlete_id, to)
    if keeps is not None:
        rights.give(athlete_id, giver, keeps, now)
    row = athletes.athlete_with_coach(athlete_id)
    publish(athlete_id, "athlete", athlete_id, feed_body(row, row.coach.name))
    planning.refresh(row)
    picture_feed.tell(row)
    return [*loan.differing.values()]

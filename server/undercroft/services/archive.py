"""Everything about an athlete in one document, for whoever takes over."""

from typing import Any

from undercroft.documents.entries import envelope
from undercroft.services import accounts, held, ledger
from undercroft.services.clock import iso
from undercroft.services.refusals import Invalid
from undercroft.store import athletes, coaches, own_layers, revisions, screening


def coach_id(email: str) -> str:
    """The coach with this address. Raises Invalid."""
    coach = coaches.coach_by_email(accounts.tidy_email(email))
    if coach is None:
        raise Invalid(f"no coach has the address {email}", "add one: undercroft coach add EMAIL")
    return str(coach.id)


def of_athlete(athlete_id: str) -> dict[str, Any]:
    """Documents, revisions, the whole ledger and what waits outside it; no secrets."""
    row = athletes.athlete_with_coach(athlete_id)
    return {
        "name": row.name,
        "document": row.document,
        "kit": row.kit,
        "revisions": [
            {
                "number": r.number,
                "sent_at": iso(r.sent_at),
                "starts_on": r.starts_on,
                "overrules": r.overrules,
                "block": r.document,
            }
            for r in revisions.all_revisions(athlete_id)
        ],
        "own_changes": [
            {"block": r.block, "changed_at": iso(r.changed_at), "changes": r.document}
            for r in own_layers.layers_of(athlete_id)
        ],
        "screening": [
            {
                "kind": r.kind,
                "recorded_at": iso(r.recorded_at),
                "withdrawn_at": None if r.withdrawn_at is None else iso(r.withdrawn_at),
                "record": r.body,
            }
            for r in screening.records(athlete_id)
        ],
        "entries": [envelope(entry) for entry in ledger.entries_of(athlete_id)],
        "held": [
            {
                "device": one.device,
                "received_at": iso(one.received_at),
                "problem": one.problem,
                "sent": one.sent,
            }
            for one in held.held_of(athlete_id)
        ],
    }

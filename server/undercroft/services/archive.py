"""Everything about an athlete in one document, for whoever takes over."""

from typing import Any

from undercroft.documents.entries import envelope
from undercroft.services import accounts, held, ledger
from undercroft.services.clock import iso
from undercroft.services.held import HeldSeen
from undercroft.services.refusals import Invalid
from undercroft.store import athletes, coaches, own_layers, revisions, screening
from undercroft.store.models import OwnLayer, Revision, ScreeningRecord


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
        "revisions": [_revision(one) for one in revisions.all_revisions(athlete_id)],
        "own_changes": [_layer(one) for one in own_layers.layers_of(athlete_id)],
        "screening": [_record(one) for one in screening.records(athlete_id)],
        "entries": [envelope(entry) for entry in ledger.entries_of(athlete_id)],
        "held": [_held(one) for one in held.held_of(athlete_id)],
    }


def _revision(row: Revision) -> dict[str, Any]:
    return {
        "number": row.number,
        "sent_at": iso(row.sent_at),
        "starts_on": row.starts_on,
        "overrules": row.overrules,
        "block": row.document,
    }


def _layer(row: OwnLayer) -> dict[str, Any]:
    return {"block": row.block, "changed_at": iso(row.changed_at), "changes": row.document}


def _record(row: ScreeningRecord) -> dict[str, Any]:
    return {
        "kind": row.kind,
        "recorded_at": iso(row.recorded_at),
        "withdrawn_at": None if row.withdrawn_at is None else iso(row.withdrawn_at),
        "record": row.body,
    }


def _held(one: HeldSeen) -> dict[str, Any]:
    return {
        "device": one.device,
        "received_at": iso(one.received_at),
        "problem": one.problem,
        "sent": one.sent,
    }

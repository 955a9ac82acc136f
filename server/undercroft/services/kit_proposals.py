"""Changes of the kit that athletes propose, and what their coach makes of them."""

from dataclasses import dataclass
from typing import Any

from undercroft.documents.canonical import plain
from undercroft.documents.faults import FaultyDocument
from undercroft.documents.kit import KitShape
from undercroft.documents.kit_change import WITHDRAWN, read_kit_change
from undercroft.documents.reading import read_kit
from undercroft.domain.errors import DomainError
from undercroft.domain.kit import Kit
from undercroft.domain.kit_changes import changed
from undercroft.domain.ledger import Entry, fold
from undercroft.services import athlete_page, ledger
from undercroft.services.kit_words import change_in_words
from undercroft.services.refusals import Invalid, NotFound
from undercroft.store import athletes, kit_decisions
from undercroft.store.feed import athlete_lock

KIND = "kit.changed"


@dataclass(frozen=True, slots=True)
class Proposal:
    """`says` is the change in words, empty where its shape is not known here and `change` has to
    be read as it is; `trouble` is why it cannot be applied to the kit as it stands.
    """

    id: str
    at: str
    item: str
    says: str
    change: dict[str, Any]
    trouble: str | None


def open_proposals(athlete_id: str) -> list[Proposal]:
    """Those that wait for the coach, oldest first; what was corrected since is left out."""
    kit = _kit(athlete_id)
    return [_seen(entry, kit) for entry in _open(athlete_id)]


def accept(athlete_id: str, entry_id: str) -> dict[str, Any]:
    """Apply it to the kit and work out what follows; the kit's document as it is now.

    Raises NotFound, and Invalid where it cannot be applied.
    """
    with athlete_lock(athlete_id):
        entry = _one(athlete_id, entry_id)
        document = _applied(entry, _kit(athlete_id))
        saved = athlete_page.save_kit(athlete_id, document)
        kit_decisions.decide(athlete_id, entry_id, accepted=True)
    return saved


def decline(athlete_id: str, entry_id: str) -> None:
    """Set it aside; the kit stays. Raises NotFound."""
    with athlete_lock(athlete_id):
        _one(athlete_id, entry_id)
        kit_decisions.decide(athlete_id, entry_id, accepted=False)


def _open(athlete_id: str) -> list[Entry]:
    told = fold(ledger.entries_of(athlete_id, kinds=(KIND,))).kit_changes
    done = kit_decisions.decided(athlete_id)
    waiting = [entry for entry in told if entry.id not in done and not _withdrawn(entry)]
    return sorted(waiting, key=lambda entry: entry.position)


def _withdrawn(entry: Entry) -> bool:
    return bool(entry.body["change"].get("kind") == WITHDRAWN)


def _one(athlete_id: str, entry_id: str) -> Entry:
    found = next((entry for entry in _open(athlete_id) if entry.id == entry_id), None)
    if found is None:
        raise NotFound("no change of the kit waits under this name")
    return found


def _kit(athlete_id: str) -> Kit | None:
    document = athletes.athlete_with_coach(athlete_id).kit
    return None if document is None else read_kit(document)


def _seen(entry: Entry, kit: Kit | None) -> Proposal:
    raw = dict(entry.body["change"])
    change = read_kit_change(raw)
    return Proposal(
        id=entry.id,
        at=entry.at,
        item=str(entry.body["item"]),
        says="" if change is None else change_in_words(change, kit),
        change=raw,
        trouble=_trouble(entry, kit),
    )


def _trouble(entry: Entry, kit: Kit | None) -> str | None:
    try:
        _applied(entry, kit)
    except Invalid as refused:
        return f"{refused.what}; {refused.right}"
    return None


def _applied(entry: Entry, kit: Kit | None) -> dict[str, Any]:
    change = read_kit_change(entry.body["change"])
    if change is None:
        what = "this server does not know how to apply it"
        raise Invalid(what, "change the kit by hand, then set it aside")
    if kit is None:
        raise Invalid("no kit is written down yet", "write down the kit first")
    try:
        document: dict[str, Any] = plain(KitShape().dump(changed(kit, change, entry.at[:10])))
        read_kit(document)
    except DomainError as refused:
        raise Invalid(refused.what, refused.right) from None
    except FaultyDocument as faulty:
        first = faulty.faults[0]
        raise Invalid(f"{first.where}: {first.what}", first.right, faulty.faults) from None
    return document

"""What a coach has to hear at once of occlusion work, in words."""

from collections.abc import Iterator
from datetime import date

from undercroft.domain.ledger import Ledger, SessionRecord
from undercroft.domain.occlusion import (
    AFTER_SIGNS,
    LIMITS,
    STOP_SIGNS,
    AfterCheck,
    after_decision,
    sites_of,
)
from undercroft.domain.occlusion.site import in_words

_AFTER = {one.key: one.text for one in AFTER_SIGNS}
_STOP = {one.key: one.text for one in STOP_SIGNS}


def signs_told(told: Ledger) -> Iterator[str]:
    """Signs after the work, numbness under a wrap, wear beyond its limit: each line once."""
    lines = [*_after(told), *_numb(told), *_beyond(told)]
    yield from dict.fromkeys(lines)


def why_ended(record: SessionRecord) -> str | None:
    """The signs that ended a session, None where it was stopped for another reason."""
    signs = record.stopped.body.get("signs") if record.stopped else None
    return None if not signs else "; ".join(_STOP.get(key, key) for key in signs)


def _after(told: Ledger) -> Iterator[str]:
    """Ordinary soreness is none of the coach's worries."""
    for entry in told.after_checks:
        on, hours = date.fromisoformat(entry.at[:10]), entry.body["hours"]
        for key in entry.body["signs"]:
            if after_decision(AfterCheck(on, hours, (key,))).locks:
                yield f"Sign after occlusion work: {_AFTER.get(key, key)}"


def _numb(told: Ledger) -> Iterator[str]:
    if any(entry.kind == "wrap.check" and entry.body["numb"] for entry in told.wraps):
        yield "Numb under the wrap"


def _beyond(told: Ledger) -> Iterator[str]:
    for entry in told.wraps:
        seconds = entry.body.get("seconds", 0)
        if entry.kind == "wrap.off" and seconds > LIMITS.wear_stop_s:
            limb = in_words(sites_of(str(entry.body["limb"])))
            yield f"Wrap beyond its limit: {limb}, {int(seconds) // 60} min"

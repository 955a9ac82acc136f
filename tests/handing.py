"""A hand-over file as the phone writes it."""

import json
from collections.abc import Sequence
from typing import Any

from tests.people import Phone


def hand_over_text(phone: Phone, name: str, entries: Sequence[Any], **head: Any) -> str:
    """One entry a line; `head` changes what stands above them."""
    above = {
        "format": "undercroft hand-over",
        "v": 1,
        "device": phone.id,
        "epoch": phone.epoch,
        "athlete": {"id": phone.athlete_id, "name": name},
        "made_at": "2026-02-06T08:00:00.000+01:00",
        "count": len(entries),
        **head,
    }
    lines = ",\n".join(json.dumps(entry) for entry in entries)
    return f'{json.dumps(above)[:-1]},\n"entries": [\n{lines}\n]}}\n'

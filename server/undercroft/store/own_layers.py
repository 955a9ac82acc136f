"""What athletes do otherwise than their blocks say."""

from typing import Any

from undercroft.store.models import OwnLayer


def layer_of(athlete_id: str, block_id: str) -> OwnLayer | None:
    """The athlete's own changes to the block, if there ever were any."""
    return OwnLayer.get_or_none(OwnLayer.athlete == athlete_id, OwnLayer.block == block_id)


def layers_of(athlete_id: str) -> list[OwnLayer]:
    """Those to every block."""
    rows = OwnLayer.select().where(OwnLayer.athlete == athlete_id)
    return list(rows.order_by(OwnLayer.block))


def forget_layers(athlete_id: str) -> None:
    OwnLayer.delete().where(OwnLayer.athlete == athlete_id).execute()


def keep_layer(
    athlete_id: str, block_id: str, number: int, document: Any, now: int, coach_id: str
) -> None:
    """Put it in place of an earlier one."""
    kept = {"number": number, "document": document, "changed_at": now, "changed_by": coach_id}
    OwnLayer.insert(athlete=athlete_id, block=block_id, **kept).on_conflict(
        conflict_target=[OwnLayer.athlete, OwnLayer.block], update=kept
    ).execute()

"""Run one check on a plan, and say what it found."""

from dataclasses import replace
from typing import Any

from tests.domain.program.plans import CELLAR, MONDAY, SIV, order

from undercroft.domain.athlete import Athlete
from undercroft.domain.kit import Kit
from undercroft.domain.occlusion import OcclusionRecord
from undercroft.domain.program.block import Block
from undercroft.domain.program.checks import (
    BY_NAME,
    DEFAULT,
    Background,
    CheckContext,
    Thresholds,
    look_at,
    run,
)
from undercroft.domain.program.finding import Finding
from undercroft.domain.sheet import work_out
from undercroft.domain.sheet.session import NOTHING_ON_RECORD


def context(
    plan: Block,
    athlete: Athlete = SIV,
    kit: Kit = CELLAR,
    background: Background | None = None,
    thresholds: Thresholds = DEFAULT,
    leave_out: tuple[str, ...] = (),
    starts_on: Any = MONDAY,
    occlusion: OcclusionRecord = NOTHING_ON_RECORD,
) -> CheckContext:
    asked = replace(order(plan, athlete, kit, starts_on), occlusion=occlusion)
    return look_at(asked, work_out(asked, leave_out), background, thresholds)


def found(name: str, plan: Block, **fields: Any) -> tuple[Finding, ...]:
    """The findings of the check of that name."""
    return run([BY_NAME[name]], context(plan, **fields))


def finds(name: str, plan: Block, **fields: Any) -> bool:
    return bool(found(name, plan, **fields))

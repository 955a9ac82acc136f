"""What a load sheet says of occlusion work: its lock, how tight, how long, what comes next."""

from dataclasses import replace
from datetime import date

from undercroft.domain.errors import LoadError
from undercroft.domain.load_sheet import SheetExercise, SheetOcclusion
from undercroft.domain.occlusion import (
    EXPECTED,
    LIMITS,
    CuffPressure,
    Lock,
    NextLoad,
    Person,
    PlannedOcclusion,
    Work,
    cuff_pressure,
    most_tightness,
    next_load_table,
    predicted_wear_s,
    rung,
    rung_in_words,
    work_issues,
    work_of,
)
from undercroft.domain.program.block import Block, ExercisePlan, SessionPlan
from undercroft.domain.program.finding import Severity
from undercroft.domain.program.methods import Method, OcclusionRule, Restriction
from undercroft.domain.sheet.day import Day, OcclusionToday

BY_THE_CLINIC = "A clinician's own prescription: nothing of it is worked out or moved here."
NO_PRESSURE = "No pressure is known for this cuff: have the limb occlusion pressure measured."
TOO_HEAVY = "Nothing here is light enough for occlusion work."


def occlusion_rule(plan: ExercisePlan) -> OcclusionRule | None:
    """The rule of an occlusion exercise, None for any other."""
    if plan.method is Method.OCCLUSION and isinstance(plan.details, OcclusionRule):
        return plan.details
    return None


def planned_occlusion(session: SessionPlan, on: date) -> PlannedOcclusion | None:
    """The session's limbs that work with a wrap or cuff on; None where there are none."""
    limbs = frozenset(rule.limb for rule in map(occlusion_rule, session.exercises) if rule)
    return PlannedOcclusion(session.key, on, limbs) if limbs else None


def has_occlusion(block: Block) -> bool:
    """Is there any work in it with a wrap or cuff on?"""
    plans = (e for week in block.weeks for one in week.sessions for e in one.exercises)
    return any(occlusion_rule(plan) is not None for plan in plans)


def clinics_own(day: Day, plan: ExercisePlan) -> bool:
    """Occlusion work that a clinician prescribed: no load of it is worked out."""
    known = day.occlusion
    return occlusion_rule(plan) is not None and known is not None and known.lock.as_prescribed


def locked_words(lock: Lock) -> str:
    """Why the exercise cannot be started, and what opens it; empty where it can."""
    if lock.open:
        return ""
    why = lock.why[0] if lock.why else "nothing is on record"
    more = f", and {len(lock.why) - 1} more" if len(lock.why) > 1 else ""
    opens = f" What opens it: {lock.what_opens_it[0]}." if lock.what_opens_it else ""
    return f"Occlusion work is locked: {why}{more}.{opens}"


def with_occlusion(day: Day, plan: ExercisePlan, sheet: SheetExercise) -> SheetExercise:
    """The exercise with its lock and limits; other methods come back as they are."""
    rule = occlusion_rule(plan)
    if rule is None or day.occlusion is None:
        return sheet
    known = day.occlusion
    told = replace(sheet, locked=locked_words(known.lock))
    if known.lock.as_prescribed:
        words = (one.as_written for one in known.lock.prescriptions)
        told = replace(told, notes=(*told.notes, BY_THE_CLINIC, *words))
        return replace(told, occlusion=_limits(known, plan, rule))
    pressure = _pressure(day, known, rule)
    limits = replace(_limits(known, plan, rule), next=_next_load(known, plan, rule, told))
    if pressure is not None:
        mmhg = round(pressure.mmhg)
        limits = replace(limits, pressure_mmhg=mmhg, pressure_basis=pressure.basis)
    capped = _capped(known, told)
    no_pressure = rule.restriction is Restriction.CUFF and pressure is None
    notes = (*capped.notes, NO_PRESSURE) if no_pressure else capped.notes
    beyond = _beyond(known, work_on_sheet(plan, told), measured=_is_measured(rule, pressure))
    return replace(capped, notes=notes, occlusion=limits, locked=told.locked or beyond)


def work_on_sheet(plan: ExercisePlan, sheet: SheetExercise | None) -> Work:
    """The work with the share of the maximum that the kit makes of it, to a tenth of a percent."""
    if sheet is None or sheet.maximum is None or any(one.load is None for one in sheet.sets):
        return work_of(plan)
    heaviest = max(sheet.loads[one.load].kg for one in sheet.sets if one.load is not None)
    return work_of(plan, round(100 * heaviest / sheet.maximum.kg, 1))


def _beyond(known: OcclusionToday, work: Work, *, measured: bool) -> str:
    """What the plan asks beyond the limits of the day, which may have grown tighter since it went.

    Time away takes exposures back, a clearance brings limits, a measured pressure grows old.
    """
    exposure = known.ahead[work.limb].exposure
    for issue in work_issues(work, exposure, measured, known.lock.limits):
        if issue.severity is Severity.STOP:
            opens = "your coach sends what is within the limits"
            return f"This set list is locked: {issue.what}. Right would be: {issue.right}; {opens}."
    return ""


def _is_measured(rule: OcclusionRule, pressure: CuffPressure | None) -> bool:
    return rule.restriction is Restriction.WRAP or (pressure is not None and pressure.measured)


def _limits(known: OcclusionToday, plan: ExercisePlan, rule: OcclusionRule) -> SheetOcclusion:
    ahead, lock = known.ahead[rule.limb], known.lock
    wrapped = rule.restriction is Restriction.WRAP
    tightness = min(lock.limits.tightness, most_tightness(rule.limb, ahead.exposure))
    return SheetOcclusion(
        exposure=ahead.exposure,
        rung=rung_in_words(ahead.exposure),
        wear_s=round(predicted_wear_s(work_of(plan))),
        limit_s=round(min(LIMITS.wear_stop_s, lock.limits.wear_minutes * 60)),
        break_s=LIMITS.break_s,
        gap_h=_gap_h(ahead.exposure),
        away_days=LIMITS.away_days,
        after=ahead.after,
        holds_until=ahead.holds_until,
        most_tightness=tightness if wrapped else None,
        until=lock.until,
        company=lock.company,
        expected=tuple(one.mean for one in EXPECTED[: len(plan.sets)]),
        limits=lock.limits.in_words,
    )


def _gap_h(exposure: int) -> int:
    """The least hours since the exposure before this one: more after the first ones."""
    least = rung(max(1, exposure - 1)).gap_h
    return least if least > LIMITS.gap_warn_h else LIMITS.gap_stop_h


def _capped(known: OcclusionToday, sheet: SheetExercise) -> SheetExercise:
    """No load beyond the limit can be suggested or chosen; any, where no maximum is known."""
    most = _most_kg(known, sheet)
    if most is None or not sheet.loads:
        return sheet
    cap = max((i for i, load in enumerate(sheet.loads) if load.kg <= most), default=None)
    if cap is None:
        return replace(sheet, notes=(*sheet.notes, TOO_HEAVY))
    return replace(sheet, sets=tuple(replace(one, cap=cap) for one in sheet.sets))


def _most_kg(known: OcclusionToday, sheet: SheetExercise) -> float | None:
    percent = min(known.lock.limits.load_percent, LIMITS.most_load_percent)
    return None if sheet.maximum is None else sheet.maximum.kg * percent / 100


def _next_load(
    known: OcclusionToday, plan: ExercisePlan, rule: OcclusionRule, sheet: SheetExercise
) -> NextLoad | None:
    """None where a load is found by feel, or none is light enough."""
    planned = [sheet.loads[one.load].kg for one in sheet.sets if one.load is not None]
    if len(planned) < len(sheet.sets):
        return None
    try:
        return next_load_table(
            work_of(plan).sets,
            [load.kg for load in sheet.loads],
            max(planned),
            sheet.maximum.kg if sheet.maximum else None,
            known.ahead[rule.limb].exposure,
            known.lock.limits.load_percent,
        )
    except LoadError:
        return None


def _pressure(day: Day, known: OcclusionToday, rule: OcclusionRule) -> CuffPressure | None:
    percent = rule.pressure_percent
    if rule.restriction is not Restriction.CUFF or percent is None:
        return None
    person = Person(known.record, day.athlete.thigh_cm)
    return cuff_pressure(person, day.kit.cuffs, rule.limb, percent, day.on)

"""Occlusion work: its lock, and every limit of `undercroft.domain.occlusion`, each as a check.

None of the stops can be overruled: nobody moves those limits, and an overrule would be a way to.
"""

from collections.abc import Callable, Iterator

from undercroft.domain.program.checks.check import Check, Found, check
from undercroft.domain.program.checks.context import CheckContext
from undercroft.domain.program.checks.occlusion_limits import LIMIT_CHECKS, LimitCheck
from undercroft.domain.program.checks.occlusion_work import occlusion_lines
from undercroft.domain.program.finding import Severity


@check(
    "occlusion-locked",
    Severity.STOP,
    looks_for="occlusion work while its screening is not complete, read and cleared",
    message="occlusion work is locked: {why}",
    mend="{opens}; nothing else opens it",
    source="screening: the conditions and the evidence stand beside each question",
    final=True,
)
def occlusion_locked(context: CheckContext) -> Iterator[Found]:
    for session in context.occlusion.sessions:
        lock = context.occlusion.locks[session.place.at]
        if not lock.open:
            why = "; ".join(lock.why) or "nothing is on record"
            opens = "; ".join(lock.what_opens_it) or "the screening, answered and read"
            for line in occlusion_lines(session):
                yield Found(line.place, {"why": why, "opens": opens})


@check(
    "occlusion-company",
    Severity.STOP,
    looks_for="occlusion work alone that is open only with somebody there",
    message="open only with somebody there, and the athlete trains alone",
    mend="another person in the room for the whole of it, or other work",
    source="what a clinician allowed",
    final=True,
)
def occlusion_company(context: CheckContext) -> Iterator[Found]:
    if not context.order.athlete.trains_alone:
        return
    for session in context.occlusion.sessions:
        lock = context.occlusion.locks[session.place.at]
        if lock.open and lock.company:
            yield from (Found(line.place, {}) for line in occlusion_lines(session))


def _look_for(key: str, severity: Severity) -> Callable[[CheckContext], Iterator[Found]]:
    def look(context: CheckContext) -> Iterator[Found]:
        for place, issue in context.occlusion.issues:
            if issue.key == key and issue.severity is severity:
                yield Found(place, {"what": issue.what, "right": issue.right})

    return look


def _made(one: LimitCheck) -> Check:
    return check(
        one.name,
        one.severity,
        looks_for=one.looks_for,
        message="{what}",
        mend="{right}",
        source=one.source,
        thresholds=tuple(f"occlusion.{name}" for name in one.limits),
        final=one.severity is Severity.STOP,
    )(_look_for(one.key, one.severity))


CHECKS: tuple[Check, ...] = (
    occlusion_locked,
    occlusion_company,
    *(_made(one) for one in LIMIT_CHECKS),
)

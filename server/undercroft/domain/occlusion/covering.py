"""Which clearances answer a standing reason, and what is still missing where none does."""

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from datetime import date

from undercroft.domain.occlusion.answers import Answered, day
from undercroft.domain.occlusion.clearance import Aim, Clearance, Prescription
from undercroft.domain.occlusion.history import ScreeningFile, Standing
from undercroft.domain.occlusion.measures import age_on
from undercroft.domain.occlusion.question import Outcome
from undercroft.domain.occlusion.reason import IN_COMPANY, Reason, reason
from undercroft.domain.occlusion.screening import under_age
from undercroft.domain.occlusion.settings import LIMITS

COMPANY = "training with somebody there who can take the wraps off and call for help"


@dataclass(frozen=True, slots=True)
class Covered:
    """The clearances that a standing reason rests on; `closed` says what it still closes."""

    standing: Standing
    by: tuple[Clearance, ...]
    closed: Reason | None

    @property
    def company(self) -> bool:
        """Opened, but not for training alone."""
        return bool(self.by) and (
            self.standing.never_alone or not any(one.alone for one in self.by)
        )

    @property
    def prescribed(self) -> tuple[Prescription, ...]:
        """The clinicians' own prescriptions that it is open for; none where it is open for all."""
        if self.standing.reason.outcome is not Outcome.CLINICAL:
            return ()
        return tuple(one.prescription for one in self.by if one.prescription is not None)


def covered_on(on: date, file: ScreeningFile, standing: Collection[Standing]) -> list[Covered]:
    """Each reason that needs a clinician, with the clearances that cover it on that day.

    `standing` are the file's `standing_reasons`, which are the same for every day.
    """
    return [_cover(on, file, one) for one in (*standing, *_of_the_whole(on, file))]


def valid_clearances(on: date, file: ScreeningFile) -> Iterator[Clearance]:
    """Clearances that hold on that day; the coach's own word is none."""
    coaches = {one.by.strip().casefold() for one in file.signatures}
    for clearance in file.clearances:
        if clearance.holds_on(on) and clearance.by.strip().casefold() not in coaches:
            yield clearance


def _cover(on: date, file: ScreeningFile, standing: Standing) -> Covered:
    why = standing.reason
    by = tuple(
        one
        for one in valid_clearances(on, file)
        if why.key in one.covers and one.on >= standing.must_follow
    )
    if why.outcome is Outcome.CLINICAL and standing.active:
        by = tuple(one for one in by if one.prescription is not None)
    if not by:
        return Covered(standing, (), why)
    alone = tuple(one for one in by if one.alone)
    if file.alone and (standing.never_alone or not alone):
        words = f"{why.words}: cleared, {IN_COMPANY}"
        return Covered(standing, by, reason(why.key, why.outcome, words, COMPANY))
    return Covered(standing, alone if file.alone else by, None)


def _of_the_whole(on: date, file: ScreeningFile) -> Iterator[Standing]:
    """Reasons that no single answer gives: age on the day, and what the coach says is the aim."""
    latest = file.latest
    if latest is None:
        return
    for why in _age_reasons(on, file, latest):
        yield Standing(why, latest.on, latest.on, active=True)
    for signed in file.signatures:
        if signed.aim is Aim.RECOVERY:
            words = "recovery as the aim, as the coach says"
            why = reason("recovery-as-aim", Outcome.CLINICAL, words, passes=True)
            yield Standing(why, signed.on, signed.on, active=signed.of == latest.id)


def _age_reasons(on: date, file: ScreeningFile, latest: Answered) -> list[Reason]:
    """Of the coach's date of birth and the latest answer, the younger counts.

    An older answer that made the athlete under age, and was changed since, asks for a clinician.
    """
    births = [born for born in (file.born, day(latest, "born")) if born is not None]
    found = under_age(age_on(max(births), on), file.alone) if births else []
    if found:
        return found
    age = min((age_on(born, on) for born in file.births()), default=LIMITS.grown_up_years)
    if age >= LIMITS.grown_up_years:
        return []
    words = f"age {age} by an answer that was changed later"
    return [reason("under-age", Outcome.DOCTOR_FIRST, words)]

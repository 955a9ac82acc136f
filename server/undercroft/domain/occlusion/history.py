"""Everything that was ever answered or reported, and what of it still stands.

An answer that needs a clinician stays until a clearance is recorded: a later "no" does not take it
back. So all entries belong here, those that a correction replaced too; a slip is caught by the
phone, which shows what was answered before it is recorded.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import date

from undercroft.domain.occlusion.aftercare import AfterCheck, after_reasons
from undercroft.domain.occlusion.answers import Answered, day, said_yes
from undercroft.domain.occlusion.clearance import Clearance, Signature
from undercroft.domain.occlusion.question import FOR_A_CLINICIAN, Asked, Outcome
from undercroft.domain.occlusion.questions import BY_KEY
from undercroft.domain.occlusion.reason import Reason
from undercroft.domain.occlusion.screening import answer_reasons
from undercroft.domain.occlusion.stop_signs import Stopped, stop_reasons


@dataclass(frozen=True, slots=True)
class ScreeningFile:
    """What is on record for one athlete.

    answered      screenings and answers of the day, in the order in which they were taken in
    trains_alone  as the coach has it; the athlete's own answer can only make it stricter
    born          as the coach has it; of different dates the latest counts
    """

    answered: tuple[Answered, ...] = ()
    signatures: tuple[Signature, ...] = ()
    clearances: tuple[Clearance, ...] = ()
    stopped: tuple[Stopped, ...] = ()
    after: tuple[AfterCheck, ...] = ()
    trains_alone: bool = True
    born: date | None = None

    @property
    def latest(self) -> Answered | None:
        """The screening that counts for everything that may pass."""
        place = self._latest_place()
        return None if place is None else self.answered[place]

    @property
    def read(self) -> bool:
        """Has the coach signed the latest screening?"""
        latest = self.latest
        return latest is not None and any(one.of == latest.id for one in self.signatures)

    @property
    def out_of_date(self) -> tuple[str, ...]:
        """What was reported after the latest screening and asks for a new one."""
        place = self._latest_place()
        later = self.answered[place + 1 :] if place is not None else ()
        found = (
            BY_KEY[key].name
            for one in later
            for key in one.given
            if key in BY_KEY and BY_KEY[key].renews and said_yes(one, key)
        )
        return tuple(dict.fromkeys(found))

    @property
    def alone(self) -> bool:
        """Does the athlete train alone, as far as anybody says so?"""
        return self.trains_alone or (self.latest is not None and said_yes(self.latest, "alone"))

    @property
    def last_day(self) -> date:
        """The last day of which anything is on record."""
        told = [one.on for one in self.answered] + [one.on for one in self.after]
        told += [one.on for one in self.stopped] + [one.on for one in self.signatures]
        return max([*told, *(one.on for one in self.clearances)], default=date.min)

    def of_day(self, on: date) -> tuple[Answered, ...]:
        """Answers of that day to the questions of the day."""
        return tuple(a for a in self.answered if a.on == on and a.asked is Asked.TODAY)

    def births(self) -> tuple[date, ...]:
        """Every date of birth that was ever answered."""
        found = (day(one, "born") for one in self.answered if "born" in one.given)
        return tuple(one for one in found if one is not None)

    def _latest_place(self) -> int | None:
        for place in reversed(range(len(self.answered))):
            if self.answered[place].asked is Asked.SCREENING:
                return place
        return None


@dataclass(frozen=True, slots=True)
class Standing:
    """A reason for a clinician: when it was first and last given, and whether it is given now."""

    reason: Reason
    first_on: date
    last_on: date
    active: bool

    @property
    def must_follow(self) -> date:
        """The day from which on a clearance counts."""
        return self.last_on if self.reason.passes else self.first_on

    @property
    def never_alone(self) -> bool:
        """What has passed may be cleared for training alone; what lasts may not."""
        return self.reason.never_alone and (self.active or not self.reason.passes)


def standing_reasons(file: ScreeningFile) -> tuple[Standing, ...]:
    """Every reason ever given that needs a clinician, one for each key."""
    now = {} if file.latest is None else {r.key for r in _for_a_clinician(file.latest)}
    found: dict[str, Standing] = {}
    for on, reason in _told(file):
        before = found.get(reason.key)
        if before is None:
            found[reason.key] = Standing(reason, on, on, reason.key in now)
        else:
            found[reason.key] = replace(
                before,
                reason=reason,
                first_on=min(before.first_on, on),
                last_on=max(before.last_on, on),
            )
    return tuple(found.values())


def reasons_of_day(file: ScreeningFile, on: date) -> tuple[Reason, ...]:
    """Reasons for that one day: its answers, and a set that was ended by a sign."""
    told = [reason for one in file.of_day(on) for reason in answer_reasons(one)]
    told += [reason for one in file.stopped if one.on == on for reason in stop_reasons(one)]
    return tuple(reason for reason in told if reason.outcome is Outcome.NOT_TODAY)


def _told(file: ScreeningFile) -> Iterator[tuple[date, Reason]]:
    for answered in file.answered:
        yield from ((answered.on, reason) for reason in _for_a_clinician(answered))
    for stopped in file.stopped:
        yield from ((stopped.on, reason) for reason in _needing(stop_reasons(stopped)))
    for check in file.after:
        yield from ((check.on, reason) for reason in after_reasons(check))


def _for_a_clinician(answered: Answered) -> Iterator[Reason]:
    return _needing(answer_reasons(answered))


def _needing(reasons: Iterable[Reason]) -> Iterator[Reason]:
    return (reason for reason in reasons if reason.outcome in FOR_A_CLINICIAN)

"""What the athlete can lift, and what to lift next."""

from undercroft.domain.strength.evidence import (
    Evidence,
    Planned,
    PlannedSet,
    PlannedTest,
    SetDone,
    TestedMax,
    evidence_n,
)
from undercroft.domain.strength.load_velocity import (
    LoadVelocity,
    LoadVelocityLine,
    fit_line,
    maximum_on_line,
    maximum_through,
)
from undercroft.domain.strength.maximum import (
    EQUATIONS,
    Equation,
    Maximum,
    TooManyToTell,
    curve_of,
    one_rep_max,
)
from undercroft.domain.strength.notch_table import (
    PlannedSession,
    PlannedTurn,
    notch_tables,
    wishes_for_set,
    wishes_for_share,
)
from undercroft.domain.strength.notches import (
    NotchTable,
    Rise,
    WalkState,
    begin,
    carry,
    difference,
    walk,
)
from undercroft.domain.strength.power import SetPower, rep_power_w, set_power
from undercroft.domain.strength.reserve import (
    CHART,
    HANDBOOK,
    RepCurve,
    repetitions_at,
    rir_from_rpe,
    share,
    share_for,
)
from undercroft.domain.strength.scale import position
from undercroft.domain.strength.settings import (
    BASIS,
    DEFAULT,
    StrengthSettings,
    novice,
    trained,
)
from undercroft.domain.strength.smoother import TrackedSession, smooth, track
from undercroft.domain.strength.suggestion import Ladder, Reason, Suggestion, suggest
from undercroft.domain.strength.tracker import (
    EstimatedMax,
    Step,
    TrackerState,
    advance,
    estimate,
    start_from,
    start_from_guess,
    start_from_other_lift,
    take,
    take_session,
)
from undercroft.domain.strength.velocity import (
    Over,
    SpeedSet,
    VelocityMaximum,
    maximum_by_velocity,
    minimal_velocity,
    percent_of_maximum,
    speed_work_over,
    velocity_loss,
)

__all__ = [
    "BASIS", "CHART", "DEFAULT", "EQUATIONS", "HANDBOOK", "Equation", "EstimatedMax", "Evidence",
    "Ladder", "LoadVelocity", "LoadVelocityLine", "Maximum", "NotchTable", "Over", "Planned",
    "PlannedSession", "PlannedSet", "PlannedTest", "PlannedTurn", "Reason", "RepCurve", "Rise",
    "SetDone", "SetPower", "SpeedSet", "Step", "StrengthSettings", "Suggestion", "TestedMax",
    "TooManyToTell", "TrackedSession", "TrackerState", "VelocityMaximum", "WalkState", "advance",
    "begin", "carry", "curve_of", "difference", "estimate", "evidence_n", "fit_line",
    "maximum_by_velocity", "maximum_on_line", "maximum_through", "minimal_velocity",
    "notch_tables", "novice",
    "one_rep_max", "percent_of_maximum", "position", "rep_power_w", "repetitions_at",
    "rir_from_rpe", "set_power", "share", "share_for", "smooth", "speed_work_over", "start_from",
    "start_from_guess", "start_from_other_lift", "suggest", "take", "take_session", "track",
    "trained", "velocity_loss", "walk", "wishes_for_set", "wishes_for_share",
]  # fmt: skip

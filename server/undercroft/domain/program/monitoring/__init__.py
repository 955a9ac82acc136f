"""What the numbers of done work say: load, volume, speed, exposure, and what was left out."""

from undercroft.domain.program.monitoring.adherence import (
    Adherence,
    Fate,
    Today,
    adherence,
    fates,
)
from undercroft.domain.program.monitoring.day_done import day_done
from undercroft.domain.program.monitoring.done import DoneSet, done_sets
from undercroft.domain.program.monitoring.hard_sets import (
    WeekOfSets,
    counts_for,
    hard_sets,
    is_hard,
)
from undercroft.domain.program.monitoring.planned import plan_of_sheet, planned_kg
from undercroft.domain.program.monitoring.session_load import (
    SD_NAME,
    Rated,
    WeekLoad,
    daily_loads,
    session_load,
    week_load,
    week_loads,
)
from undercroft.domain.program.monitoring.smoothed import (
    DISPUTED,
    REMEMBERED,
    SmoothedLoad,
    smoothed_loads,
    weighted,
)
from undercroft.domain.program.monitoring.speed_work import Course, SpeedWork, course_of, speed_work
from undercroft.domain.program.monitoring.tonnage import Tonnage, tonnage

__all__ = [
    "DISPUTED", "REMEMBERED", "SD_NAME", "Adherence", "Course", "DoneSet", "Fate", "Rated",
    "SmoothedLoad", "SpeedWork", "Today", "Tonnage", "WeekLoad", "WeekOfSets", "adherence",
    "counts_for", "course_of", "daily_loads", "day_done", "done_sets", "fates", "hard_sets",
    "is_hard", "plan_of_sheet", "planned_kg", "session_load", "smoothed_loads", "speed_work",
    "tonnage", "week_load", "week_loads", "weighted",
]  # fmt: skip

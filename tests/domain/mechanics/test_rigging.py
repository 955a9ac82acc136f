"""A coach's rig on one kit, and chains."""

import pytest
from tests.domain.mechanics.cellars import CHAINED, THREE_PAIRS, about, found
from tests.domain.mechanics.things import PULL

from undercroft.domain.errors import LoadError
from undercroft.domain.mechanics.band import laws_of
from undercroft.domain.mechanics.drawing import with_still
from undercroft.domain.mechanics.find import Search
from undercroft.domain.mechanics.path import Path
from undercroft.domain.mechanics.remark import About
from undercroft.domain.mechanics.rigging import rig_up, search_for
from undercroft.domain.mechanics.target import still_kg
from undercroft.domain.program.rig import Part, Rig, Route, ShareBase
from undercroft.domain.program.wish import Point


def test_a_coachs_rig_becomes_plates_and_a_curve() -> None:
    """A quarter of 120 kg at lockout from bands: they give V there, bar and plates the rest."""
    rig = Rig(Part.BANDS, 25.0, route=Route.INVERTED_V)
    choice = rig_up(THREE_PAIRS, laws_of(THREE_PAIRS), rig, PULL, 120.0)
    plates = still_kg(120.0, Point.LOCKOUT, choice.curve, least_kg=20.0)
    drawn = with_still(choice, plates)
    assert plates + choice.kg == pytest.approx(120.0)
    assert drawn.end_kg == pytest.approx(120.0)
    assert drawn.start_kg < drawn.mean_kg < drawn.end_kg
    assert abs(choice.kg - 30.0) < 3.0


def test_a_share_of_the_maximum_is_searched_for_as_kilograms() -> None:
    search = search_for(Rig(Part.BANDS, 20.0, ShareBase.MAXIMUM), 60.0, maximum_kg=150.0)
    assert (search.kg, search.load_kg, search.per_side) == (30.0, 60.0, (1,))


def test_named_bands_without_a_share_give_what_they_give() -> None:
    best = rig_up(
        THREE_PAIRS, laws_of(THREE_PAIRS),
        Rig(Part.BANDS, things=("wide-left", "wide-right"), route=Route.INVERTED_V), PULL, 100.0,
    )  # fmt: skip
    assert best.off_kg == 0
    assert About.OFF_SHARE not in about(best)


def test_a_rig_with_neither_share_nor_things_is_refused() -> None:
    with pytest.raises(LoadError, match="rig of bands: is without either; should be a share in %"):
        search_for(Rig(Part.BANDS), 100.0)


def test_a_rig_of_which_the_kit_can_make_nothing_says_why() -> None:
    rig = Rig(Part.BANDS, 25.0, route=Route.SINGLE)
    with pytest.raises(LoadError, match=r"nothing that the cellar can hang \(thin-left, single"):
        rig_up(THREE_PAIRS, laws_of(THREE_PAIRS), rig, PULL, 120.0)


def test_chains_are_found_by_share_straight_or_doubled() -> None:
    """Two heavy chains doubled give 16.82 kg at lockout, straight 8.41."""
    doubled = found(CHAINED, Search(17.0, 100.0, part=Part.CHAINS)).choices[0]
    straight = found(CHAINED, Search(8.4, 100.0, part=Part.CHAINS)).choices[0]
    assert doubled.kg == pytest.approx(16.82, abs=0.01)
    assert doubled.words == "1 × heavy chain on each side, doubled, both ends hung"
    assert straight.kg == pytest.approx(8.41, abs=0.01)


def test_chains_that_hang_clear_all_the_way_come_last_and_say_so() -> None:
    squat = Path(0.82, 0.6)
    choices = found(CHAINED, Search(18.0, 100.0, part=Part.CHAINS), squat).choices
    still = [About.CHANGES_NOTHING in about(choice) for choice in choices]
    assert any(still)
    assert still == sorted(still)

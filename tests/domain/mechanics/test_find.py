"""Finding the bands or chains for a share, among what stands in a cellar."""

from dataclasses import replace
from itertools import combinations, permutations

import numpy as np
import pytest
from tests.domain.mechanics.cellars import CHAINED, THREE_PAIRS, about, found, keys, pair
from tests.domain.mechanics.things import (
    BEAM,
    ENDS,
    PEGS,
    PULL,
    band,
    cellar,
    kgf,
    true_band,
)

from undercroft.domain.errors import LoadError
from undercroft.domain.kit import Anchor, Kit
from undercroft.domain.mechanics.band import laws_of
from undercroft.domain.mechanics.find import Search
from undercroft.domain.mechanics.path import Path
from undercroft.domain.mechanics.remark import About
from undercroft.domain.mechanics.rig import HungBand, flat_length_m, pull
from undercroft.domain.program.finding import Severity
from undercroft.domain.program.methods import Side
from undercroft.domain.program.rig import Part, Route
from undercroft.domain.program.wish import Point


def test_the_pair_nearest_to_the_share_at_lockout_comes_first() -> None:
    """An inverted V of one 29 mm band gives 17.99 kgf at lockout, so a pair (the right one 12 %
    stronger) gives 38.1; thinner pairs give less by width."""
    best = found(THREE_PAIRS, Search(38.0, 120.0, routes=(Route.INVERTED_V,))).choices[0]
    assert keys(best) == {"wide-left", "wide-right"}
    assert best.kg == pytest.approx(17.99 * 2.12, abs=0.06)
    assert best.off_kg == pytest.approx(best.kg - 38.0)


def test_every_way_that_the_kit_has_is_found_and_ranked() -> None:
    """Brute force over all bands that can make a side each, on the pegs."""
    kit = cellar(*pair(13, "thin"), *pair(22, "middle"))
    search = Search(20.0, 100.0, routes=(Route.INVERTED_V,))
    laws = laws_of(kit)

    def kg(names: tuple[str, ...]) -> float:
        hung = [HungBand(laws[name], PEGS, Route.INVERTED_V) for name in names]
        return sum(kgf(float(pull(one, PULL, ENDS).along_n[1])) for one in hung)

    sets = [("thin-left", "thin-right"), ("middle-left", "middle-right")]
    sets.append(sets[0] + sets[1])
    by_hand = sorted(sets, key=lambda names: round(abs(kg(names) - 20.0)))
    choices = found(kit, search).choices
    assert [keys(choice) for choice in choices] == [set(names) for names in by_hand]
    assert [choice.kg for choice in choices] == pytest.approx([kg(names) for names in by_hand])


def test_ranks_by_distance_then_evenness_then_fewest_bands() -> None:
    choices = found(THREE_PAIRS, Search(25.0, 100.0)).choices
    off = [round(abs(choice.off_kg)) for choice in choices]
    assert len(choices) > 6
    assert off == sorted(off)


def test_of_two_pairs_with_the_same_share_the_even_one_is_hung() -> None:
    even = (true_band(29, key="even-a"), true_band(29, key="even-b"))
    uneven = (
        replace(true_band(29, key="odd-a", k=0.9), width_mm=30.0),
        replace(true_band(29, key="odd-b", k=1.1), width_mm=30.0),
    )
    kit = cellar(*uneven, *even)
    best = found(kit, Search(36.0, 100.0, routes=(Route.INVERTED_V,), per_side=(1,))).choices[0]
    assert keys(best) == {"even-a", "even-b"}


def test_of_two_ways_alike_the_one_without_sideways_pull_is_hung() -> None:
    """Doubled round one peg of the platform a band gives what the inverted V gives, and pulls."""
    choices = found(cellar(*pair(29, "wide")), Search(36.0, 100.0)).choices
    assert [choice.hung[0].route for choice in choices if isinstance(choice.hung, tuple)] == [
        Route.INVERTED_V, Route.DOUBLED,
    ]  # fmt: skip
    assert About.SIDEWAYS in about(choices[1])
    assert About.SIDEWAYS not in about(choices[0])


def test_two_bands_a_side_are_turned_so_that_the_sides_come_out_even() -> None:
    bands = [true_band(22, key=f"b{n}", k=k) for n, k in enumerate((1.0, 1.1, 1.2, 1.35))]
    kit = cellar(*bands)
    best = found(kit, Search(50.0, 120.0, routes=(Route.INVERTED_V,), per_side=(2,))).choices[0]
    assert isinstance(best.hung, tuple)
    strength = {one.key: k for one, k in zip(bands, (1.0, 1.1, 1.2, 1.35), strict=True)}
    left = sum(strength[one.law.key] for one in best.hung if one.side is Side.LEFT)
    splits = [abs(4.65 - 2 * (strength[a] + strength[b])) for a, b in combinations(strength, 2)]
    assert abs(4.65 - 2 * left) == pytest.approx(min(splits))


def test_of_a_pair_the_band_written_down_first_goes_left() -> None:
    """So that those marked L and R hang where their marks say, whichever is the stronger."""
    for right in (0.9, 1.1):
        kit = cellar(*pair(29, "wide", right))
        best = found(kit, Search(36.0, 100.0, routes=(Route.INVERTED_V,))).choices[0]
        assert isinstance(best.hung, tuple)
        assert {one.side: one.law.key for one in best.hung} == {
            Side.LEFT: "wide-left",
            Side.RIGHT: "wide-right",
        }


def test_left_and_right_are_told_apart_above_5_per_cent_of_the_load() -> None:
    """Left 18.0 and right 20.2 kg at lockout: 2.2 kg, 5.4 % of 40 kg but 2.2 % of 100 kg."""
    kit = cellar(*pair(29, "wide", 1.12))
    light, heavy = (
        found(kit, Search(36.0, load, routes=(Route.INVERTED_V,))).choices[0]
        for load in (40.0, 100.0)
    )
    words = [remark.words for remark in light.remarks if remark.about is About.UNEVEN]
    assert words == ["the pair differs: left 18.0 kg and right 20.1 kg"]
    assert light.sides_kg == pytest.approx((17.99, 1.12 * 17.99), abs=0.03)
    assert About.UNEVEN not in about(heavy)


def test_a_band_slack_at_the_start_is_told() -> None:
    """Pegs 0.45 m out: a 1.04 m loop over the bar at 0.225 m is 0.93 times its length."""
    kit = cellar(*pair(29, "wide"), anchors=(Anchor("near", "near pegs", 0.05, 0.45),))
    best = found(kit, Search(34.0, 100.0, routes=(Route.INVERTED_V,))).choices[0]
    slack = next(one for one in best.remarks if one.about is About.SLACK_AT_START)
    assert slack.severity is Severity.WARN
    assert slack.words == "slack at the start: wide-left, wide-right"
    assert best.curve.parts[0].force(np.zeros(1))[0] == 0


def test_bands_stretched_a_little_beyond_their_readings_are_told() -> None:
    """At lockout the inverted V takes 1.74 m; readings up to 1.70 reach 1.785 m."""
    kit = cellar(*(band(29, 1.2, 1.4, 1.55, 1.70, key=key) for key in ("l", "r")))
    best = found(kit, Search(36.0, 100.0, routes=(Route.INVERTED_V,))).choices[0]
    words = [one.words for one in best.remarks if one.about is About.BEYOND_READINGS]
    assert words[0] == "l: stretched to 1.74 m, read only to 1.70 m"


def test_bands_stretched_far_beyond_their_readings_are_refused_with_the_reason() -> None:
    kit = cellar(*(band(29, 1.2, 1.3, 1.4, 1.5, key=key) for key in ("l", "r")))
    none = found(kit, Search(36.0, 100.0, routes=(Route.INVERTED_V,)))
    assert none.choices == ()
    assert none.refused[0].startswith("l, inverted-v, pegs: would be stretched to 1.74 m; 1.58 m")


def test_no_choice_is_stretched_beyond_its_reach() -> None:
    kit = cellar(*pair(29, "wide"), anchors=(PEGS, Anchor("low", "low pegs", 0.0, 1.2), BEAM))
    for choice in found(kit, Search(36.0, 100.0)).choices:
        assert isinstance(choice.hung, tuple)
        for one in choice.hung:
            assert flat_length_m(one, PULL, ENDS).max() <= one.law.most_m


def test_a_band_that_nobody_measured_says_so() -> None:
    best = found(cellar(band(29, key="l"), band(29, key="r")), Search(40.0, 100.0)).choices[0]
    words = [one.words for one in best.remarks if one.about is About.ESTIMATED]
    assert words[0] == "l: estimated from its size, measure this band"


def test_a_single_band_from_a_beam_resists_a_pulldown() -> None:
    kit = cellar(*pair(29, "wide"), anchors=(BEAM,))
    best = found(kit, Search(8.0, 50.0), Path(1.5, 0.6, rises=False)).choices[0]
    assert isinstance(best.hung, tuple)
    assert [one.side for one in best.hung] == [None]
    assert best.kg > 0


def test_bands_from_a_beam_help_a_press_and_are_not_taken_to_resist_it() -> None:
    kit = cellar(*pair(29, "wide"), anchors=(BEAM,))
    press = Path(1.0, 0.4)
    none = found(kit, Search(8.0, 50.0), press)
    assert none.choices == ()
    assert "would help where it should resist" in none.refused[0]
    best = found(kit, Search(8.0, 50.0, Point.START, assists=True), press).choices[0]
    assert best.kg < 0
    assert best.off_kg == pytest.approx(best.kg + 8.0)


def test_named_bands_all_hang_and_named_anchors_are_the_only_ones() -> None:
    kit = replace(THREE_PAIRS, anchors=(Anchor("far", "far pegs", 0.05, 0.65), PEGS))
    search = Search(38.0, 120.0, things=("thin-left", "thin-right", "far"))
    choices = found(kit, search).choices
    assert choices
    for choice in choices:
        assert keys(choice) == {"thin-left", "thin-right"}
        assert choice.needs[-1] == "far pegs"


def test_the_order_in_which_bands_stand_in_the_kit_does_not_matter() -> None:
    search = Search(30.0, 100.0, routes=(Route.INVERTED_V,))
    first = [keys(choice) for choice in found(THREE_PAIRS, search).choices]
    for order in list(permutations(THREE_PAIRS.bands))[::97]:
        again = found(replace(THREE_PAIRS, bands=order), search).choices
        assert [keys(choice) for choice in again] == first


def test_how_to_hang_it_is_said_in_one_line() -> None:
    best = found(cellar(*pair(29, "wide")), Search(36.0, 100.0)).choices[0]
    assert best.words == (
        "Left “wide-left”; right “wide-right”: from the front peg over the sleeve to the back peg,"
        " pegs"
    )
    assert best.needs == ("1 × wide-left (band)", "1 × wide-right (band)", "pegs")


def test_a_share_that_the_kit_cannot_meet_is_said() -> None:
    best = found(cellar(*pair(13, "thin")), Search(60.0, 150.0)).choices[0]
    words = [one.words for one in best.remarks if one.about is About.OFF_SHARE]
    assert words == ["16.1 kg at lockout, wished were 60.0: the nearest that this kit makes"]


def test_a_guessed_range_is_said() -> None:
    guessed = replace(PULL, measured=False)
    best = found(cellar(*pair(29, "wide")), Search(36.0, 100.0), guessed).choices[0]
    assert About.RANGE_GUESSED in about(best)


@pytest.mark.parametrize(
    ("kit", "search", "message"),
    [
        (THREE_PAIRS, Search(36, 100, things=("post",)),
         r"thing of the rig in the cellar: is 'post'; should be one of thin-left, .*, pegs"),
        (Kit("k", "the shed"), Search(36, 100), "bands of the shed: is none; should be one"),
        (cellar(*pair(29, "w"), anchors=()), Search(36, 100), "anchors of the cellar: is none"),
        (Kit("k", "the shed"), Search(9, 100, part=Part.CHAINS), "chains of the shed: is none"),
        (CHAINED, Search(9, 100, part=Part.CHAINS, assists=True), "rig: is chains that help"),
        (THREE_PAIRS, Search(36, 100, Point.BAR),
         "point of the share: is the bar; should be start, mean or lockout"),
        (THREE_PAIRS, Search(-5, 100), "what the rig should give in kg: is -5"),
        (THREE_PAIRS, Search(5, float("nan")), "load of the day in kg: is nan"),
        (THREE_PAIRS, Search(5, 100, per_side=(0,)), "pieces a side: is 0"),
    ],
)  # fmt: skip
def test_a_search_that_cannot_be_is_refused(kit: Kit, search: Search, message: str) -> None:
    with pytest.raises(LoadError, match=message):
        found(kit, search)


def test_more_ways_than_can_be_looked_through_are_refused() -> None:
    bands = [true_band(10.0 + n // 2, key=f"b{n}") for n in range(60)]
    kit = cellar(*bands)
    search = Search(60.0, 200.0, routes=(Route.INVERTED_V,), per_side=(4,))
    with pytest.raises(LoadError, match="ways of hanging these bands: is over 20000"):
        found(kit, search)

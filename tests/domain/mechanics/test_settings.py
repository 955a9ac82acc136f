"""The settings table: values as designed, each with its reason."""

from dataclasses import fields

import pytest

from undercroft.domain.mechanics.settings import BASIS, DEFAULT, MechanicsSettings


def test_every_setting_says_why() -> None:
    assert set(BASIS) == {one.name for one in fields(MechanicsSettings)}
    assert all(len(why) > 30 for why in BASIS.values())


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("estimate_scale", 1.3), ("estimate_doubt", 0.20), ("one_reading_doubt", 0.08),
        ("few_readings_doubt", 0.05), ("beyond_longest", 1.05), ("most_stretch", 2.5),
        ("uneven_share", 0.05), ("plate_face_m", 0.655 + 0.030), ("warn_margin", 2.0),
        ("stop_margin", 1.33), ("chain_per_square", 0.0225),
    ],
)  # fmt: skip
def test_values_as_designed(name: str, value: float) -> None:
    assert getattr(DEFAULT, name) == pytest.approx(value)

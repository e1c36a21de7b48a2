"""The least squares in log R, held against scipy; the layouts, held against counting."""

import numpy as np
import pytest
from scipy.optimize import least_squares, minimize

from planner.proving.identifying.fitting import (
    ALIKE,
    DRIVER,
    RETURN,
    Figure,
    fit,
    spread_ohm,
)
from planner.proving.identifying.layouts import Piece, TooManyError, layouts
from planner.proving.identifying.sample import Join
from planner.proving.reading import Meter

METER = Meter(percent=2, offset_ohm=0.5)
COMMON = (Piece("common", ((2,), (0,), (1,))),)
FIGURES = [Figure(0, 1, 65.0), Figure(0, 2, 33.5), Figure(1, 2, 32.8)]


def misses(logs):
    """What the fit makes small, written down once more from its description."""
    left, right, wire, common = logs
    seen = np.array([each.ohm for each in FIGURES])
    sums = np.array([left, right]), wire
    model = np.array(
        [
            np.exp(left) + np.exp(right),
            np.exp(left) + np.exp(sums[1]),
            np.exp(right) + np.exp(sums[1]),
        ]
    )
    return np.array(
        [
            *((np.log(seen) - np.log(model)) / (spread_ohm(METER, seen) / seen)),
            (left - common) / ALIKE,
            (right - common) / ALIKE,
            (wire - np.log(RETURN[0])) / RETURN[1],
            (common - np.log(DRIVER[0])) / DRIVER[1],
        ]
    )


def test_the_fit_is_the_least_squares_of_scipy():
    own = fit([COMMON], FIGURES, METER)
    other = least_squares(misses, np.log([30, 30, 0.3, 30]), xtol=1e-14, ftol=1e-14, gtol=1e-14)
    assert own.logs[0] == pytest.approx(other.x, abs=1e-5)
    assert own.covariance[0] == pytest.approx(np.linalg.inv(other.jac.T @ other.jac), abs=1e-4)


def test_no_start_of_another_minimiser_finds_a_lower_cost():
    own = fit([COMMON], FIGURES, METER)
    best = (misses(own.logs[0]) ** 2).sum()
    rng = np.random.default_rng(3)
    for _ in range(6):
        start = np.log(rng.uniform([5, 5, 0.05, 5], [300, 300, 5, 300]))
        found = minimize(lambda logs: (misses(logs) ** 2).sum(), start, method="Nelder-Mead")
        assert found.fun >= best - 1e-6


def test_layouts_of_two_contacts_are_four():
    """Apart, joined, a driver, a microphone."""
    assert len(layouts(2, {})) == 4


@pytest.mark.parametrize(("contacts", "count"), [(1, 1), (2, 3), (3, 12), (4, 60), (5, 358)])
def test_groupings_are_counted_as_published(contacts, count):
    """Sets of sets: 1, 3, 12, 60, 358 (OEIS A000258)."""
    plain = {
        tuple(sorted(tuple(sorted(piece.nets)) for piece in layout))
        for layout in layouts(contacts, {})
    }
    assert len(plain) == count


def test_every_layout_obeys_what_was_read():
    joins = {(0, 1): Join.SHORT, (1, 2): Join.PATH, (2, 3): Join.OPEN, (0, 4): Join.OPEN}
    found = layouts(5, joins)
    assert found
    for layout in found:
        place = {
            contact: (at, net)
            for at, piece in enumerate(layout)
            for net in piece.nets
            for contact in net
        }
        assert place[0] == place[1]
        assert place[1][0] == place[2][0]
        assert place[1] != place[2]
        assert place[2][0] != place[3][0]
        assert place[0][0] != place[4][0]


def test_no_layout_is_found_twice():
    found = layouts(5, {})
    assert len(set(found)) == len(found)


def test_too_many_are_refused_soon():
    with pytest.raises(TooManyError):
        layouts(20, {})

"""Resistor networks: figures of the literature, exact fractions, laws that must hold."""

import random
from fractions import Fraction
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.electrical.nodal import Mesh

# Klein and Randic, J. Math. Chem. 12 (1993) 81-95, unit resistors: edges, pair, resistance.
CUBE = [(a, a ^ bit) for a in range(8) for bit in (1, 2, 4) if a < a ^ bit]
PUBLISHED = [
    ([(0, 1), (1, 2), (2, 0)], (0, 1), 2 / 3),
    ([(0, 1), (1, 2), (2, 3), (3, 0)], (0, 1), 3 / 4),
    ([(0, 1), (1, 2), (2, 3), (3, 0)], (0, 2), 1),
    (list(combinations(range(4), 2)), (0, 1), 1 / 2),
    (CUBE, (0, 1), 7 / 12),
    (CUBE, (0, 3), 3 / 4),
    (CUBE, (0, 7), 5 / 6),
]


def units(edges):
    return [(one, other, 1.0) for one, other in edges]


@pytest.mark.parametrize(("edges", "pair", "expected"), PUBLISHED)
def test_published_resistance_distances(edges, pair, expected):
    assert Mesh((), units(edges)).ohm(*pair) == pytest.approx(expected, rel=1e-12)


@pytest.mark.parametrize("edges", [case[0] for case in PUBLISHED])
def test_foster(edges):
    """Foster 1949: over all edges, resistance distance over resistance sums to n - 1."""
    mesh = Mesh((), units(edges))
    nodes = {node for edge in edges for node in edge}
    assert sum(mesh.ohm(*edge) for edge in edges) == pytest.approx(len(nodes) - 1)


def test_joined_apart_and_parallel():
    mesh = Mesh([("a", "b")], [("b", "c", 3.0), ("a", "c", 6.0), ("d", "e", 1.0)])
    assert mesh.ohm("a", "b") == 0
    assert mesh.ohm("a", "c") == pytest.approx(2)
    assert mesh.ohm("a", "d") == float("inf")
    assert mesh.ohm("x", "x") == 0


def test_a_divider():
    mesh = Mesh((), [("top", "middle", 1.0), ("middle", "ground", 3.0), ("far", "away", 1.0)])
    volts = mesh.voltages({"top": 4.0, "ground": 0.0})
    assert volts == pytest.approx({"top": 4.0, "middle": 3.0, "ground": 0.0})


def test_voltages_with_nothing_between():
    assert Mesh((), []).voltages({"top": 1.0, "ground": 0.0}) == {"top": 1.0, "ground": 0.0}


def test_transfer_through_a_shared_leg():
    """One unit through a common leg of 5 shows as 5 over the other way, whatever the others are."""
    mesh = Mesh((), [("s", "y", 5.0), ("y", "l", 2.0), ("y", "r", 7.0)])
    assert mesh.transfer_ohm(("s", "l"), ("s", "r")) == pytest.approx(5)


# -- exact --------------------------------------------------------------------------------


def det(matrix):
    """Return a determinant by exact elimination of fractions."""
    rows, sign = [list(row) for row in matrix], Fraction(1)
    for at in range(len(rows)):
        pivot = next((row for row in range(at, len(rows)) if rows[row][at]), None)
        if pivot is None:
            return Fraction(0)
        if pivot != at:
            rows[at], rows[pivot], sign = rows[pivot], rows[at], -sign
        for row in range(at + 1, len(rows)):
            share = rows[row][at] / rows[at][at]
            rows[row] = [mine - share * top for mine, top in zip(rows[row], rows[at], strict=True)]
    for at, row in enumerate(rows):
        sign *= row[at]
    return sign


def exact_ohm(count, resistors, one, other):
    """Return the resistance by counting forests (Kirchhoff): two minors of the Laplacian."""
    laplacian = [[Fraction(0)] * count for _ in range(count)]
    for a, b, ohm in resistors:
        laplacian[a][a] += Fraction(1, ohm)
        laplacian[b][b] += Fraction(1, ohm)
        laplacian[a][b] -= Fraction(1, ohm)
        laplacian[b][a] -= Fraction(1, ohm)

    def minor(*left_out):
        kept = [at for at in range(count) if at not in left_out]
        return det([[laplacian[a][b] for b in kept] for a in kept])

    return minor(one, other) / minor(one)


def random_resistors(dice, count):
    tree = [(node, dice.randrange(node), dice.randint(1, 50)) for node in range(1, count)]
    more = [(*dice.sample(range(count), 2), dice.randint(1, 50)) for _ in range(dice.randint(0, 8))]
    return tree + more


def test_against_exact_fractions():
    wrong = 0
    for seed in range(300):
        dice = random.Random(seed)
        count = dice.randint(2, 9)
        resistors = random_resistors(dice, count)
        one, other = dice.sample(range(count), 2)
        found = Mesh((), [(a, b, float(ohm)) for a, b, ohm in resistors]).ohm(one, other)
        wrong += found != pytest.approx(float(exact_ohm(count, resistors, one, other)), rel=1e-9)
    print(f"nodal analysis against exact fractions: {wrong} of 300 differ")  # noqa: T201 - the count is the proof
    assert wrong == 0


# -- laws ----------------------------------------------------------------------------------

seeds = st.integers(0, 10_000)


def drawn(seed):
    dice = random.Random(seed)
    count = dice.randint(3, 9)
    return dice, count, [(a, b, float(ohm)) for a, b, ohm in random_resistors(dice, count)]


@given(seeds)
def test_one_more_resistor_never_raises_it(seed):
    """Rayleigh's monotonicity law."""
    dice, count, resistors = drawn(seed)
    pair = dice.sample(range(count), 2)
    more = [*resistors, (*dice.sample(range(count), 2), 2.0)]
    assert Mesh((), more).ohm(*pair) <= Mesh((), resistors).ohm(*pair) * (1 + 1e-9)


@given(seeds)
def test_it_is_a_distance(seed):
    _, count, resistors = drawn(seed)
    mesh = Mesh((), resistors)
    for a, b, c in combinations(range(count), 3):
        assert mesh.ohm(a, c) <= mesh.ohm(a, b) + mesh.ohm(b, c) + 1e-9
        assert mesh.ohm(a, b) == pytest.approx(mesh.ohm(b, a))


@given(seeds)
def test_relabelled_it_is_the_same(seed):
    dice, count, resistors = drawn(seed)
    names = dice.sample("abcdefghij", count)
    renamed = [(names[a], names[b], ohm) for a, b, ohm in reversed(resistors)]
    one, other = dice.sample(range(count), 2)
    expected = Mesh((), resistors).ohm(one, other)
    assert Mesh((), renamed).ohm(names[other], names[one]) == pytest.approx(expected)

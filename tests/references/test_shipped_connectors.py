"""Every shipped connector is whole: readable, room for each terminal, a basis for each figure."""

from itertools import combinations, pairwise
from typing import get_args

import pytest

from planner.data import data_dir
from planner.model.connector import FigureGroup
from tests.references.outlines import body, clear_mm, disc, inside_shell, overlap

FILES = sorted(data_dir("connector_defs").rglob("*.toml"))
each_connector = pytest.mark.parametrize("record_id", [path.stem for path in FILES])

POLES = {  # the list that the collection must cover at least: connector and its poles
    "jack-2.5-two-pole": 2,
    "jack-2.5-four-pole": 4,
    "jack-3.5-two-pole": 2,
    "jack-3.5-two-pole-slim": 2,
    "jack-3.5-three-pole": 3,
    "jack-3.5-four-pole": 4,
    "jack-4.4-five-pole": 5,
    "jack-6.35-two-pole": 2,
    "jack-6.35-three-pole": 3,
    **{f"xlr-{n}-{gender}": n for n in (3, 4, 5) for gender in ("male", "female")},
    "mini-xlr-3-female": 3,
    "mini-xlr-4-female": 4,
    "din-5-180-male": 5,
    "din-3-male": 3,
    "phono-male": 2,
    **{f"dsub-{n}-{gender}": n for n in (9, 15, 25, 37) for gender in ("male", "female")},
    "earphone-two-pin-0.78": 2,
    "earphone-micro-coaxial": 2,
}


def test_the_shipped_collection_has_no_problem(shipped):
    assert shipped.problems == ()


def test_it_covers_the_list(shipped):
    assert {record.id: record.poles for record in shipped.connectors()} == POLES


def test_files_lie_in_their_family(shipped):
    folders = {path.stem: path.parent.name for path in FILES}
    assert folders == {record.id: record.family for record in shipped.connectors()}


def test_titles_tell_connectors_apart(shipped):
    titles = [record.title for record in shipped.connectors()]
    assert len(titles) == len(set(titles))


def test_some_are_drawn_from_the_mating_side(shipped):
    drawn = {record.id for record in shipped.connectors() if record.drawn_from == "mating"}
    assert drawn == {"din-5-180-male", "dsub-25-male"}


@each_connector
def test_terminals_stand_clear_of_each_other(shipped, record_id):
    bodies = [body(contact.terminal) for contact in shipped.connector(record_id).contacts]
    assert not any(overlap(one, other) for one, other in combinations(bodies, 2))
    assert min(clear_mm(one, other) for one, other in combinations(bodies, 2)) >= 0.3


@each_connector
def test_terminals_lie_inside_the_shell(shipped, record_id):
    connector = shipped.connector(record_id)
    outside = [
        (contact.id, point)
        for contact in connector.contacts
        for point in body(contact.terminal).outline
        if not inside_shell(connector, point)
    ]
    assert outside == []


@each_connector
def test_shell_goes_into_the_barrel_and_the_clamped_jacket_through_it(shipped, record_id):
    connector = shipped.connector(record_id)
    across = max(connector.shell.width_mm, connector.shell.bore_mm)
    assert across < connector.barrel.outside_mm
    assert connector.clamp.max_mm <= connector.barrel.bore_mm < connector.barrel.outside_mm


def test_a_d_is_given_by_its_sides_and_no_bore(shipped):
    shells = {it.id: it.shell for it in shipped.connectors() if it.shell.shape == "d"}
    assert set(shells) == {it for it in POLES if it.startswith("dsub")}
    assert {shell.bore_mm for shell in shells.values()} == {0}


@each_connector
def test_each_group_of_figures_says_once_what_it_rests_on(shipped, record_id):
    basis = shipped.connector(record_id).basis
    assert sorted(entry.figures for entry in basis) == sorted(get_args(FigureGroup))
    assert all(entry.reference for entry in basis)


@each_connector
def test_something_is_always_to_be_measured(shipped, record_id):
    # No public source gives cups, clamp and barrel of any of them.
    assert {"terminals", "clamp"} <= set(shipped.connector(record_id).to_measure())


# How many cores the return, ground or sleeve of each takes. Common practice, no source: a sleeve
# lug takes a return and a shield, a wide one the returns of two channels too.
RETURN_TAKES = {
    **dict.fromkeys(("jack-2.5-two-pole", "jack-2.5-four-pole", "jack-3.5-two-pole"), ("S", 2)),
    **dict.fromkeys(("jack-3.5-two-pole-slim", "jack-3.5-four-pole"), ("S", 2)),
    **dict.fromkeys(("jack-6.35-two-pole", "jack-6.35-three-pole"), ("S", 3)),
    "jack-4.4-five-pole": ("S", 2),
    "jack-3.5-three-pole": ("S", 3),
    "phono-male": ("2", 2),
    **{f"xlr-{n}-{gender}": ("1", 2) for n in (3, 4, 5) for gender in ("male", "female")},
    "mini-xlr-3-female": ("1", 2),
    "mini-xlr-4-female": ("1", 1),
    "din-5-180-male": ("2", 2),
    "din-3-male": ("2", 2),
    **{f"dsub-{n}-{gender}": ("1", 1) for n in (9, 15, 25, 37) for gender in ("male", "female")},
    "earphone-two-pin-0.78": ("2", 1),
    "earphone-micro-coaxial": ("2", 2),
}


@each_connector
def test_the_return_takes_what_practice_puts_there(shipped, record_id):
    contact, takes = RETURN_TAKES[record_id]
    assert shipped.connector(record_id).by_id[contact].terminal.takes == takes


def test_line_plugs_take_both_cores_of_a_star_quad_in_a_cup(shipped):
    """Two cores of 0.18 mm2 need 1.1 mm over both (geometry); the cups have 2.3 mm (memory)."""
    across = 2 * max(core.conductor_mm for core in shipped.cable("star-quad").cores)
    for gender in ("male", "female"):
        terminals = [it.terminal for it in shipped.connector(f"xlr-3-{gender}").contacts]
        assert [it.takes for it in terminals] == [2, 2, 2]
        assert min(it.bore_mm for it in terminals) > across


def test_jack_contacts_run_from_the_nose_to_the_sleeve(shipped):
    orders = {
        2: ["T", "S"],
        3: ["T", "R", "S"],
        4: ["T", "R1", "R2", "S"],
        5: ["T", "R1", "R2", "R3", "S"],
    }
    for record in shipped.connectors():
        if record.family == "jack":
            assert [contact.id for contact in record.contacts] == orders[record.poles]
            assert record.mating == "concentric"


def test_the_five_pole_stands_at_two_heights_and_a_long_sleeve(shipped):
    heights = {c.id: c.terminal.z_mm for c in shipped.connector("jack-4.4-five-pole").contacts}
    assert heights == {"T": 0.0, "R1": 2.0, "R2": 0.0, "R3": 2.0, "S": 4.0}


def test_other_contacts_are_numbered_from_one(shipped):
    for record in shipped.connectors():
        if record.family != "jack":
            numbers = sorted(int(contact.id) for contact in record.contacts)
            assert numbers[0] == 1
            assert all(after == before + 1 for before, after in pairwise(numbers))


def test_the_overlap_check_can_fail():
    assert overlap(disc(0, 0, 1), disc(1.5, 0, 1))
    assert not overlap(disc(0, 0, 1), disc(2.5, 0, 1))
    assert clear_mm(disc(0, 0, 1), disc(2.5, 0, 1)) == pytest.approx(0.5)

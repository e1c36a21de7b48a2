"""The proving page holds what the wiring demands: boxes, readings, isolation, ear, signature."""

from itertools import combinations

import pytest

from planner.data import data_dir
from planner.drawing.primitives import Rect, Text
from planner.files.plans import read_plan
from planner.proving.probing import probe_plan
from planner.sheet.leaf import Making
from planner.sheet.lettering import PAPER
from planner.sheet.proving import proving_leaves
from planner.sheet.proving.continuity import paths
from planner.sheet.proving.isolation import isolation_pairs
from planner.wiring.partners import expected_partners, holds
from tests.sheet.plain_plan import STOP

DEMOS = sorted((data_dir("resources") / "demo").glob("*.json"))
CLEAR = [path for path in DEMOS if "spoiled" not in path.stem]
each = pytest.mark.parametrize("path", CLEAR, ids=lambda path: path.stem)


def making_of(name, **options):
    return Making(read_plan(next(path for path in DEMOS if path.stem == name)), (), **options)


def isolation_of(making):
    return probe_plan(making.plan, making.wiring).isolation


def said(making):
    items = [item for leaf in proving_leaves(making) for item in leaf.body]
    return [item.text for item in items if isinstance(item, Text)]


def beeps(making):
    return said(making).count("BEEP")


def test_a_table_has_a_beep_for_each_join_and_silence_for_all_else():
    # Five contacts against four, four of them joined one to one.
    words = said(making_of("cue-desk-headphone-lead"))
    assert (words.count("BEEP"), words.count("silent")) == (4, 16)


def test_a_joined_return_beeps_twice():
    assert beeps(making_of("stereo-to-two-mono")) == 4


def test_a_spare_or_crossed_landing_moves_the_beep():
    making = making_of("stage-left-balanced-line")
    two = [one for one in making.plan.landings if (one.end, one.contact) == ("B", "2")]
    kept = tuple(one for one in making.plan.landings if one not in two)
    assert beeps(Making(making.plan.evolve(landings=kept), ())) == beeps(making) - 1


@each
def test_readings_join_every_net_once(path):
    # A net of n contacts takes n - 1 readings of continuity.
    making = Making(read_plan(path), ())
    nets = {frozenset((c, *others)) for c, others in expected_partners(making.wiring).items()}
    assert len(paths(making)) == sum(len(net) - 1 for net in nets)


@each
def test_no_pair_that_must_be_apart_is_joined(path):
    making = Making(read_plan(path), ())
    found = expected_partners(making.wiring)
    pairs = isolation_pairs(isolation_of(making))
    assert pairs
    assert [pair for pair in pairs if pair[1] in found[pair[0]]] == []


def test_a_small_lead_measures_every_pair_of_nets():
    making = making_of("cue-desk-headphone-lead")
    found = isolation_of(making)
    assert found.stop_after is None
    assert len(isolation_pairs(found)) == len(tuple(combinations(holds(making.wiring), 2))) == 10


def test_a_large_lead_measures_all_neighbours_of_one_end():
    # On a 25-way D each contact has its two neighbours in the row and two in the other row: 12 + 11
    # along the rows and 24 across; none of them is on a net of the other here. Besides, the tails
    # of the shields come near one another.
    found = isolation_of(making_of("recording-rack-loom"))
    at_a = {
        tuple(sorted((int(one[1]), int(other[1]))))
        for one, other in isolation_pairs(found)
        if one[0] == "A"
    }
    rows = [(one, one + 1) for one in range(1, 25) if one != 13]
    across = [
        (one, one + below) for one in range(1, 14) for below in (12, 13) if 14 <= one + below <= 25
    ]
    assert len(rows) + len(across) == 47
    assert at_a >= {*rows, *across}
    tails = {2, 5, 8, 11, 16, 19, 22, 25}
    assert all({one, other} <= tails for one, other in at_a - {*rows, *across})


def test_the_stop_line_is_told():
    words = " ".join(said(making_of("recording-rack-loom")))
    assert "2.06 mm" in words
    assert "466 pairs left" in words.replace("  ", " ")


def test_with_a_stop_nothing_is_proved():
    plan = making_of("stage-left-balanced-line").plan
    assert list(proving_leaves(Making(plan, (STOP,)))) == []


def test_the_limit_is_one_ohm_over_the_wires_own():
    # IPC/WHMA-A-620 rev. A as quoted by others: 1 ohm plus the wire's own.
    words = said(making_of("cue-desk-headphone-lead"))
    own = float(words[words.index("Expect about") + 1].removesuffix(" ohm"))
    assert f"{own + 1:.2f}" in words


@pytest.mark.parametrize("language", ["en", "de"])
@each
def test_there_is_room_to_sign(path, language):
    making = Making(read_plan(path), (), language=language)
    words = said(making)
    for key in ("unit", "built_by", "proved_by", "date", "good", "not_good"):
        assert making.words(f"proving.{key}") in words


@each
def test_a_box_for_every_row_of_the_list_or_cell_of_the_table(path):
    making = Making(read_plan(path), ())
    first = next(iter(proving_leaves(making)))
    boxes = [
        item
        for item in first.body
        if isinstance(item, Rect) and item.width == item.height and item.style.fill == PAPER
    ]
    beeping = [item for item in first.body if isinstance(item, Text) and item.text == "silent"]
    assert len(boxes) >= len(beeping)


@each
def test_every_page_says_to_unplug_first(path):
    making = Making(read_plan(path), ())
    for leaf in proving_leaves(making):
        assert any(isinstance(it, Text) and it.text.startswith("UNPLUG ALL") for it in leaf.body)


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_a_small_lead_is_proved_on_one_page(paper):
    assert len(list(proving_leaves(making_of("cue-desk-headphone-lead", paper_name=paper)))) == 1


def test_pairs_go_nearest_first_down_each_column():
    making = making_of("stage-left-balanced-line")
    gaps = [probe.gap_mm for probe in isolation_of(making).probes]
    assert gaps == sorted(gaps)

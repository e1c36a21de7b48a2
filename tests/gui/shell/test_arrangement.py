from itertools import combinations

import pytest

from planner.app.arrangement import PANELS, SIZES, Folds, Form, arrange, form_of

OPEN = Folds()


def boxes(width, height, folds=OPEN):
    form = form_of(width, height)
    made = arrange(width, height - SIZES[form].menu, folds, form)
    return {name: (x, y + SIZES[form].menu, w, h) for name, (x, y, w, h) in made.boxes.items()}


def test_wide_window_has_the_regions_of_the_grid():
    assert boxes(1440, 900) | {"findings": 0, "in_hand": 0} == {
        "band": (0, 32, 1440, 72),
        "shelf": (0, 104, 216, 768),
        "head": (216, 104, 920, 40),
        "canvas": (216, 144, 920, 544),
        "landings": (216, 688, 920, 184),
        "hints": (0, 872, 1440, 28),
        "findings": 0,
        "in_hand": 0,
    }


def test_compact_window_folds_to_a_rail_and_a_head():
    made = boxes(1024, 700, Folds(shelf=True, landings=True))
    assert made["rail"] == (0, 80, 48, 592)
    assert made["landings_bar"] == (48, 640, 712, 32)
    assert made["canvas"] == (48, 120, 712, 520)
    assert made["findings"][2] == 264


def test_shelf_opens_over_the_canvas_in_a_compact_window():
    made = arrange(1024, 676, Folds(landings=True), Form.COMPACT)
    assert made.over == ("shelf",)
    assert made.boxes["canvas"][0] == 48


@pytest.mark.parametrize("sheet", PANELS)
def test_one_column_shows_each_panel_full_width(sheet):
    made = boxes(720, 450, Folds(sheet=sheet))
    assert made[sheet][2] == 720
    assert made["bar"] == (0, 406, 584, 44)


@pytest.mark.parametrize("size", [(1440, 900), (1200, 760), (1024, 700), (900, 560), (720, 450)])
@pytest.mark.parametrize("folds", [Folds(), Folds(shelf=True, landings=True)])
def test_regions_tile_the_window_without_overlap(size, folds):
    form = form_of(*size)
    made = arrange(size[0], size[1], folds, form)
    flat = {name: box for name, box in made.boxes.items() if name not in made.over}
    for (_, a), (_, b) in combinations(flat.items(), 2):
        apart = a[0] + a[2] <= b[0] or b[0] + b[2] <= a[0]
        assert apart or a[1] + a[3] <= b[1] or b[1] + b[3] <= a[1]
    covered = sum(box[2] * box[3] for box in flat.values())
    rail = SIZES[form].rail * flat["canvas"][3] if made.over else 0
    assert covered <= size[0] * size[1]
    assert made.over or covered == size[0] * size[1] - rail


@pytest.mark.parametrize(
    ("size", "form"),
    [((1440, 900), Form.WIDE), ((1024, 700), Form.COMPACT), ((720, 450), Form.COLUMN)],
)
def test_form_follows_the_size(size, form):
    assert form_of(*size) is form


def test_the_steps_stand_beside_the_view_s_buttons_in_one_column_and_over_the_bench_else():
    made = arrange(720, 426, Folds(ends=True), Form.COLUMN).boxes
    assert made["ends"] == (0, 48, 236, 48)
    assert made["head"] == (236, 48, 484, 48)
    assert made["canvas"] == (0, 96, 720, 286)
    wide = arrange(1440, 868, Folds(ends=True), Form.WIDE).boxes
    assert wide["ends"][1] == wide["head"][1] + wide["head"][3]
    assert wide["canvas"][1] == wide["ends"][1] + wide["ends"][3]

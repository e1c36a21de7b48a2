import pytest

from planner.drawing.bench.shapes import box_of, boxes_meet
from planner.drawing.looks import LIGHT
from planner.drawing.plot import Plot, contact_under, plot, stand_for
from planner.drawing.primitives import Rect
from planner.library.loading import load_library


@pytest.fixture(scope="module")
def dsub(tmp_path_factory):
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("CUPWRIGHT_DATA", str(tmp_path_factory.mktemp("none")))
        yield load_library().connector("dsub-25-male")


def plates(connector, size, zoom=1.0, **more):
    stand = stand_for(connector.shell, size, zoom, (0.0, 0.0))
    items = plot(Plot(connector, connector.shell, **more), stand, size, LIGHT)
    return [item for item in items if isinstance(item, Rect) and item.height == 18]


@pytest.mark.parametrize(("size", "zoom"), [((300, 300), 1.0), ((560, 400), 1.0), ((560, 400), 4)])
def test_no_number_lies_over_another(dsub, size, zoom):
    boxes = [box_of((item,)) for item in plates(dsub, size, zoom)]

    assert boxes
    assert not any(boxes_meet(one, two) for at, one in enumerate(boxes) for two in boxes[:at])
    assert len(boxes) == 25 or size == (300, 300)


def test_the_chosen_number_is_always_there(dsub):
    for name in dsub.by_id:
        accents = [
            it for it in plates(dsub, (300, 300), chosen=(name,)) if it.style.fill == LIGHT.accent
        ]
        assert len(accents) == 1


def test_every_contact_is_hit_where_it_lies(dsub):
    stand = stand_for(dsub.shell, (900, 500), 1.0, (0.0, 0.0))
    for contact in dsub.contacts:
        place = (contact.terminal.x_mm, contact.terminal.y_mm)
        assert contact_under(dsub, stand, stand.to_px(place)) == contact.id
        assert stand.to_mm(stand.to_px(place)) == pytest.approx(place)

import pytest

from planner.drawing.bench.shapes import box_of, boxes_meet
from planner.drawing.carried_face import CarriedFace, carried_face, stand_of
from planner.drawing.looks import LIGHT
from planner.drawing.primitives import Text
from planner.library.loading import load_library


@pytest.fixture(scope="module")
def library(tmp_path_factory):
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("CUPWRIGHT_DATA", str(tmp_path_factory.mktemp("none")))
        yield load_library()


def shown(library, connector, pinout, **more):
    signals = {name: frozenset(it) for name, it in library.pinout(pinout).signals.items()}
    return CarriedFace(library.connector(connector), signals, **more)


CASES = [
    ("jack-4.4-five-pole", "ferrow-pell-4.4", (560, 340)),
    ("dsub-25-male", "aes59-analogue", (760, 320)),
    ("dsub-37-female", "quillet-stowe-37", (1100, 320)),
    ("xlr-5-male", "xlr-5-stereo-microphone", (420, 300)),
    ("din-5-180-male", "din-5-amplifier-output", (420, 300)),
    ("phono-male", "phono-output", (420, 300)),
]


@pytest.mark.parametrize(("connector", "pinout", "size"), CASES)
@pytest.mark.parametrize("side", ["solder", "mating"])
def test_no_word_lies_over_another_or_off_the_canvas(library, connector, pinout, size, side):
    case = shown(library, connector, pinout, side=side)
    texts = [item for item in carried_face(case, size, LIGHT) if isinstance(item, Text)]
    boxes = [box_of((item,)) for item in texts]

    assert len(texts) >= 2 * case.connector.poles
    for place, box in enumerate(boxes):
        assert box[0] >= 0
        assert box[2] <= size[0]
        assert not any(boxes_meet(box, other) for other in boxes[:place])


def test_every_contact_can_be_hit_where_it_is_drawn(library):
    case = shown(library, "dsub-25-male", "aes59-analogue")
    stand = stand_of(case, (760, 320))

    assert all(stand.at(joint) == name for name, joint in stand.joints.items())
    assert stand.at((0, 0)) == ""


def test_the_two_sides_are_mirror_images(library):
    solder = stand_of(shown(library, "xlr-5-male", "xlr-5-stereo-microphone"), (560, 340))
    mating = stand_of(
        shown(library, "xlr-5-male", "xlr-5-stereo-microphone", side="mating"), (560, 340)
    )

    for name, (x, y) in solder.joints.items():
        assert mating.joints[name] == pytest.approx((560 - x, y))


def test_a_difference_is_told_in_words(library):
    case = shown(
        library,
        "jack-4.4-five-pole",
        "ferrow-pell-4.4",
        was={"R1": frozenset({"R+"})},
        pairs=[("R1", "R2")],
    )
    told = [item.text for item in carried_face(case, (560, 340), LIGHT) if isinstance(item, Text)]

    assert "ring 1, was R+" in told


@pytest.mark.parametrize("size", [(303, 240), (360, 280), (560, 340)])
def test_differences_fit_a_narrow_face(library, size):
    was = {name: frozenset({"R-"}) for name in ("T", "R1", "R2", "R3", "S")}
    case = shown(library, "jack-4.4-five-pole", "ferrow-pell-4.4", was=was)
    texts = [item for item in carried_face(case, size, LIGHT) if isinstance(item, Text)]
    boxes = [box_of((item,)) for item in texts]

    assert len(texts) == 10
    assert all(box[0] >= 0 and box[2] <= size[0] and box[3] <= size[1] for box in boxes)
    assert not any(boxes_meet(one, two) for at, one in enumerate(boxes) for two in boxes[:at])

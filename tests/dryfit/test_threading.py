"""Parts on a line, with invented figures: what passes, what comes too late, what grips."""

import pytest

from planner.dryfit.threading import hindrances
from planner.model.part import Part
from planner.model.plan import PartUse
from tests.dryfit.test_fit import connector, plan

BOOT = {"kind": "boot", "outside_mm": 20, "length_mm": 30}
SHRINK = {"kind": "heat-shrink", "outside_mm": 8, "length_mm": 20}


def hindered(part: dict, **use) -> list[str]:
    """Kinds of hindrance of one part at B; the jacket is 4 mm, the barrel of B 15 mm."""
    record = Part(id="p", title="Part", **part)
    placed = PartUse(id="B1", part="p", at="B", comes_from="B", **use)
    bare = plan({"WH": "1"})
    definitions = bare.definitions.evolve(parts=(record,))
    return [
        found.kind for found in hindrances(bare.evolve(definitions=definitions, parts=(placed,)))
    ]


@pytest.mark.parametrize(
    ("part", "use", "kinds"),
    [
        (BOOT | {"bore_mm": 5}, {}, []),
        (BOOT | {"bore_mm": 3.5}, {}, ["cannot-pass"]),
        (BOOT | {"bore_mm": 5}, {"after_joint": True}, ["threaded-too-late"]),
        (BOOT | {"bore_mm": 16}, {"after_joint": True}, []),
        (BOOT | {"bore_mm": 5, "opens": True}, {"after_joint": True}, []),
        (SHRINK | {"bore_mm": 6.35, "recovered_mm": 3.18}, {}, []),
        (SHRINK | {"bore_mm": 9.53, "recovered_mm": 4.75}, {}, ["shrink-misfit"]),
    ],
)
def test_what_hinders_a_part(part, use, kinds):
    assert hindered(part, **use) == kinds


def test_a_part_can_come_from_the_far_end_over_the_whole_cable():
    """The far end has no plug yet, so only the jacket has to be passed."""
    record = Part(id="p", title="Part", bore_mm=5, **BOOT)
    use = PartUse(id="B1", part="p", at="B", comes_from="A", after_joint=True)
    bare = plan({"WH": "1"})
    definitions = bare.definitions.evolve(parts=(record,))
    assert connector().barrel.outside_mm > record.bore_mm
    assert list(hindrances(bare.evolve(definitions=definitions, parts=(use,)))) == []

"""The steps of an end: numbers, boxes, the bar of the iron, where they part."""

from planner.drawing.primitives import Rect
from planner.sheet.end_page.steps import PITCH, Line, runs_of, steps_panels
from planner.sheet.end_page.work import lines_of
from planner.sheet.words import Words
from tests.sheet.end_page.samples import demo, making, texts

WORDS = Words()


def lines(*heats):
    return [Line(str(n), heat, f"Do {n}.") for n, heat in enumerate(heats, start=1)]


def pieces(found, *rooms):
    return list(steps_panels(runs_of(found, 11800, PITCH), WORDS, 11800, rooms))


def heats(panel):
    return [item.owner for item in panel.items if item.owner.startswith("heat/")]


def test_a_bar_beside_the_steps_says_how_warm_the_iron_is():
    (panel,) = pieces(lines("cold", "cold", "hot", "hot", "close"), 20000)
    assert heats(panel) == ["heat/cold", "heat/hot", "heat/close"]
    bars = [item for item in panel.items if isinstance(item, Rect) and item.owner]
    assert [bar.style.fill == "#000000" for bar in bars] == [False, True, False]
    assert {"COLD", "HOT", "CLOSE"} <= set(texts(panel.items))


def test_one_cold_step_among_hot_ones_does_not_cool_the_iron():
    (panel,) = pieces(lines("cold", "hot", "cold", "hot"), 20000)
    assert heats(panel) == ["heat/cold", "heat/hot"]


def test_steps_part_where_the_iron_changes():
    found = lines(*["cold"] * 4, *["hot"] * 4)
    one, other = pieces(found, 5 * PITCH, 9000)
    assert (heats(one), heats(other)) == (["heat/cold"], ["heat/hot"])
    assert WORDS("end.steps_go_on") in texts(one.items)
    assert WORDS("end.steps_go_on") not in texts(other.items)


def test_a_run_longer_than_a_page_parts_within_itself():
    found = lines(*["hot"] * 30)
    parts = pieces(found, 6000)
    assert len(parts) > 2
    assert all(part.height <= 6000 for part in parts)
    said = [text for part in parts for text in texts(part.items)]
    assert [f"Do {n}." for n in range(1, 31)] == [text for text in said if text.startswith("Do ")]


def test_where_there_is_no_room_the_first_piece_is_empty():
    first, second = pieces(lines("cold", "hot"), 100, 9000)
    assert (first.height, len(heats(second))) == (0, 2)


def test_steps_of_an_end_keep_their_numbers_in_the_whole_list():
    made = making(demo("intercom-headset"))
    found = list(lines_of(made, "B"))
    at = [n for n, step in enumerate(made.steps, start=1) if step.stage == "B"]
    assert [int(line.number) for line in found] == at


def test_ends_that_share_their_steps_show_the_same():
    made = making(demo("recording-rack-loom"))
    assert list(lines_of(made, "B8")) == list(lines_of(made, "B1"))


def test_steps_of_another_end_between_are_pointed_at():
    # The shield lands at B only: A stays open until it is metered from there.
    plan = demo("intercom-headset")
    landed = tuple(
        one.evolve(end="B", contact="1") if one.end == "A" and one.conductor == "SH" else one
        for one in plan.landings
    )
    made = making(plan.evolve(landings=landed))
    lines = list(lines_of(made, "A"))
    (place,) = [place for place, line in enumerate(lines) if not line.number]
    before, after = int(lines[place - 1].number), int(lines[place + 1].number)
    assert f"{before + 1}\u2013{after - 1} at end B" in lines[place].text

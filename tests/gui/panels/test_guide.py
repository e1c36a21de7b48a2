import pytest
from PySide6.QtCore import Qt

from planner.app.panels.guide import GuidePanel
from planner.app.panels.guide_draft import MANY, Chosen, Draft
from planner.app.panels.guide_sketch import CABLE
from planner.app.panels.pick_list import SEARCHED

SIZE = (920, 544)


@pytest.fixture
def guide(bench, show):
    return show(GuidePanel, bench, SIZE)


def choose(guide, press, name, *texts):
    """Choose at the keyboard: open the list, search, Enter; once for each text."""
    guide.sketch.buttons[name].setFocus()
    press(guide, Qt.Key.Key_Return)
    for text in texts:
        press(guide.pick, text, Qt.Key.Key_Return)


def test_a_lead_is_begun_by_keyboard_in_one_undo_step(bench, guide, press, qtbot):
    choose(guide, press, "A", "4.4", "standard")
    choose(guide, press, "L", "slim", "odalisk")
    choose(guide, press, "R", "slim", "odalisk")
    choose(guide, press, CABLE, "spool 4")
    assert guide.missing.text() == ""
    guide.start.setFocus()
    with qtbot.waitSignal(guide.started):
        press(guide, Qt.Key.Key_Return)
    assert [end.connector for end in bench.plan.ends] == [
        "jack-4.4-five-pole",
        "jack-3.5-two-pole-slim",
        "jack-3.5-two-pole-slim",
    ]
    assert [end.channel for end in bench.plan.ends] == ["", "L", "R"]
    assert bench.plan.cable_of("trunk").id == "hp4-braid"
    assert bench.undo_stack.count() == 1
    bench.undo_stack.undo()
    assert bench.plan.ends == ()


def test_it_says_what_is_missing(guide, press):
    assert guide.missing.text() == "Choose what is at A."
    assert not guide.start.isEnabled()


def test_the_keys_go_to_the_steps(guide, press):
    guide.shapes["two"].setFocus()
    press(guide, "4")
    assert guide.window().focusWidget() is guide.length
    guide.shapes["two"].setFocus()
    press(guide, "3")
    assert guide.window().focusWidget() is guide.sketch.buttons[CABLE]


@pytest.mark.parametrize("shape", ["one", "two", "many"])
def test_tab_goes_through_the_steps_in_their_order(guide, press, shape):
    guide.shapes[shape].click()
    guide.shapes[shape].setFocus()
    seen = []
    for _ in range(9):
        press(guide, Qt.Key.Key_Tab)
        seen.append(guide.window().focusWidget())
    ends = [guide.sketch.buttons[name] for name in (*guide.draft.ends(), CABLE)]
    fields = [guide.length, guide.leg_length, guide.legs, guide.policy, guide.order]
    shown = [field for field in fields if field.isVisible()]
    assert seen[: len(ends) + len(shown)] == [*ends, *shown]


def test_a_bad_length_is_told(guide, library):
    guide.put("A", Chosen(library.connector("xlr-3-female")))
    guide.put("B", Chosen(library.connector("xlr-3-male")))
    guide.offer(library.cable("star-quad"))
    guide.shapes["one"].click()
    guide.length.setText("long")
    assert "'long' is not a length" in guide.missing.text()
    guide.length.setText("0.4")
    assert guide.missing.text() == "0.4 of what? Write its unit, such as 0.4 m."
    guide.length.setText("10 m")
    assert guide.missing.text() == ""


def test_a_loom_has_as_many_ends_as_said(library):
    draft = Draft(shape="many", legs=8)
    draft.chosen["A"] = Chosen(library.connector("dsub-25-male"))
    draft.chosen[MANY] = Chosen(library.connector("xlr-3-male"))
    draft.cable = library.cable("loom-eight-pair")
    plan = draft.build()
    assert [end.id for end in plan.ends] == ["A", *(f"B{number}" for number in range(1, 9))]
    assert {end.connector for end in plan.ends[1:]} == {"xlr-3-male"}


def test_the_shelf_offers_to_the_first_open_place(guide, library):
    guide.offer(library.connector("phono-male"))
    guide.offer(library.connector("xlr-3-male"))
    chosen = {name: it.connector.id for name, it in guide.draft.chosen.items()}
    assert chosen == {"A": "phono-male", "L": "xlr-3-male"}


def test_no_button_outlives_its_shape(guide):
    guide.shapes["many"].click()
    assert set(guide.sketch.buttons) == {"A", MANY, CABLE}
    assert all(button.height() >= 24 for button in guide.sketch.buttons.values())


def test_another_plan_begins_with_an_empty_guide(guide, press, library):
    guide.shapes["one"].click()
    guide.offer(library.connector("phono-male"))
    guide.offer(library.cable("star-quad"))
    guide.length.setText("10 m")
    guide.order.setText("SP-0500")
    guide.begin_anew()
    assert guide.draft == Draft()
    assert guide.sketch.buttons[CABLE].text() == "+  Choose cable"
    assert (guide.length.text(), guide.order.text()) == ("1.2 m", "")
    assert [name for name, choice in guide.shapes.items() if choice.isChecked()] == ["two"]
    tab_stops = [
        name
        for name, choice in guide.shapes.items()
        if choice.focusPolicy() & Qt.FocusPolicy.TabFocus
    ]
    assert tab_stops == ["two"]
    guide.offer(library.connector("phono-male"))
    assert set(guide.draft.chosen) == {"A"}


@pytest.mark.parametrize("kind", ["connector", "pinout", "cable"])
def test_a_list_says_what_can_be_searched_in_it(guide, library, kind):
    record = library.connector("jack-4.4-five-pole")
    ask = {
        "connector": lambda: guide.choose("A"),
        "pinout": lambda: guide.offer(record),
        "cable": lambda: guide.choose(CABLE),
    }
    ask[kind]()
    assert guide.pick.search.placeholderText() == SEARCHED[kind]
    if kind == "pinout":
        assert guide.pick.title.text() == f"Which pinout has the {record.title}?"
        guide.pick.search.setText("l+")
        assert guide.pick.model.rows[0].record in library.pinouts_for(record.id)
    guide.pick.search.setText("zinc roof")
    assert [row.second for row in guide.pick.model.rows] == [f"Try {SEARCHED[kind]}."]


@pytest.fixture
def complete(guide, library):
    """A guide in which all is chosen: a phono lead."""
    guide.shapes["one"].click()
    for record in ("phono-male", "phono-male"):
        guide.offer(library.connector(record))
    guide.offer(library.cable("star-quad"))
    return guide


def test_enter_in_the_last_field_starts_landing(bench, complete, press):
    complete.length.setFocus()
    press(complete, Qt.Key.Key_Return)
    assert bench.plan.ends == ()
    complete.order.setFocus()
    press(complete, "SP-0501", Qt.Key.Key_Return)
    assert (bench.plan.order, len(bench.plan.ends)) == ("SP-0501", 2)


@pytest.mark.parametrize("place", ["length", "legs", "policy", "order", "shapes", "cable"])
def test_ctrl_enter_starts_landing_from_anywhere(bench, complete, send_key, place):
    widget = {
        "shapes": complete.shapes["one"],
        "cable": complete.sketch.buttons[CABLE],
    }.get(place) or getattr(complete, place)
    widget.setFocus()
    send_key(widget, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    assert len(bench.plan.ends) == 2


def test_ctrl_enter_does_nothing_while_something_is_missing(bench, guide, send_key):
    send_key(guide.order, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    assert bench.plan.ends == ()

import pytest
from PySide6.QtCore import Qt

from planner.app.panels.facts.electrical import unbroken
from planner.app.panels.in_hand import InHandPanel
from planner.edits import cables
from planner.model.place import Place

SIZE = (304, 900)


@pytest.fixture
def shown(bench, demo, show):
    def open_demo(name, place=None, section=""):
        bench.open_plan(demo(name))
        panel = show(InHandPanel, bench, SIZE)
        bench.select(place or Place(), section)
        return panel

    return open_demo


def plain(text):
    return text.replace("\u00a0", " ")


def rows(panel):
    return [
        (fact.name.text(), plain(fact.value.text()))
        for fact in panel.page.figures.rows
        if fact.isVisible()
    ]


def type_into(panel, press, field, text):
    line = panel.page.figures.fields[field].line
    line.setFocus()
    line.selectAll()
    press(panel, text, Qt.Key.Key_Return)


def test_a_core_says_its_resistance_end_to_end(shown):
    panel = shown("cue-desk-headphone-lead", Place(end="L", conductor="BU"))
    assert plain(panel.page.fact("Resistance")) == "0.225 Ω end to end at 20 °C"


def test_a_shield_that_forks_says_it_run_by_run(shown):
    panel = shown("stereo-to-two-mono", Place(end="A", conductor="SH"))
    said = plain(panel.page.fact("Resistance"))
    assert said == "about trunk 0.0699 Ω, leg-L 0.0183 Ω, leg-R 0.0183 Ω at 20 °C"


def test_a_section_says_it_by_the_kilometre(shown):
    panel = shown("cue-desk-headphone-lead", section="trunk")
    assert plain(panel.page.fact("Resistance")) == "WH BU RD GN: 125 Ω/km\nbraid: about 46.6 Ω/km"


def test_cores_out_of_their_jacket_have_left_the_shield(shown):
    panel = shown("cue-desk-headphone-lead", section="leg-L")
    assert plain(panel.page.fact("Resistance")) == "WH BU RD GN: 125 Ω/km"


def test_a_section_says_what_its_capacitance_rests_on(shown, bench):
    panel = shown("cue-desk-headphone-lead", section="trunk")
    cable = bench.plan.definitions.cables[0]
    for changes, expected in (
        ({"permittivity": 2.3}, "WH to BU: about 56 pF/m, shield not counted"),
        ({"permittivity": 2.3, "shields": ()}, "WH to BU: about 56 pF/m"),
        ({"pf_per_m": 101.5}, "WH to BU: 102 pF/m, as printed"),
        ({"permittivity": None}, ""),
    ):
        made = bench.plan.definitions.evolve(cables=(cable.evolve(**changes),))
        bench.open_plan(bench.plan.evolve(definitions=made))
        bench.select(Place(), "trunk")
        assert plain(panel.page.fact("Capacitance")) == expected


def test_a_figure_keeps_its_unit_on_its_line():
    assert unbroken("about 0.4 Ω each\n5 pF") == "about 0.4\u00a0Ω each\n5\u00a0pF"


def test_the_lead_says_its_loops_balance_and_crosstalk(shown):
    found = dict(rows(shown("stereo-to-two-mono")))
    assert found["Loops L R"].startswith("about 0.445 Ω each, there and back")
    assert found["Balance"] == "all alike"
    assert found["Crosstalk"] == "L and R: −53.3 dB, 0.0699 Ω shared"


def test_eight_like_loops_are_one_row(shown):
    found = dict(rows(shown("recording-rack-loom")))
    assert found["Loops 1 to 8"].startswith("0.56 Ω each")


def test_a_long_leg_shows_in_the_balance(shown, bench):
    panel = shown("cue-desk-headphone-lead")
    bench.do("Longer", lambda plan: cables.set_length(plan, section="leg-R", length_mm=1200))
    assert dict(rows(panel))["Balance"] == "R over L: 33 %, 0.04 dB softer"


def test_a_row_without_a_fact_goes(shown, bench, demo):
    panel = shown("stereo-to-two-mono")
    assert len(rows(panel)) == 3
    bench.open_plan(demo("stage-left-balanced-line"))
    assert [name for name, _ in rows(panel)] == ["Loop"]


def test_the_temperature_is_typed_and_is_one_step(shown, bench, press):
    panel = shown("cue-desk-headphone-lead")
    type_into(panel, press, "temperature_c", "40 C")
    assert bench.plan.assumed.temperature_c == 40
    assert dict(rows(panel))["Loops L R"].startswith("0.485 Ω each")
    assert bench.undo_stack.count() == 1
    bench.undo_stack.undo()
    assert panel.page.figures.fields["temperature_c"].line.text() == "20 °C"


def test_what_is_assumed_is_typed_with_or_without_its_unit(shown, bench, press):
    panel = shown("cue-desk-headphone-lead")
    typed = {"load_ohm": "300 ohm", "source_ohm": "2,5", "balance_limit_percent": "10%"}
    for field, text in {**typed, "crosstalk_limit_db": "-55 dB"}.items():
        type_into(panel, press, field, text)
    assumed = bench.plan.assumed
    assert (assumed.load_ohm, assumed.source_ohm) == (300, 2.5)
    assert (assumed.balance_limit_percent, assumed.crosstalk_limit_db) == (10, -55)


@pytest.mark.parametrize("text", ["warm", "500 C", "20 ohm"])
def test_a_bad_figure_says_why_and_changes_nothing(shown, bench, press, text):
    panel = shown("cue-desk-headphone-lead")
    type_into(panel, press, "temperature_c", text)
    assert panel.page.figures.fields["temperature_c"].error.isVisible()
    assert (bench.plan.assumed.temperature_c, bench.undo_stack.count()) == (20, 0)

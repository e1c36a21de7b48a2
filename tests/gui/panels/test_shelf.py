from itertools import pairwise

import pytest
from PySide6.QtCore import Qt

from planner.app.panels.mime import Dragged, read_mime
from planner.app.panels.shelf import ShelfPanel
from planner.app.workbench import Workbench
from planner.library.collection import Library
from planner.library.loading import load_library
from planner.model.place import Place
from planner.model.source import Retired

SIZE = (216, 768)


def rows(panel, sort="item"):
    return [row for row in panel.model.rows if row.sort == sort]


def test_search_finds_by_size_and_poles(bench, show):
    panel = show(ShelfPanel, bench, SIZE)
    panel.search.setText("3.5 two")
    found = [row.record.id for row in rows(panel) if row.kind == "connector"]
    assert set(found) == {"jack-3.5-two-pole", "jack-3.5-two-pole-slim"}


def test_nothing_found_says_what_to_try(bench, show):
    panel = show(ShelfPanel, bench, SIZE)
    panel.search.setText("zzz")
    assert [row.title for row in panel.model.rows] == ["Nothing on the shelf fits 'zzz'."]


def test_sections_unfold(bench, show):
    panel = show(ShelfPanel, bench, SIZE)
    more = next(at for at, row in enumerate(panel.model.rows) if row.sort == "more")
    panel.list.setCurrentIndex(panel.model.index(more))
    panel.choose_current()
    shown = [row for row in rows(panel) if row.kind == "connector"]
    assert len(shown) == len(bench.library.connectors())


def test_pinouts_are_those_of_the_selected_end(bench, bare_lead, show):
    bench.open_plan(bare_lead)
    panel = show(ShelfPanel, bench, SIZE)
    bench.select(Place(end="L"))
    fits = {row.record.id for row in rows(panel) if row.kind == "pinout"}
    known = {it.id for it in bench.library.pinouts_for("jack-3.5-two-pole-slim")}
    assert fits == known


def test_letters_say_where_it_is_in_use(bench, bare_lead, show):
    bench.open_plan(bare_lead)
    panel = show(ShelfPanel, bench, SIZE)
    used = {row.record.id: row.used for row in rows(panel) if row.kind == "connector"}
    assert used["jack-4.4-five-pole"] == ("A",)
    assert used["jack-3.5-two-pole-slim"] == ("L", "R")


def test_enter_puts_a_connector_on_the_selected_end(bench, bare_lead, show, press):
    bench.open_plan(bare_lead)
    panel = show(ShelfPanel, bench, SIZE)
    bench.select(Place(end="A"))
    panel.search.setFocus()
    press(panel, "2.5 four", Qt.Key.Key_Return)
    assert bench.plan.end_by_id["A"].connector == "jack-2.5-four-pole"
    assert bench.undo_stack.count() == 1


def test_a_pinout_for_another_plug_is_refused_with_the_reason(bench, bare_lead, show, qtbot):
    bench.open_plan(bare_lead)
    panel = show(ShelfPanel, bench, SIZE)
    bench.select(Place(end="A"))
    panel.search.setText("odalisk cup")
    row = next(row for row in rows(panel) if row.kind == "pinout")
    assert row.why_not == "is not for 4.4 five-pole"
    panel.list.setCurrentIndex(panel.model.index(panel.model.rows.index(row)))
    with qtbot.waitSignal(bench.refused):
        panel.choose_current()
    assert bench.undo_stack.count() == 0


def test_the_menu_offers_every_end(bench, bare_lead, show, library):
    bench.open_plan(bare_lead)
    panel = show(ShelfPanel, bench, SIZE)
    menu = panel.menu(library.connector("xlr-3-male"))
    words = [action.text()[:8] for action in menu.actions() if not action.isSeparator()]
    assert words == ["Put on A", "Put on L", "Put on R", "Look at "]


def test_what_is_retired_is_shown_only_where_it_is_in_use(qapp, library, bare_lead, show):
    gone = Retired(reason="drawn from the mating side")
    pinouts = [it.evolve(retired=gone) for it in library.pinouts_for("jack-4.4-five-pole")]
    bench = Workbench(Library(library.connectors(), pinouts))
    panel = show(ShelfPanel, bench, SIZE)
    panel.search.setText("4.4")
    assert [row for row in rows(panel) if row.kind == "pinout"] == []
    bench.open_plan(bare_lead)
    used = {end.pinout for end in bare_lead.ends} & {it.id for it in pinouts}
    assert len(used) == 1
    found = {row.record.id: row.second for row in rows(panel) if row.kind == "pinout"}
    assert found == dict.fromkeys(used, "retired")


def test_a_row_drags_out_its_definition(bench, show):
    panel = show(ShelfPanel, bench, SIZE)
    at = next(at for at, row in enumerate(panel.model.rows) if row.kind == "cable" and row.record)
    mime = panel.model.mimeData([panel.model.index(at)])
    assert read_mime(mime) == Dragged("cable", panel.model.rows[at].record.id)


def test_a_broken_file_is_listed_with_its_mend(qapp, show, tmp_path):
    broken = tmp_path / "bent.toml"
    broken.write_text('format = "cupwright-connector"\nversion = 1\nid = \n', encoding="utf-8")
    bench = Workbench(load_library((tmp_path,)))
    panel = show(ShelfPanel, bench, SIZE)
    told = rows(panel, "broken")
    assert len(told) == 1
    assert "bent.toml" in told[0].title
    assert len(bench.library.connectors()) == len(load_library(()).connectors())


@pytest.mark.parametrize("text", ["3.5", "ferrow", "xlr", "unheard of"])
def test_search_never_shows_a_head_without_rows(bench, show, text):
    panel = show(ShelfPanel, bench, SIZE)
    panel.search.setText(text)
    sorts = [row.sort for row in panel.model.rows]
    assert not any(pair == ("head", "head") for pair in pairwise(sorts))


def test_an_empty_library_is_no_crash(qapp, show):
    panel = show(ShelfPanel, Workbench(Library()), SIZE)
    assert [row.title for row in rows(panel, "head")] == ["Connectors", "Pinouts", "Cable"]

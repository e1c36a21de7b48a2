from contextlib import suppress

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.files.definitions import connector_text, parse_definition
from planner.geometry.placing import Grid, Ring
from planner.intake import shaping
from planner.intake.connector_draft import ConnectorDraft, drafted, finished
from planner.intake.live_checks import remarks
from planner.intake.shaping import ShapeRefused
from planner.model.connector import Shell
from planner.model.tracing import Tracing
from planner.problem import InputError

NAMED = ConnectorDraft(
    id="odd-five", title="Odd five-pole", family="odd", gender="male", seen_from="solder"
)
mm = st.floats(-20, 20).map(lambda it: round(it, 2))
acts = st.lists(
    st.one_of(
        st.tuples(st.just("add"), mm, mm),
        st.tuples(st.just("nudge"), mm, mm),
        st.tuples(st.just("ring"), st.integers(1, 12), st.floats(2, 12)),
        st.tuples(st.just("open"), st.floats(-180, 180), st.just(0)),
        st.tuples(st.just("lug"), st.floats(0.5, 3), st.just(0)),
        st.tuples(st.just("take"), st.integers(0, 5), st.just(0)),
    ),
    min_size=1,
    max_size=8,
)


ACTS = {
    "add": lambda draft, _names, x, y: shaping.add_contact(draft, (x, y)),
    "nudge": lambda draft, names, x, y: shaping.nudge(draft, names[:2], (x, y)),
    "ring": lambda draft, _names, count, circle: shaping.place_by_rule(draft, Ring(count, circle)),
    "open": lambda draft, names, angle, _: shaping.set_terminals(draft, names, opening_deg=angle),
    "lug": lambda draft, names, width, _: shaping.set_terminals(
        draft, names, kind="lug", width_mm=width
    ),
    "take": lambda draft, names, count, _: shaping.take_away(draft, names[:count]),
}


def act(draft, kind, one, other):
    return ACTS[kind](draft, [it.id for it in draft.contacts], one, other)


def drawn(steps, draft=NAMED):
    for step in steps:
        with suppress(ShapeRefused):
            draft = act(draft, *step)
    return draft


@settings(max_examples=60)
@given(acts, st.sampled_from(["solder", "mating"]))
def test_whatever_is_drawn_is_saved_and_read_back(steps, side):
    draft = drawn([*steps, ("add", 0.0, 3.0)], NAMED.evolve(seen_from=side))
    record = finished(draft)

    text = connector_text(record)
    assert parse_definition(text, "a file") == record
    assert finished(drafted(record)) == record
    ids = [it.id for it in record.contacts]
    assert len(set(ids)) == len(ids)


def test_the_picture_it_was_traced_from_stays_attached():
    tracing = Tracing(digest="0" * 64, axis_px=(120.5, 88), mm_per_px=0.05, turn_deg=-3.25)
    record = finished(shaping.add_contact(NAMED, (1, 2)).evolve(tracing=tracing))

    assert parse_definition(connector_text(record), "a file").tracing == tracing


def test_what_was_typed_stays_when_the_side_is_answered_anew():
    draft = shaping.add_contact(NAMED, (3, 1))
    other = draft.evolve(seen_from="mating")

    assert other.contacts == draft.contacts
    assert finished(draft).contacts[0].terminal.x_mm == 3
    assert finished(other).contacts[0].terminal.x_mm == -3


def test_comments_of_a_hand_made_file_survive_a_moved_contact():
    draft = shaping.place_by_rule(NAMED, Ring(3, 8))
    text = connector_text(finished(draft)).replace("[shell]", "# measured on the part\n[shell]")
    before = parse_definition(text, "a file")
    after = finished(shaping.nudge(drafted(before), ["2"], (0.1, 0)))

    written = connector_text(after, text)
    assert "# measured on the part" in written
    assert parse_definition(written, "a file") == after


def test_numbers_are_taken_once():
    draft = shaping.place_by_rule(NAMED, Ring(3, 8))

    with pytest.raises(ShapeRefused, match="already"):
        shaping.renumber(draft, "1", "2")
    swapped = shaping.exchange_numbers(draft, "1", "2")
    assert [it.id for it in swapped.contacts] == ["2", "1", "3"]
    assert shaping.next_number(shaping.take_away(draft, ["2"])) == "2"


def test_a_rule_moves_what_is_there_and_makes_the_rest():
    draft = shaping.add_contact(NAMED, (9, 9), "4")
    after = shaping.place_by_rule(draft, Grid((3, 2), 3.0, 3.0), ("1", "2", "3", "4", "5"))

    assert [it.id for it in after.contacts] == ["4", "1", "2", "3", "5"]
    assert (after.contact("4").terminal.x_mm, after.contact("4").terminal.y_mm) == (-1.5, -1.5)
    with pytest.raises(ShapeRefused, match="places"):
        shaping.place_by_rule(draft, Ring(3, 8), ("1", "2"))


def test_an_unfinished_connector_says_all_that_is_missing():
    with pytest.raises(InputError) as missing:
        finished(ConnectorDraft())

    told = " ".join(problem.what for problem in missing.value.problems)
    for word in ("side", "no contact", "short name", "title", "family", "gender"):
        assert word in told


def test_overlaps_and_what_is_outside_the_shell_are_said_at_once():
    near = shaping.add_contact(shaping.add_contact(NAMED, (0, 0)), (0.5, 0))
    far = shaping.add_contact(NAMED.evolve(shell=Shell(bore_mm=10)), (7, 0))

    assert [it.what for it in remarks(near) if it.contacts == ("1", "2")]
    assert any("out of the shell" in it.what for it in remarks(far))


def test_a_gap_in_the_numbers_is_said():
    draft = shaping.take_away(shaping.place_by_rule(NAMED, Ring(5, 9)), ["2", "3"])

    assert any("no contact 2, 3" in it.what for it in remarks(draft))


@pytest.mark.parametrize("name", ["din-5-180-male", "dsub-25-male", "xlr-3-female", "xlr-5-male"])
def test_the_handedness_of_shipped_faces_is_found_sound_and_their_mirror_is_not(shipped, name):
    known = shipped.connectors()
    own = drafted(shipped.connector(name)).evolve(id="another")
    wrongly = own.evolve(seen_from="solder" if own.seen_from == "mating" else "mating")

    assert not [it for it in remarks(own, known) if "other way round" in it.what]
    assert [it for it in remarks(wrongly, known) if "other way round" in it.what]

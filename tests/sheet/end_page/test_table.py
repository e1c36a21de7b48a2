"""The landing table: rows, further conductors of a joint, pieces with their head."""

from planner.sheet.end_page.table import Manner, rows_of, table_height, table_panels
from planner.sheet.facts import end_facts
from planner.sheet.words import Words
from tests.sheet.end_page.samples import demo, texts

WORDS = Words()
MANNER = Manner(WORDS, 6800, boxes=True)


def rows(name, end=0):
    return rows_of(end_facts(demo(name))[end], WORDS)


def test_rows_follow_the_order_and_name_a_contact_again_for_its_second_conductor():
    found = [
        (row.number, row.contact, row.flag.code, row.again) for row in rows("intercom-headset")
    ]
    assert found[:3] == [(1, "1", "GN", False), (0, "1", "SHIELD", True), (2, "2", "RD", False)]


def test_a_shield_that_ends_here_is_told():
    last = rows("intercom-headset", 1)[-1]
    assert (last.flag.code, last.words) == ("SHIELD", WORDS("end.ends_here"))


def test_a_table_in_pieces_repeats_its_head_and_says_that_it_goes_on():
    found = rows("recording-rack-loom")
    pieces = list(table_panels(found, MANNER, 5000, 7000))
    assert len(pieces) > 2
    assert pieces[0].height <= 5000
    assert all(piece.height <= 7000 for piece in pieces[1:])
    assert all(WORDS("end.contact") in texts(piece.items) for piece in pieces)
    going_on = [WORDS("end.goes_on") in texts(piece.items) for piece in pieces]
    assert going_on == [True] * (len(pieces) - 1) + [False]
    said = [text for piece in pieces for text in texts(piece.items)]
    assert all(row.flag.code in said for row in found if row.flag)


def test_a_table_with_room_is_one_piece_of_the_height_told():
    found = rows("intercom-headset")
    (piece,) = table_panels(found, MANNER, 9000, 9000)
    assert piece.height == table_height(found, MANNER)


def test_without_boxes_nothing_is_to_be_ticked():
    found = rows("intercom-headset")
    (piece,) = table_panels(found, Manner(WORDS, 6800, boxes=False), 9000, 9000)
    assert WORDS("end.done") not in texts(piece.items)

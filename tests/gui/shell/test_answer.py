from dataclasses import dataclass

from planner.app.answer import answer_of


@dataclass(frozen=True)
class Found:
    weight: str
    title: str = ""
    what: str = "Something is wrong"
    unfinished: bool = False


REVERSED = Found("stop", "Right channel reversed")
OPEN = Found("stop", "R+ reaches nothing", unfinished=True)
DOUBT = Found("caution", "Pinout not confirmed")


def test_one_stop_says_do_not_heat_and_why():
    answer = answer_of([REVERSED, DOUBT], landed=9, to_land=0)
    assert (answer.kind, answer.title, answer.cautions) == ("stop", "1 stop", 1)
    assert answer.sentence == "Don’t heat the iron: right channel reversed."


def test_more_stops_are_counted():
    answer = answer_of([REVERSED, Found("stop", "XLR pins bridged")], landed=9, to_land=0)
    assert answer.title == "2 stops"
    assert answer.sentence == "Don’t heat the iron: right channel reversed, and 1 more."


def test_a_name_in_a_headline_keeps_its_capitals():
    answer = answer_of([Found("stop", "XLR pins bridged")], landed=1, to_land=0)
    assert answer.sentence == "Don’t heat the iron: XLR pins bridged."


def test_what_is_not_landed_yet_is_no_stop_and_not_clear():
    answer = answer_of([OPEN], landed=7, to_land=2)
    assert (answer.kind, answer.title) == ("empty", "2 to land")
    assert answer.landed_words == "7 of 9 landed"


def test_open_signals_weigh_as_stops_once_nothing_is_left_to_land():
    assert answer_of([OPEN], landed=9, to_land=0).title == "1 stop"


def test_cautions_come_after_what_is_left_to_land():
    assert answer_of([DOUBT, DOUBT], landed=8, to_land=1).title == "1 to land"
    assert answer_of([DOUBT, DOUBT], landed=9, to_land=0).title == "2 cautions"


def test_accepted_cautions_are_told_but_do_not_hold_up():
    answer = answer_of([DOUBT], landed=9, to_land=0, is_accepted=lambda _found: True)
    assert (answer.kind, answer.title) == ("clear", "Clear to solder")
    assert answer.sentence == "Every core is landed; 1 caution accepted with a reason."


def test_notes_do_not_hold_up():
    assert answer_of([Found("note")], landed=1, to_land=0).title == "Clear to solder"

"""What a record has no room for is refused as it is noted, and not when the unit is finished."""

import pytest

from planner.proving.reading import Reading
from planner.proving.units import MOST_ENTRIES, MOST_READINGS, Attachment, Listening, Rework


def entries(prove, kind):
    """Return so many entries of a kind that there is no room for another."""
    at = prove.state.now()
    made = {
        "attachments": Attachment(name="joint.jpg", digest="a" * 64, size_bytes=9),
        "listening": Listening(tone="left", heard="as-expected"),
        "rework": Rework(at=at, found="a fault"),
    }[kind]
    return (made,) * MOST_ENTRIES


@pytest.mark.parametrize(
    ("kind", "words"),
    [("attachments", "files"), ("listening", "answers of listening"), ("rework", "reworks")],
)
def test_one_entry_too_many_is_refused_with_a_sentence(prove, qtbot, kind, words):
    prove.begin()
    full = prove.state.unit.evolve(**{kind: entries(prove, kind)})
    prove.state.put_unit(full)
    with qtbot.waitSignal(prove.state.said) as said:
        _one_more(prove, kind)
    assert said.args == [f"A unit keeps 500 {words} at most: this one is not noted."]
    assert prove.state.unit is full


def _one_more(prove, kind):
    if kind == "attachments":
        prove.acts["attach"].trigger()
    elif kind == "listening":
        listen = prove.view.listen
        listen.hear(listen.cards[0], "otherwise")
    else:
        prove.view.verdict.rework_wanted.emit("made anew")


def test_readings_that_a_record_can_t_hold_are_not_taken(prove, qtbot):
    prove.begin()
    unit = prove.state.unit
    pairs = [(("X", str(at)), ("Y", "1")) for at in range(MOST_READINGS + 1)]
    many = [Reading(one=one, other=other, joined=False) for one, other in pairs]
    with qtbot.waitSignal(prove.state.said) as said:
        prove.state.change("Import", unit.with_readings(many))
    assert "40000 readings at most" in said.args[0]
    assert prove.state.unit is unit

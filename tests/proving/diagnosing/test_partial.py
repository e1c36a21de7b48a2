"""What was not read is unknown: rivals, the next reading, contradictions, what is still to read."""

import pytest

from planner.proving.diagnosing import CancelledError, diagnose
from planner.proving.reading import Reading, Readings
from tests.proving.diagnosing.leads import FIVE, HEADPHONES, JOINED_RETURNS, LINE, straight
from tests.proving.diagnosing.units import bench, read_all, read_some

ITS = bench(LINE.plan)


def rows(*texts):
    """Return readings written `A.1 B.1 joined`."""
    found = []
    for text in texts:
        one, other, state = text.split()
        pair = (tuple(one.split(".")), tuple(other.split(".")))
        found.append(Reading(one=pair[0], other=pair[1], joined=state == "joined"))
    return Readings(readings=tuple(found))


def judged(*texts, its=ITS, **more):
    return diagnose(its.plan, its.wiring, rows(*texts), **more)


def test_nothing_read_asks_for_continuity_first():
    found = judged()
    assert (found.verdict, found.unread_continuity, found.unread_isolation) == ("incomplete", 3, 3)
    assert found.next_probe.pair == (("A", "1"), ("B", "1"))


def test_continuity_alone_asks_for_isolation():
    found = judged("A.1 B.1 joined", "A.2 B.2 joined", "A.3 B.3 joined")
    assert (found.verdict, found.unread_continuity, found.unread_isolation) == ("incomplete", 0, 3)
    assert "keeps them apart" in found.next_probe.words


def test_one_reading_for_each_two_nets_is_enough():
    joined = [f"A.{it} B.{it} joined" for it in (1, 2, 3)]
    apart = ["A.1 B.2 open", "A.1 A.3 open", "B.2 B.3 open"]
    assert judged(*joined, *apart).verdict == "sound"


def test_a_stated_plan_may_stop_earlier():
    joined = [f"A.{it} B.{it} joined" for it in (1, 2, 3)]
    asked = [frozenset({("A", "1"), ("A", "2")})]
    assert judged(*joined, asked=asked).unread_isolation == 1
    assert judged(*joined, "A.1 A.2 open", asked=asked).verdict == "sound"


def test_one_open_reading_has_rivals_and_the_likeliest_is_an_open():
    found = judged("A.2 B.2 open")
    assert found.best.words == "RD is open: pin 2 at A or pin 2 at B"
    assert len(found.explanations) > 2
    assert sum(it.likelihood for it in found.explanations) == pytest.approx(1)


def test_two_opens_are_one_exchange_as_long_as_nothing_speaks_against_it():
    """Unread is unknown: with the cross readings open it is two opens."""
    crossed = judged("A.2 B.2 open", "A.3 B.3 open", "A.1 B.1 joined")
    assert crossed.cost == 1
    assert "exchanged" in crossed.best.words
    opens = judged("A.2 B.2 open", "A.3 B.3 open", "A.1 B.1 joined", "A.2 B.3 open", "A.3 B.2 open")
    assert (opens.cost, opens.best.words.count("is open")) == (2, 2)


def test_the_next_reading_splits_the_rivals_and_says_what_it_means():
    found = judged("A.2 B.2 open", "A.1 B.1 joined", "A.1 A.2 open", "A.1 A.3 open")
    words = found.next_probe.words
    assert words.startswith("Read pin ")
    assert "joined means" in words
    assert "open means" in words


@pytest.mark.parametrize("sample", [LINE, FIVE, HEADPHONES, JOINED_RETURNS])
def test_following_the_advice_leads_to_the_end(sample):
    """From nothing read, reading what is asked for ends with what all readings say."""
    its = bench(sample.plan)
    board = its.sound.board
    end = next(iter(board.at))
    unit = its.sound.exchanged(0, 1).bridged(*board.at[end][-2:])
    readings = Readings()
    for _ in range(100):
        found = diagnose(its.plan, its.wiring, readings)
        if found.next_probe is None:
            break
        one, other = (board.number[it] for it in found.next_probe.pair)
        readings = readings.taken(read_some(unit, [(one, other)]).readings[0])
    whole = diagnose(its.plan, its.wiring, read_all(unit))
    count = len(board.contacts)
    assert found.verdict == "faulty"
    assert len(readings.readings) < count * (count - 1) // 2
    assert found.cost <= whole.cost


def test_a_contradiction_is_said_and_read_again():
    found = judged("A.1 A.2 joined", "A.2 A.3 joined", "A.1 A.3 open")
    (contradiction,) = found.contradictions
    assert found.verdict == "incomplete"
    assert found.next_probe.pair == contradiction.repeat == (("A", "1"), ("A", "3"))
    assert "can't all be right" in contradiction.words
    assert set(map(frozenset, contradiction.pairs)) == {
        frozenset({("A", one), ("A", other)}) for one, other in ("12", "23", "13")
    }


def test_a_fault_beside_a_contradiction_is_still_found():
    found = judged("A.1 A.2 joined", "A.2 A.3 joined", "A.1 A.3 open", "B.1 B.2 joined")
    assert (found.verdict, len(found.contradictions)) == ("faulty", 1)
    assert "pin 1 and pin 2" in found.best.words


def test_a_whole_mess_of_contradictions_is_borne():
    texts = [
        f"A.{one} B.{other} {state}"
        for one in (1, 2, 3)
        for other in (1, 2, 3)
        for state in ("joined" if (one + other) % 2 else "open",)
    ]
    assert judged(*texts, "A.1 A.2 joined", "A.2 A.3 joined").contradictions


def test_nothing_joined_at_all_asks_for_the_probes_first():
    found = diagnose(ITS.plan, ITS.wiring, _all_open())
    assert found.verdict == "faulty"
    assert found.remarks[0].startswith("Nothing at all reads joined")


def _all_open():
    taken = read_all(ITS.sound).readings
    return Readings(readings=tuple(it.evolve(joined=False) for it in taken))


def test_readings_of_contacts_that_are_not_there_are_passed_over():
    assert judged("A.9 B.9 joined").verdict == "incomplete"


def test_a_huge_ambiguity_is_cut_with_a_count():
    its = bench(straight(64))
    found = judged("A.1 B.1 open", its=its)
    assert len(found.explanations) == 24
    assert found.more > 24
    assert found.counted


def test_it_can_be_given_up_and_tells_how_far_it_is():
    its = bench(straight(24))
    unit = its.sound
    for place in range(5):
        unit = unit.bridged(place, place + 1)
    told = []
    diagnose(its.plan, its.wiring, read_all(unit), progress=told.append)
    assert told == sorted(told)
    with pytest.raises(CancelledError):
        diagnose(its.plan, its.wiring, read_all(unit), cancelled=lambda: True)


def test_what_no_meter_sees():
    its = bench(JOINED_RETURNS.plan)
    unseen = " ".join(diagnose(its.plan, its.wiring, Readings()).unseen)
    assert "BU, GN" in unseen  # two returns side by side
    assert "polarity" in unseen
    unit = its.sound.exchanged(its.slot("A.WH"), its.slot("A.RD"))
    found = diagnose(its.plan, its.wiring, read_all(unit))
    assert found.unseen[0].startswith("At which end two cores are exchanged")


def test_an_open_in_one_of_two_returns_does_not_show():
    its = bench(JOINED_RETURNS.plan)
    unit = its.sound.opened(its.slot("A.GN"))
    assert diagnose(its.plan, its.wiring, read_all(unit)).verdict == "sound"

import pytest

from planner.files.definitions import parse_definition, pinout_text
from planner.intake.pinout_draft import (
    PinoutDraft,
    carries,
    drafted,
    finished,
    from_the_other_side,
    mates,
    proposed_id,
)
from planner.model.source import Confirmation
from planner.problem import EditRefused, InputError

ODD = PinoutDraft(
    connector="xlr-5-male",
    seen_from="mating",
    use="balanced headphone output",
    maker="Ferrow & Pell",
    drive="driven-balanced",
    source_kind="letter",
    reference="letter about the cue desk, invented",
    date="1998-03",
    recorded_by="the owner",
)


def test_a_draft_becomes_a_record_that_round_trips(shipped):
    connector = shipped.connector("xlr-5-male")
    draft = carries(carries(ODD, "2", ("L+",)), "3", ("L-",))
    record = finished(draft, connector)

    assert parse_definition(pinout_text(record), "a file") == record
    assert record.trust == "documented"
    assert record.id == "ferrow-pell-xlr-5-male"
    assert finished(drafted(record, connector).evolve(seen_from="solder"), connector) == record


def test_nothing_is_guessed(shipped):
    with pytest.raises(InputError) as missing:
        finished(PinoutDraft(), shipped.connector("xlr-5-male"))

    told = " ".join(problem.what for problem in missing.value.problems)
    for word in ("side", "carries anything", "used for", "drives", "whose word"):
        assert word in told


def test_the_other_side_twice_is_where_it_was(shipped):
    connector = shipped.connector("din-5-180-male")
    draft = carries(carries(ODD.evolve(connector=connector.id), "1", ("L+",)), "4", ("R+",))
    seen = from_the_other_side(draft, connector)

    assert seen.signals == {"3": ("L+",), "5": ("R+",)}
    assert from_the_other_side(seen, connector).signals == draft.signals


def test_a_jack_has_no_other_side(shipped):
    with pytest.raises(EditRefused, match="no mirror images"):
        from_the_other_side(ODD, shipped.connector("jack-4.4-five-pole"))


def test_a_free_id_is_proposed():
    taken = frozenset({"ferrow-pell-xlr-5-male", "ferrow-pell-xlr-5-male-2"})

    assert proposed_id(ODD, taken) == "ferrow-pell-xlr-5-male-3"
    assert proposed_id(PinoutDraft()) == "pinout"


def test_nothing_takes_a_contact_out():
    assert carries(carries(ODD, "2", ("L+",)), "2", ()).signals == {}


CONFIRMED = Confirmation(who="the owner", how="continuity to the board")


def revised(shipped, record, **changes):
    connector = shipped.connector(record.fits[0])
    return finished(drafted(record, connector).evolve(**changes), connector)


def test_the_next_revision_keeps_all_that_nobody_changed(shipped):
    for record in shipped.pinouts():
        assert revised(shipped, record) == record


def test_what_was_confirmed_of_other_signals_is_not_confirmed(shipped):
    record = shipped.pinout("xlr-5-intercom-headset").evolve(confirmations=(CONFIRMED,))
    odd = {**record.signals, "4": ("R+",), "5": ("L+",)}

    assert revised(shipped, record, remarks="seen").trust == "confirmed"
    after = revised(shipped, record, signals=odd)
    assert (after.confirmations, after.trust) == ((), "documented")


def test_a_record_of_both_genders_is_offered_for_both(shipped):
    found = mates(shipped.connector("xlr-5-female"), shipped.connectors())
    assert [it.id for it in found] == ["xlr-5-male"]

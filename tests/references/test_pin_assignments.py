"""Pinout records against published assignments; the source stands beside each check."""

import pytest

from planner.model.pinout import PinoutRecord

# AES59-2012, analogue, 25-way D: + / - / ground of each circuit, as two secondary pages print it.
AES59 = {
    1: (24, 12, 25),
    2: (10, 23, 11),
    3: (21, 9, 22),
    4: (7, 20, 8),
    5: (18, 6, 19),
    6: (4, 17, 5),
    7: (15, 3, 16),
    8: (1, 14, 2),
}


def carried(record: PinoutRecord) -> dict[str, str]:
    """Return the signals of each contact that carries any, as one text."""
    return {contact: " ".join(signals) for contact, signals in record.signals.items() if signals}


def circuits(record: PinoutRecord) -> dict[int, tuple[int, int]]:
    """Return the + and - pins of each numbered circuit."""
    pin_of = {signal: int(pin) for pin, signals in record.signals.items() for signal in signals}
    return {n: (pin_of[f"{n}+"], pin_of[f"{n}-"]) for n in range(1, 9)}


def test_aes59_every_pin(shipped):
    want = {}
    for channel, (plus, minus, ground) in AES59.items():
        want |= {str(plus): f"{channel}+", str(minus): f"{channel}-", str(ground): "shield"}
    assert carried(shipped.pinout("aes59-analogue")) == want
    assert len(want) == 24


def test_aes59_uses_each_pin_once_and_leaves_13(shipped):
    pins = [pin for row in AES59.values() for pin in row]
    assert sorted(pins) == [n for n in range(1, 26) if n != 13]
    assert "13" not in shipped.pinout("aes59-analogue").signals


def test_aes59_channel_k_plus_2_is_channel_k_less_3(shipped):
    record = circuits(shipped.pinout("aes59-analogue"))
    for k in range(1, 7):
        assert record[k + 2] == tuple(pin - 3 for pin in record[k])
        assert AES59[k + 2] == tuple(pin - 3 for pin in AES59[k])


def test_aes59_fits_both_genders(shipped):
    assert set(shipped.pinout("aes59-analogue").fits) == {"dsub-25-male", "dsub-25-female"}


@pytest.mark.parametrize(
    ("record_id", "want"),
    [
        # AES14, IEC 60268-12, as quoted: 1 shield, 2 plus, 3 minus; so too one of a pair.
        ("xlr-3-line", {"1": "shield", "2": "+", "3": "-"}),
        ("xlr-3-headphone-channel", {"1": "shield", "2": "+", "3": "-"}),
        # Common practice, no standard; secondary pages agree.
        ("xlr-4-headphone", {"1": "L+", "2": "L-", "3": "R+", "4": "R-"}),
        # From memory.
        ("xlr-5-stereo-microphone", {"1": "shield", "2": "L+", "3": "L-", "4": "R+", "5": "R-"}),
        # IEC 60603-11 plugs, as quoted: tip left, ring right, sleeve return; balanced mono.
        ("trs-stereo-output", {"T": "L+", "R": "R+", "S": "L- R-"}),
        ("trs-stereo-input", {"T": "L+", "R": "R+", "S": "L- R-"}),
        ("trs-balanced-line", {"T": "+", "R": "-", "S": "shield"}),
        # Two orders in use; ITU-T P.381 names two, as quoted, its text not read.
        ("trrs-headset-sleeve-mic", {"T": "L+", "R1": "R+", "R2": "L- R- mic-", "S": "mic+"}),
        ("trrs-headset-ring-2-mic", {"T": "L+", "R1": "R+", "R2": "mic+", "S": "L- R- mic-"}),
        # JEITA RC-8141, as quoted.
        (
            "jack-4.4-balanced-headphone",
            {"T": "L+", "R1": "L-", "R2": "R+", "R3": "R-", "S": "shield"},
        ),
        # Common practice; secondary pages agree.
        ("jack-2.5-balanced-headphone", {"T": "R-", "R1": "R+", "R2": "L+", "S": "L-"}),
        ("cup-two-pole", {"T": "+", "S": "-"}),
        ("cup-three-pole", {"T": "+", "S": "-"}),
        ("phono-output", {"1": "+", "2": "-"}),
        # DIN 41524, IEC 60130-9, amplifier side, as quoted: 1 and 4 out, 3 and 5 in, 2 ground.
        ("din-5-amplifier-output", {"1": "L+", "4": "R+", "2": "L- R-"}),
        ("din-5-amplifier-input", {"3": "L+", "5": "R+", "2": "L- R-"}),
    ],
)
def test_assignment(shipped, record_id, want):
    assert carried(shipped.pinout(record_id)) == want


def test_the_2_5_is_not_the_4_4_cut_short(shipped):
    """Secondary pages print right first on the 2.5 and left first on the 4.4."""
    small, large = (
        [signals[0] for signals in shipped.pinout(record_id).signals.values()]
        for record_id in ("jack-2.5-balanced-headphone", "jack-4.4-balanced-headphone")
    )
    assert [signal[0] for signal in small] == ["R", "R", "L", "L"]
    assert [signal[0] for signal in large[:4]] == ["L", "L", "R", "R"]


def disagreeing(shipped, connector_id, use):
    records = [r for r in shipped.pinouts() if connector_id in r.fits and r.use == use]
    return len({tuple(sorted(carried(record).items())) for record in records})


@pytest.mark.parametrize(
    ("connector_id", "use"),
    [
        ("jack-3.5-four-pole", "mobile headset socket"),
        ("mini-xlr-3-female", "headphone inlet, both channels"),
        ("mini-xlr-4-female", "headphone cup, one channel"),
        ("jack-2.5-four-pole", "balanced headphone output"),
    ],
)
def test_tables_that_disagree_are_kept_side_by_side(shipped, connector_id, use):
    assert disagreeing(shipped, connector_id, use) == 2


@pytest.mark.parametrize(
    ("connector_id", "use"),
    [
        ("jack-4.4-five-pole", "balanced headphone output"),
        ("xlr-3-male", "balanced line"),
        ("dsub-25-female", "eight balanced circuits"),
        ("jack-3.5-two-pole-slim", "headphone cup, one channel"),
    ],
)
def test_settled_uses_have_one_order(shipped, connector_id, use):
    assert disagreeing(shipped, connector_id, use) == 1


def test_only_standards_and_measured_parts_are_confirmed(shipped):
    assert len(shipped.pinouts()) >= 36
    for record in shipped.pinouts():
        assert record.confirmed == (record.source.kind in {"standard", "measured"}), record.id
        # That something is common practice says all that there is to say of some.
        assert record.source.reference or record.source.kind == "practice", record.id


def test_a_reference_does_not_say_again_what_kind_of_source_it_is(shipped):
    """The sheet prints `Letter: from the maker`: kind first, then the reference."""
    again = {
        "letter": "letter",
        "drawing": "drawing ",
        "practice": "practice",
        "memory": "from memory:",
        "hearsay": "hearsay",
        "measured": "measured",
    }
    doubled = [
        it.id
        for it in shipped.pinouts()
        if it.source.kind in again and again[it.source.kind] in it.source.reference.lower()
    ]
    assert doubled == []


def test_titles_fit_the_shelf_and_differ(shipped):
    """About 24 characters stand in two lines beside a pictogram of the shelf (our own figure)."""
    for records in (shipped.pinouts(), shipped.connectors()):
        titles = [it.title for it in records]
        assert [it for it in titles if len(it) > 24] == []
        assert len(set(titles)) == len(titles)


def test_a_record_from_a_standard_says_as_quoted(shipped):
    """No text of a standard was read: pages that quote them were."""
    for record in shipped.pinouts():
        if record.source.kind == "standard":
            assert "as quoted" in record.source.reference
            assert record.trust == "documented"


def test_makers_are_only_on_records_of_their_own(shipped):
    for record in shipped.pinouts():
        if record.source.kind in {"standard", "practice", "memory"}:
            assert record.maker == ""


def test_every_connector_has_a_record(shipped):
    without = [c.id for c in shipped.connectors() if not shipped.pinouts_for(c.id)]
    assert without == []


def test_two_driven_minus_legs_never_share_a_contact(shipped):
    """Joining two driven minus legs can destroy an amplifier: no record may ask for it."""
    for record in shipped.pinouts():
        if record.drive == "driven-balanced":
            minus = [sum(s.endswith("-") for s in signals) for signals in record.signals.values()]
            assert max(minus) == 1

"""From an identified sample to signals: what is known, what is asked, what the answers give."""

import pytest

from planner.model.pinout import PinoutRecord, Source
from planner.problem import InputError
from planner.proving.identifying import identify
from planner.proving.identifying.signals import answered, as_signals, basis_line
from tests.proving.identifying.devices import sample

HEADPHONE = {("T", "S"): 32.4, ("R", "S"): 31.8, ("T", "R"): 64.0}
LEFT_RIGHT = {"ear-1": "L", "plus-1": "T", "ear-2": "R", "plus-2": "R"}


def asked(found):
    return {question.key: question for question in as_signals(found).questions}


def record(signals):
    return PinoutRecord(
        id="odalisk-inlet",
        title="Odalisk headphone inlet, measured",
        fits=("jack-3.5-three-pole",),
        use="headphone inlet",
        drive="load",
        signals=signals,
        source=Source(kind="measured", recorded_by="Saltmarsh Playhouse bench"),
    )


def test_what_is_known_and_what_is_asked_of_a_common_return():
    found = identify(sample(HEADPHONE))
    proposal = as_signals(found)
    assert proposal.obstacles == ()
    assert proposal.known["T"] == "driver 1, 32 Ω"
    assert proposal.known["S"].startswith("common return of driver 1")
    assert list(asked(found)) == ["ear-1", "plus-1", "ear-2", "plus-2"]
    plus = asked(found)["plus-1"]
    assert "Touch the cell's plus to T and its minus to S, and watch the cone." in plus.steps
    assert "brief touch" in plus.caution


def test_the_answers_make_a_valid_record():
    signals = answered(identify(sample(HEADPHONE)), LEFT_RIGHT)
    assert signals == {"T": ("L+",), "S": ("L-", "R-"), "R": ("R+",)}
    assert record(signals).confirmed


def test_a_reversed_driver_has_its_plus_on_the_return():
    signals = answered(identify(sample(HEADPHONE)), LEFT_RIGHT | {"plus-2": "S"})
    assert signals == {"T": ("L+",), "S": ("L-", "R+"), "R": ("R-",)}


def test_two_drivers_apart():
    found = identify(sample({("1", "2"): 300, ("3", "4"): 301, ("2", "3"): None}))
    answers = {"ear-1": "R", "plus-1": "2", "ear-2": "L", "plus-2": "3"}
    assert answered(found, answers) == {
        "1": ("R-",), "2": ("R+",), "3": ("L+",), "4": ("L-",),
    }  # fmt: skip


def test_one_driver_may_leave_its_channel_open():
    found = identify(sample({("T", "S"): 64.0, ("S", "T"): 64.2}))
    signals = answered(found, {"ear-1": "one", "plus-1": "T"})
    assert signals == {"T": ("+",), "S": ("-",)}
    assert record(signals).one_channel


def test_a_shell_on_the_return_is_asked_about():
    found = identify(sample({**HEADPHONE, ("G", "S"): 0.3}, shells=("G",)))
    assert [value for value, _ in asked(found)["part-G"].choices] == ["return", "shield", "chassis"]
    signals = answered(found, LEFT_RIGHT | {"part-G": "chassis", "part-S": "return"})
    assert (signals["G"], signals["S"]) == (("chassis",), ("L-", "R-"))


def test_a_floating_shell_may_carry_nothing():
    found = identify(sample({**HEADPHONE, ("G", "S"): None}, shells=("G",)))
    assert answered(found, LEFT_RIGHT | {"part-G": "nothing"})["G"] == ()
    assert answered(found, LEFT_RIGHT | {"part-G": "shield"})["G"] == ("shield",)


def test_a_headset_has_its_microphone_on_the_return():
    found = identify(sample({**HEADPHONE, ("M", "S"): 900.0, ("S", "M"): 1700.0}))
    signals = answered(found, LEFT_RIGHT)
    assert (signals["M"], signals["S"]) == (("mic+",), ("L-", "R-", "mic-"))
    record(signals)


def test_missing_and_wrong_answers_are_all_told():
    found = identify(sample(HEADPHONE))
    with pytest.raises(InputError) as caught:
        answered(found, {"ear-1": "left", "plus-1": "T", "plus-2": "R", "eer-2": "R"})
    told = [str(problem) for problem in caught.value.problems]
    assert len(told) == 3
    assert "Did you mean 'ear-2'?" in told[0]
    assert "'left' is no answer to: Which channel is the driver between T and S?" in told[1]
    assert "not answered: Which channel is the driver between R and S?" in told[2]


def test_two_drivers_are_not_one_channel():
    with pytest.raises(InputError, match="two drivers are said to be L"):
        answered(identify(sample(HEADPHONE)), LEFT_RIGHT | {"ear-2": "L"})


def test_a_return_is_left_on_some_contact():
    found = identify(sample({**HEADPHONE, ("G", "S"): 0.3}, shells=("G",)))
    with pytest.raises(InputError, match="none of S and G is left to carry the return"):
        answered(found, LEFT_RIGHT | {"part-G": "shield", "part-S": "shield"})


@pytest.mark.parametrize(
    ("readings", "told"),
    [
        ({("a", "b"): None}, "Nothing was found"),
        ({("a", "b"): 64, ("a", "c"): 64, ("b", "c"): 64}, "brought out nowhere"),
        ({("a", "b"): 0.1, ("b", "c"): 0.1, ("a", "c"): None}, "do not say yet"),
    ],
)
def test_what_can_make_no_record_says_why(readings, told):
    found = identify(sample(readings))
    assert told in as_signals(found).obstacles[0]
    with pytest.raises(InputError):
        answered(found, {})


def test_the_line_for_the_source_fits_one():
    readings = sample(HEADPHONE)
    line = basis_line(readings, identify(readings))
    assert line.startswith("3 pairs of 3 contacts read with a meter (±1 % ±0.1 Ω)")
    assert Source(kind="measured", reference=line).reference == line

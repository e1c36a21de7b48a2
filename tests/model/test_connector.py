"""The shell of a connector: which sizes a round one and a D need."""

import pytest
from pydantic import ValidationError

from planner.model.connector import Shell


def refusal(**sizes):
    with pytest.raises(ValidationError) as caught:
        Shell(**sizes)
    return [(error["loc"], error["msg"].split(", ")[-1]) for error in caught.value.errors()]


@pytest.mark.parametrize("bore_mm", [0, -7])
def test_a_round_shell_has_a_bore_above_zero(bore_mm):
    assert refusal(bore_mm=bore_mm) == [(("bore_mm",), "Input should be greater than 0")]


def test_a_round_shell_needs_its_bore():
    assert refusal() == [((), "a round shell needs bore_mm above zero")]


def test_a_d_shell_needs_no_bore_and_is_read_again_as_it_is():
    shell = Shell(shape="d", width_mm=39, height_mm=8.4)
    assert shell.bore_mm == 0
    assert Shell.model_validate(shell.model_dump()) == shell == shell.evolve(width_mm=39)


def test_a_d_shell_with_a_bore_below_zero_is_refused():
    said = [(("bore_mm",), "Input should be greater than 0")]
    assert refusal(shape="d", width_mm=39, height_mm=8.4, bore_mm=-1) == said


def test_a_d_shell_needs_both_its_sizes():
    said = [((), "a D shell needs width_mm and height_mm above zero")]
    assert refusal(shape="d", width_mm=39) == said


@pytest.mark.parametrize(
    ("shell", "narrowest_mm"),
    [
        (Shell(bore_mm=7), 7),
        (Shell(shape="d", width_mm=39, height_mm=8.4), 8.4),
        (Shell(shape="d", width_mm=5, height_mm=8.4, bore_mm=2), 5),
    ],
)
def test_the_narrowest_measure_of_a_shell(shell, narrowest_mm):
    assert shell.narrowest_mm == narrowest_mm

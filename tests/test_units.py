"""Figures as they are printed and as they are read."""

import pytest

from planner.units import MINUS, frequency_text, ohm_text, parse_figure, significant


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (0, "0"),
        (0.0699033, "0.0699"),
        (0.1, "0.1"),
        (0.99996, "1"),
        (9.996, "10"),
        (133.914, "134"),
        (8559.7, "8560"),
        (-42.2114, f"{MINUS}42.2"),
    ],
)
def test_three_significant_digits(value, text):
    assert significant(value) == text


def test_units():
    assert ohm_text(0.25) == "0.25 \u03a9"
    assert [frequency_text(it) for it in (50, 15_915, 7.6e6)] == ["50 Hz", "15.9 kHz", "7.6 MHz"]


@pytest.mark.parametrize("text", ["-40", f"{MINUS}40 dB", "-40dB", " -40,0 DB "])
def test_a_figure_is_read_with_or_without_its_unit(text):
    assert parse_figure(text, "dB") == -40


@pytest.mark.parametrize("text", ["", "dB", "4 0", "1e3", "40 ohm", "nan"])
def test_what_is_no_figure_is_refused(text):
    with pytest.raises(ValueError, match="is not a number in dB"):
        parse_figure(text, "dB")

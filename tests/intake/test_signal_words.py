import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.intake.signal_words import signals_from
from planner.model.signals import CHANNELS, signals_text, sort_key
from planner.problem import EditRefused

ALL = sorted(
    [f"{channel}{leg}" for channel in CHANNELS for leg in "+-"] + ["+", "-", "shield", "chassis"],
    key=sort_key,
)


@given(st.sets(st.sampled_from(ALL), min_size=1, max_size=5))
def test_what_is_shown_can_be_typed(signals):
    shown = signals_text(signals)

    assert set(signals_from(shown)) == signals


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("L+", ("L+",)),
        ("left plus", ("L+",)),
        ("Right \u2212", ("R-",)),
        ("return", ("L-", "R-")),
        ("screen", ("shield",)),
        ("microphone return", ("mic-",)),
        ("left return, right return", ("L-", "R-")),
        ("l- and r-", ("L-", "R-")),
        ("3+, 3-", ("3+", "3-")),
        ("unused", ()),
        ("", ()),
        ("hot", ("+",)),
    ],
)
def test_words_of_a_letter(typed, meant):
    assert signals_from(typed) == meant


@pytest.mark.parametrize(
    ("typed", "reason"),
    [("left", "which leg"), ("sheild", "no signal"), ("9+", "no signal"), ("L+ x", "no signal")],
)
def test_what_is_no_signal_is_refused_with_a_mend(typed, reason):
    with pytest.raises(EditRefused, match=reason) as refused:
        signals_from(typed)
    assert refused.value.mend

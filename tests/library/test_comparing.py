"""Two definitions compared, figure by figure."""

import pytest

from planner.library.comparing import Difference, differences
from planner.problem import InputError
from tests.files.samples import records


def test_the_same_but_for_the_id(tmp_path):
    part = records(tmp_path)["part"]
    assert differences(part, part.evolve(id="other", revision=2)) == ()


def test_figures_signals_and_missing_keys_are_told(tmp_path):
    pinout = records(tmp_path)["pinout"]
    other = pinout.evolve(
        use="line", signals={"T": ("L+",), "R": ("R+", "mic+")}, source={"kind": "memory"}
    )
    assert differences(pinout, other) == (
        Difference("use", "headphone", "line"),
        Difference("signals.R", "R+", "R+ mic+"),
        Difference("signals.S", "L- R-", ""),
        Difference("source.kind", "letter", "memory"),
        Difference("source.reference", "letter from the maker", ""),
        Difference("source.date", "1996-03-04", ""),
        Difference("trust", "documented", "hearsay"),
    )


def test_contacts_are_compared_by_their_ids_not_their_order(tmp_path):
    connector = records(tmp_path)["connector"]
    turned = connector.evolve(contacts=tuple(reversed(connector.contacts)))
    assert differences(connector, turned) == ()
    fewer = connector.evolve(contacts=connector.contacts[:2])
    assert Difference("contacts[S]", "there", "") in differences(connector, fewer)


def test_two_kinds_are_not_compared(tmp_path):
    made = records(tmp_path)
    with pytest.raises(InputError, match="bench-boot and bench-two are not of one kind"):
        differences(made["part"], made["cable"])

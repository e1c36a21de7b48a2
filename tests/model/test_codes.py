"""Codes tell parts apart even where colours repeat."""

from planner.model.cable import Shield
from planner.model.codes import told_apart
from tests.drawing.samples import BRAID, core


def test_a_code_alone_is_the_letters():
    assert told_apart([core("RD"), core("WH", "BK"), BRAID]) == ("RD", "WHBK", "SH")
    assert told_apart([BRAID], shield="SHIELD") == ("SHIELD",)


def test_a_code_that_repeats_gets_its_group_or_name():
    pair = core("WH").evolve(group="2"), core("WH").evolve(id="w9")
    assert told_apart(pair) == ("WH 2", "WH w9")
    foil = Shield(id="1s", kind="foil", tail_mm=0.5)
    assert told_apart([BRAID, foil], shield="SHIELD") == ("SH SH", "SH 1s")

"""The sheet against kept pictures, compared as canonical XML."""

import re
from xml.etree import ElementTree as ET

import pytest

from tests.sheet.make_golden import CASES, GOLDEN, sheet_of


def canonical(data):
    return ET.canonicalize(data.decode("utf-8"), strip_text=True)


@pytest.mark.parametrize("name", sorted(CASES))
def test_the_sheet_is_as_kept(name):
    assert canonical(sheet_of(name)) == canonical((GOLDEN / name).read_bytes())


@pytest.mark.parametrize("name", sorted(CASES))
def test_the_comparison_fails_on_a_change(name):
    kept = (GOLDEN / name).read_bytes()
    for old, new in ((b"WHBK", b"WHRD"), (b'r="', b'r="1'), (b"<text ", b"<text id='a' ")):
        changed = kept.replace(old, new, 1)
        assert changed != kept
        assert canonical(sheet_of(name)) != canonical(changed)


def test_the_comparison_does_not_mind_the_order_of_attributes():
    kept = (GOLDEN / "clear.svg").read_bytes()
    turned = re.sub(rb'(cx="[^"]*") (cy="[^"]*")', rb"\2 \1", kept)
    assert turned != kept
    assert canonical(turned) == canonical(kept)

"""What every page carries at its head and foot: whether it may be soldered, digest, QR code."""

import hashlib
from dataclasses import replace

import segno

from planner.drawing.primitives import Path, Text
from planner.files.plans import plan_bytes
from planner.sheet.head import heading, statuses
from planner.sheet.leaf import Making
from planner.sheet.page import sheet_pages
from planner.sheet.qr import MODULES, QUIET, qr_code
from tests.sheet.collisions import corners
from tests.sheet.plain_plan import CAUTION, STOP, plain_plan

OPEN = replace(CAUTION, code="leads-cross")


def test_the_digest_is_the_sha_256_of_the_plan_as_it_is_written():
    plan = plain_plan()
    figures = hashlib.sha256(plan_bytes(plan)).hexdigest()
    said = heading(Making(plan, ()))
    assert said.figures == figures
    assert said.digest == f"{figures[:4]} {figures[4:8]}"


def test_the_status_counts_stops_before_anything_else():
    assert statuses(Making(plain_plan(), ())) == ("Clear to solder",)
    both = Making(plain_plan(), (CAUTION, OPEN))
    assert statuses(both) == (
        "Clear to solder. 1 caution accepted. 1 caution open",
        "Clear to solder. 2 cautions",
        "Clear to solder",
    )
    two = Making(plain_plan(), (STOP, STOP, CAUTION))
    assert statuses(two) == ("NOT CLEAR TO SOLDER. 2 stops", "NOT CLEAR TO SOLDER")
    assert statuses(replace(two, language="de"))[0] == "NICHT LÖTEN. 2 Stopps"


def cells(path, side):
    """Read back which modules a path of bars covers."""
    found = set()
    for place in range(0, len(path.commands), 5):
        (left, top), (right, bottom) = path.commands[place][1], path.commands[place + 2][1]
        row = round(top / side)
        assert round(bottom / side) == row + 1
        found |= {(row, column) for column in range(round(left / side), round(right / side))}
    return found


def test_the_code_is_drawn_module_by_module():
    figures = "0123456789abcdef" * 4
    (path,) = qr_code(figures, (0, 0), MODULES * 10)
    code = segno.make(f"SHA256:{figures.upper()}", error="m", version=4, boost_error=False)
    dark = {(y, x) for y, row in enumerate(code.matrix) for x, cell in enumerate(row) if cell}
    assert cells(path, 10) == dark


def test_the_code_has_its_finder_patterns_and_its_level():
    # ISO/IEC 18004: finders of 7 by 7 in three corners; the format's first two bits, unmasked with
    # 101010000010010, name the level: 00 is M (from memory).
    dark = cells(qr_code("a" * 64, (0, 0), MODULES * 10)[0], 10)
    for top, left in ((0, 0), (0, MODULES - 7), (MODULES - 7, 0)):
        ring = {
            (top + y, left + x) for y in range(7) for x in range(7) if 6 in {x, y} or 0 in {x, y}
        }
        core = {(top + y, left + x) for y in range(2, 5) for x in range(2, 5)}
        square = {(top + y, left + x) for y in range(7) for x in range(7)}
        assert dark & square == ring | core
    bits = [(8, column) in dark for column in (0, 1)]
    assert [bit ^ mask for bit, mask in zip(bits, (True, False), strict=True)] == [False, False]


def test_the_code_keeps_four_modules_of_white_on_every_page():
    for paper in ("a4", "letter"):
        for page in sheet_pages(plain_plan(), (CAUTION,), paper=paper, date="25 November 2026"):
            (code,) = (i for i in page.items if isinstance(i, Path) and len(i.commands) > 500)
            xs = [x for _, point in code.commands if point for x in point[:1]]
            ys = [y for _, point in code.commands if point for y in point[1:]]
            white = QUIET * (max(xs) - min(xs)) / MODULES
            box = (min(xs) - white, min(ys) - white, max(xs) + white, max(ys) + white)
            assert min(box[:2]) > 0
            assert box[2] < page.width
            for item in page.items:
                if isinstance(item, Text):
                    assert not any(
                        box[0] < x < box[2] and box[1] < y < box[3] for x, y in corners(item)
                    )

"""The bar under the head: passed, or in white on black that this is no certificate."""

from planner.drawing.looks import PRINT
from planner.drawing.marks import MarkKind, mark
from planner.drawing.primitives import DrawList, Rect, Style, centred_baseline
from planner.files.plans import plan_digest
from planner.sheet.block import Block
from planner.sheet.certificate.case import Case
from planner.sheet.end_page.rich import rich_lines
from planner.sheet.head import grouped
from planner.sheet.lettering import BIG, INK, PAPER, RULE, say
from planner.sheet.paper import LIVE_WIDTH

_TOP, _HEIGHT = 3000.0, 950.0
_MARK, _INDENT = 330.0, 900.0


def banner(case: Case) -> DrawList:
    """Draw the verdict across the page."""
    dark, left, middle = not case.passed, case.making.paper.left, _TOP + _HEIGHT / 2
    ground = Style(fill=INK) if dark else Style(fill=PAPER, stroke=INK, width=RULE)
    kind: MarkKind = "octagon" if dark else "clear"
    to_line = case.passed and case.judgement.stop is not None
    key = "to_line" if to_line else case.judgement.verdict
    text = case.words(f"certificate.banner_{key}")
    at = (left + 2 * _MARK + 500, centred_baseline(middle, BIG))
    return (
        Rect((left, _TOP), LIVE_WIDTH, _HEIGHT, ground),
        *mark(kind, (left + 250 + _MARK, middle), _MARK, PRINT),
        say(at, text, BIG, bold=True, colour=PAPER if dark else INK),
    )


def stale_block(case: Case) -> Block:
    """Say in a frame that the plan is another by now, and which one the unit was proved to."""
    plan, record = case.making.plan, case.record
    text = case.words(
        "certificate.older",
        revision=record.plan_revision,
        digest=grouped(record.plan_digest),
        now=plan.revision,
        now_digest=grouped(plan_digest(plan)),
    )
    said, used = rich_lines((_INDENT, 520), text, LIVE_WIDTH - _INDENT - 200)
    height = used + 260
    frame = Rect((0, 0), LIVE_WIDTH, height, Style(fill=PAPER, stroke=INK, width=RULE))
    return Block((frame, *mark("caution", (450, 450), 290, PRINT), *said), height, full=True)

"""The signature under a certificate; under anything else, that there is none to give."""

from planner.sheet.block import Block
from planner.sheet.certificate.case import Case
from planner.sheet.end_page.rich import rich_lines
from planner.sheet.lettering import THIN, TITLE_HEIGHT, panel_title, rule, say
from planner.sheet.paper import LIVE_WIDTH

_LINE = TITLE_HEIGHT + 1500.0
_SHARES = (("by", 0.0, 0.36), ("signature", 0.4, 0.76), ("date", 0.8, 1.0))


def sign_block(case: Case) -> Block:
    """Draw the line to sign on, or say that the unit is not to be signed for."""
    words = case.words
    title = panel_title(0, LIVE_WIDTH, 0, words("certificate.sign"))
    if not case.passed:
        said, used = rich_lines((0, TITLE_HEIGHT + 520), words("certificate.no_sign"), LIVE_WIDTH)
        return Block((*title, *said), TITLE_HEIGHT + 340 + used, full=True)
    items = [say((0, _LINE - 150), case.record.who, bold=True)] if case.record.who else []
    for key, start, _ in _SHARES:
        items.append(say((start * LIVE_WIDTH, _LINE + 460), words(f"certificate.{key}")))
    lines = [rule(start * LIVE_WIDTH, stop * LIVE_WIDTH, _LINE, THIN) for _, start, stop in _SHARES]
    return Block((*title, *items, *lines), _LINE + 600, full=True)

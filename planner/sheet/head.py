"""The head and foot of every page: what is built, whether it may be, order, digest, page."""

import hashlib
from collections.abc import Sequence
from dataclasses import dataclass

from planner.checks.acceptance import acceptance_of
from planner.checks.finding import Finding
from planner.drawing.metrics import clipped, text_width, wrapped
from planner.drawing.primitives import DrawList, Rect, Style, Text, centred_baseline
from planner.files.plans import plan_bytes
from planner.model.plan import Plan
from planner.sheet.lettering import BIG, BODY, HEAD, INK, PAPER, SMALL, TAB, THIN, rule, say
from planner.sheet.paper import Paper
from planner.units import length_text

_TOP, _HEIGHT = 800.0, 1960.0
_TAB_WIDTH = 3742.0
_LABELS, _VALUES = 13300.0, 14550.0


@dataclass(frozen=True, slots=True)
class Heading:
    """What the head and the foot say, the same on each page but for the page number."""

    title: str
    subtitle: str
    status: str
    order: str
    revision: str
    date: str
    digest: str


def heading(plan: Plan, findings: Sequence[Finding], date: str) -> Heading:
    """Gather what the head says."""
    return Heading(
        title=plan.title or "Lead without a title",
        subtitle=subtitle(plan),
        status=status(plan, findings),
        order=plan.order or "none",
        revision=str(plan.revision),
        date=date,
        digest=digest(plan),
    )


def digest(plan: Plan) -> str:
    """Return the first eight figures of the plan's SHA-256, in two groups."""
    figures = hashlib.sha256(plan_bytes(plan)).hexdigest()
    return f"{figures[:4]} {figures[4:8]}"


def subtitle(plan: Plan) -> str:
    """Say the shape: how many ends, and the lengths."""
    ends = len(plan.ends)
    lengths = [length_text(section.length_mm) for section in plan.sections]
    words = f"{ends} end{'s' if ends != 1 else ''}"
    if not lengths:
        return words
    each = list(dict.fromkeys(lengths))
    counted = [
        f"{lengths.count(one)} \u00d7 {one}" if lengths.count(one) > 1 else one for one in each
    ]
    return f"{words}; cable {', '.join(counted)}"


def status(plan: Plan, findings: Sequence[Finding]) -> str:
    """Say whether the lead may be soldered, and what is accepted or open."""
    stops = sum(finding.weight == "stop" for finding in findings)
    if stops:
        return f"NOT CLEAR TO SOLDER. {stops} stop{'s' if stops > 1 else ''}"
    cautions = [finding for finding in findings if finding.weight == "caution"]
    accepted = sum(acceptance_of(plan, finding) is not None for finding in cautions)
    left = len(cautions) - accepted
    words = ["Clear to solder"]
    if accepted:
        words.append(f"{accepted} caution{'s' if accepted > 1 else ''} accepted")
    if left:
        words.append(f"{left} caution{'s' if left > 1 else ''} open")
    return ". ".join(words)


def head(said: Heading, paper: Paper, page: int, pages: int) -> DrawList:
    """Draw the head of a page."""
    left, right = paper.left, paper.right
    tab = Rect((left, _TOP), _TAB_WIDTH, _HEIGHT, Style(fill=INK))
    middle = (left + _TAB_WIDTH / 2, centred_baseline(_TOP + _HEIGHT / 2, TAB))
    name = Text(middle, "LEAD", TAB, PAPER, bold=True, anchor="middle")
    x = left + _TAB_WIDTH + 400
    room = left + _LABELS - 300 - x
    facts = [
        ("Order", said.order),
        ("Revision", said.revision),
        *([("Date", said.date)] if said.date else []),
        ("Digest", said.digest),
        ("Page", f"{page} of {pages}"),
    ]
    pairs = []
    for place, (label, value) in enumerate(facts):
        base = 1050 + 425 * place
        pairs.append(say((left + _LABELS, base), label, SMALL))
        shown = clipped(value, BODY, right - left - _VALUES, bold=True)
        pairs.append(say((left + _VALUES, base), shown, bold=True))
    return (tab, name, *_title(said.title, x, room), *_lines(said, x, room), *pairs)


def _title(title: str, x: float, room: float) -> DrawList:
    """Set the title large on one line, or smaller on two."""
    if text_width(title, BIG, bold=True) <= room:
        return (say((x, 1310), title, BIG, bold=True),)
    first, *rest = wrapped(title, HEAD, room, bold=True)
    items = [say((x, 1080), first, HEAD, bold=True)]
    if rest:
        second = clipped(" ".join(rest), HEAD, room, bold=True)
        items.append(say((x, 1600), second, HEAD, bold=True))
    return tuple(items)


def _lines(said: Heading, x: float, room: float) -> DrawList:
    return (
        say((x, 2120), clipped(said.subtitle, BODY, room)),
        say((x, 2660), clipped(said.status, BODY, room, bold=True), bold=True),
    )


def foot(said: Heading, paper: Paper, page: int, pages: int) -> DrawList:
    """Draw the foot of a page."""
    base = paper.foot_line
    name = f"{clipped(said.order, SMALL, 3000)} rev {said.revision}"
    return (
        rule(paper.left, paper.right, paper.foot_rule, THIN),
        say((paper.left, base), "Cupwright bench sheet", SMALL),
        Text(
            (paper.width / 2, base),
            "Print at 100 %. Do not fit to the page.",
            SMALL,
            INK,
            bold=True,
            anchor="middle",
        ),
        say(
            (paper.right, base), f"{name} {said.digest} page {page} of {pages}", SMALL, anchor="end"
        ),
    )

"""The head and foot of every page: what is built, whether it may be, order, digest, page."""

from dataclasses import dataclass

from planner.checks.acceptance import acceptance_of
from planner.drawing.metrics import clipped, text_width, wrapped
from planner.drawing.primitives import DrawList, Rect, Style, Text, centred_baseline
from planner.files.plans import plan_digest
from planner.sheet.leaf import Leaf, Making
from planner.sheet.lettering import BIG, BODY, HEAD, INK, PAPER, SMALL, TAB, THIN, rule, say
from planner.sheet.paper import Paper
from planner.sheet.qr import MODULES, QUIET, qr_code
from planner.sheet.words import Words

_TOP, _HEIGHT = 800.0, 1960.0
_TAB_WIDTH, _MOST_TAB, _TAB_PADDING = 3600.0, 4700.0, 400.0
_LABELS, _VALUES = 13300.0, 14550.0
_QR_SIDE = MODULES * 55.0


@dataclass(frozen=True, slots=True)
class Heading:
    """What head and foot say, the same on each page; `figures` is the plan's whole SHA-256.

    `sheet` is what the foot calls the pages.
    """

    statuses: tuple[str, ...]
    order: str
    revision: str
    date: str
    figures: str
    sheet: str

    @property
    def digest(self) -> str:
        """The first eight figures of the SHA-256, in two groups."""
        return grouped(self.figures)


def grouped(figures: str) -> str:
    """Return the first eight figures of a SHA-256 in two groups, as the sheet prints it."""
    return f"{figures[:4]} {figures[4:8]}"


def heading(making: Making) -> Heading:
    """Gather what the head says."""
    plan, words = making.plan, making.words
    return Heading(
        statuses=statuses(making),
        order=plan.order or words("page.no_order"),
        revision=str(plan.revision),
        date=making.date,
        figures=plan_digest(plan),
        sheet=words("page.sheet"),
    )


def statuses(making: Making) -> tuple[str, ...]:
    """Say whether the lead may be soldered and what is accepted or open, the fullest way first."""
    words = making.words
    stops = sum(finding.weight == "stop" for finding in making.findings)
    if stops:
        short = words("page.not_clear")
        return (f"{short}. {words.counted('page.stops', stops)}", short)
    cautions = [finding for finding in making.findings if finding.weight == "caution"]
    accepted = sum(acceptance_of(making.plan, finding) is not None for finding in cautions)
    clear = words("page.clear")
    if not cautions:
        return (clear,)
    said = [words.counted("page.accepted", accepted)] if accepted else []
    if len(cautions) > accepted:
        said.append(words.counted("page.open", len(cautions) - accepted))
    count = words.counted("page.cautions", len(cautions))
    return (". ".join((clear, *said)), f"{clear}. {count}", clear)


def head(leaf: Leaf, said: Heading, making: Making, page: str) -> DrawList:
    """Draw the head of a page; `page` is such as `2 of 4`."""
    paper = making.paper
    tab, width = _tab(leaf.tab, paper)
    x = paper.left + width + 400
    room = paper.left + _LABELS - 300 - x
    return (
        *tab,
        *_title(leaf.title, x, room),
        say((x, 2120), clipped(leaf.subtitle, BODY, room)),
        say((x, 2660), _fitting(said.statuses, room), bold=True),
        *_facts(said, making.words, paper, page),
        *qr_code(said.figures, (paper.right - _QR_SIDE, _TOP), _QR_SIDE),
    )


def _tab(word: str, paper: Paper) -> tuple[DrawList, float]:
    """Draw the word white on black, smaller where it is long; return it and its width."""
    size = TAB
    while size > BIG and text_width(word, size, bold=True) > _MOST_TAB - 2 * _TAB_PADDING:
        size -= 25
    width = max(_TAB_WIDTH, text_width(word, size, bold=True) + 2 * _TAB_PADDING)
    ground = Rect((paper.left, _TOP), width, _HEIGHT, Style(fill=INK))
    middle = (paper.left + width / 2, centred_baseline(_TOP + _HEIGHT / 2, size))
    return (ground, Text(middle, word, size, PAPER, bold=True, anchor="middle")), width


def _fitting(forms: tuple[str, ...], room: float) -> str:
    """Return the first form that has room, else the last one, cut."""
    fits = (form for form in forms if text_width(form, BODY, bold=True) <= room)
    return next(fits, clipped(forms[-1], BODY, room, bold=True))


def _facts(said: Heading, words: Words, paper: Paper, page: str) -> DrawList:
    """Set labels and values in two columns, left of the white that the QR code needs."""
    facts = [
        (words("page.order"), said.order),
        (words("page.revision"), said.revision),
        *([(words("page.date"), said.date)] if said.date else []),
        (words("page.digest"), said.digest),
        (words("page.page"), page),
    ]
    room = paper.right - _QR_SIDE * (1 + QUIET / MODULES) - (paper.left + _VALUES)
    items = []
    for place, (label, value) in enumerate(facts):
        base = 1050 + 425 * place
        items.append(say((paper.left + _LABELS, base), label, SMALL))
        shown = clipped(value, BODY, room, bold=True)
        items.append(say((paper.left + _VALUES, base), shown, bold=True))
    return tuple(items)


def _title(title: str, x: float, room: float) -> DrawList:
    """Set the title large on one line, or smaller on two."""
    if text_width(title, BIG, bold=True) <= room:
        return (say((x, 1310), title, BIG, bold=True),)
    first, *rest = wrapped(title, HEAD, room, bold=True)
    if not rest:
        return (say((x, 1300), first, HEAD, bold=True),)
    second = clipped(" ".join(rest), HEAD, room, bold=True)
    return (say((x, 1080), first, HEAD, bold=True), say((x, 1600), second, HEAD, bold=True))


def foot(said: Heading, making: Making, page: str) -> DrawList:
    """Draw the foot of a page."""
    paper, words, base = making.paper, making.words, making.paper.foot_line
    printed = words("page.true_size")
    room = paper.right - paper.width / 2 - text_width(printed, SMALL, bold=True) / 2 - 150
    return (
        rule(paper.left, paper.right, paper.foot_rule, THIN),
        say((paper.left, base), said.sheet, SMALL),
        Text((paper.width / 2, base), printed, SMALL, INK, bold=True, anchor="middle"),
        say((paper.right, base), _run(said, words, page, room), SMALL, anchor="end"),
    )


def _run(said: Heading, words: Words, page: str, room: float) -> str:
    """Say order, revision, digest and page; what of a long order there is no room for is cut."""
    rest = {"revision": said.revision, "digest": said.digest, "page": page}
    used = text_width(words("page.foot", order="", **rest), SMALL)
    return words("page.foot", order=clipped(said.order, SMALL, max(room - used, 600)), **rest)

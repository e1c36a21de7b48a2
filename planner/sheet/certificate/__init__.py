"""The pages of one unit: a certificate where it passed, else a record that says it is none."""

from collections.abc import Iterator, Sequence

from planner.drawing.primitives import DrawList
from planner.model.plan import Plan
from planner.proving.units import UnitRecord
from planner.sheet.block import Block, flow
from planner.sheet.certificate.apart import apart_blocks
from planner.sheet.certificate.banner import banner, stale_block
from planner.sheet.certificate.case import Case
from planner.sheet.certificate.joined import joined_blocks
from planner.sheet.certificate.log import log_blocks
from planner.sheet.certificate.proved import missing_blocks, proved_block, short_block
from planner.sheet.certificate.sign import sign_block
from planner.sheet.head import Heading, foot, head
from planner.sheet.leaf import Leaf, Making
from planner.sheet.page import Page
from planner.sheet.paper import PaperName
from planner.sheet.words import Language


def certificate_pages(
    plan: Plan,
    record: UnitRecord,
    *,
    earlier: Sequence[UnitRecord] = (),
    spoilt: Sequence[str] = (),
    paper: PaperName = "a4",
    language: Language = "en",
) -> tuple[Page, ...]:
    """Draw the pages of a unit; `earlier` are its records before, the oldest first.

    `spoilt` are the digests of attachments whose copies are gone or changed. Head and QR code carry
    the digest of the plan that the unit was proved to.
    """
    making = Making(plan, (), paper, language=language)
    case = Case(making, record, tuple(earlier), frozenset(spoilt))
    said = _heading(case)
    bottoms = (making.paper.body_bottom, making.paper.body_bottom)
    bodies = tuple(flow(tuple(_blocks(case)), making.paper, bottoms))
    return tuple(_page(case, said, body, place, len(bodies)) for place, body in enumerate(bodies))


def _page(case: Case, said: Heading, body: DrawList, place: int, count: int) -> Page:
    making, words = case.making, case.words
    leaf = Leaf(
        words("certificate.tab", number=case.record.number),
        words("certificate.title" if case.passed else "certificate.title_none"),
        making.plan.title or words("page.untitled"),
        "",
        body,
    )
    number = words("page.page_of", page=place + 1, pages=count)
    items = (*head(leaf, said, making, number), *banner(case), *body, *foot(said, making, number))
    return Page(items, making.paper.width, making.paper.height)


def _heading(case: Case) -> Heading:
    words, record = case.words, case.record
    return Heading(
        statuses=(words("certificate.older_short"),) if case.stale else (words("certificate.to"),),
        order=case.making.plan.order or words("page.no_order"),
        revision=str(record.plan_revision),
        date=case.day(),
        figures=record.plan_digest,
        sheet=words("certificate.sheet"),
    )


def _blocks(case: Case) -> Iterator[Block]:
    paper = case.making.paper
    room = paper.body_bottom - paper.body_top
    if case.stale:
        yield stale_block(case)
    yield proved_block(case)
    yield short_block(case)
    yield from missing_blocks(case, room)
    yield from joined_blocks(case, room)
    yield from apart_blocks(case, room)
    yield from log_blocks(case, room)
    yield sign_block(case)

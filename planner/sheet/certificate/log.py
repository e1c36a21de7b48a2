"""What happened to the unit besides: bent, heard, mended, remarked on, attached, read before."""

from collections.abc import Iterator, Sequence

from planner.markup import as_it_is
from planner.sheet.block import Block
from planner.sheet.certificate.case import Case
from planner.sheet.end_page.rich import rich_lines
from planner.sheet.head import grouped
from planner.sheet.paper import HALF_WIDTH
from planner.sheet.stack import Part, stacked

_MOST = 60  # entries of one kind on paper; the file beside the plan has all


def log_blocks(case: Case, room: float) -> Iterator[Block]:
    """Yield a panel for each kind of entry of which there are any."""
    for key, texts in (
        ("wiggle", _wiggle(case)),
        ("listening", _listening(case)),
        ("rework", _rework(case)),
        ("earlier", _earlier(case)),
        ("remarks", _remarks(case)),
        ("attached", _attached(case)),
    ):
        yield from _panel(case, f"certificate.{key}", list(texts), room)


def _panel(case: Case, key: str, texts: Sequence[str], room: float) -> Iterator[Block]:
    words = case.words
    parts = [_part(text) for text in texts[:_MOST]]
    if len(texts) > _MOST:
        parts.append(_part(words("certificate.more", count=len(texts) - _MOST)))
    title = words(key)
    yield from stacked(title, parts, room=room, goes_on=words("page.goes_on", title=title))


def _part(text: str) -> Part:
    said, used = rich_lines((0, 380), text, HALF_WIDTH)
    return said, used + 110


def _noted(text: str, note: str) -> str:
    return f"{text} {as_it_is(note)}" if note else text


def _wiggle(case: Case) -> Iterator[str]:
    for entry in case.record.wiggle:
        key, at = f"certificate.wiggle_{entry.state}", case.moment(entry.at)
        yield _noted(case.words(key, end=as_it_is(entry.end), at=at), entry.note)


def _listening(case: Case) -> Iterator[str]:
    words = case.words
    for entry in case.record.listening:
        tone = words(f"certificate.tone_{entry.tone}")
        yield _noted(words(f"certificate.heard_{entry.heard}", tone=tone), entry.note)


def _rework(case: Case) -> Iterator[str]:
    for entry in case.record.rework:
        at = f"{case.moment(entry.at)}, {entry.who}" if entry.who else case.moment(entry.at)
        found, done = as_it_is(entry.found), as_it_is(entry.done)
        yield case.words("certificate.reworked", at=as_it_is(at), found=found, done=done or "?")


def _earlier(case: Case) -> Iterator[str]:
    words = case.words
    for record in case.earlier:
        verdict = words(f"certificate.verdict_{record.verdict}")
        at = f"{case.moment(record.at)}, {record.who}" if record.who else case.moment(record.at)
        yield words(
            "certificate.was", at=as_it_is(at), verdict=verdict, revision=record.plan_revision
        )


def _remarks(case: Case) -> Iterator[str]:
    yield from (as_it_is(line) for line in case.record.remarks.splitlines() if line.strip())


def _attached(case: Case) -> Iterator[str]:
    for attachment in case.record.attachments:
        text = case.words(
            "certificate.file", name=as_it_is(attachment.name), digest=grouped(attachment.digest)
        )
        wrong = attachment.digest in case.spoilt
        yield f"{text} {case.words('certificate.file_spoilt')}" if wrong else text

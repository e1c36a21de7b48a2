"""What happened to the unit besides: bent, heard, mended, remarked on, attached, read before."""

import textwrap
from collections.abc import Iterator, Sequence

from planner.drawing.metrics import wrapped
from planner.markup import as_it_is
from planner.sheet.block import Block
from planner.sheet.certificate.case import Case
from planner.sheet.end_page.rich import rich_lines
from planner.sheet.head import grouped
from planner.sheet.lettering import BODY
from planner.sheet.paper import HALF_WIDTH
from planner.sheet.stack import Part, stacked

_MOST_CHARACTERS = 600
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
    parts = [_part(piece) for text in texts[:_MOST] for piece in _pieces(text)]
    if len(texts) > _MOST:
        parts.append(_part(words("certificate.more", count=len(texts) - _MOST)))
    title = words(key)
    yield from stacked(title, parts, room=room, goes_on=words("page.goes_on", title=title))


def _part(text: str) -> Part:
    said, used = rich_lines((0, 380), text, HALF_WIDTH)
    return said, used + 110


def _pieces(text: str) -> list[str]:
    """Return a long text in pieces, none higher than a page; bold stands in the first."""
    return textwrap.wrap(text, _MOST_CHARACTERS, break_long_words=False, break_on_hyphens=False)


def _own(text: str) -> str:
    """Return a text of the record as it is, its words no wider than the column."""
    return as_it_is(" ".join(wrapped(text, BODY, HALF_WIDTH)))


def _noted(text: str, note: str) -> str:
    return f"{text} {_own(note)}" if note else text


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
        yield f"*{_by(case, entry.at, entry.who)}*"
        yield case.words("certificate.found", found=_own(entry.found))
        yield case.words("certificate.done", done=_own(entry.done) or "?")


def _by(case: Case, at: str, who: str) -> str:
    return f"{case.moment(at)}, {_own(who)}" if who else case.moment(at)


def _earlier(case: Case) -> Iterator[str]:
    words = case.words
    for record in case.earlier:
        verdict = words(f"certificate.verdict_{record.verdict}")
        at = _by(case, record.at, record.who)
        yield words("certificate.was", at=at, verdict=verdict, revision=record.plan_revision)


def _remarks(case: Case) -> Iterator[str]:
    yield from (_own(line) for line in case.record.remarks.splitlines() if line.strip())


def _attached(case: Case) -> Iterator[str]:
    for attachment in case.record.attachments:
        text = case.words(
            "certificate.file", name=_own(attachment.name), digest=grouped(attachment.digest)
        )
        wrong = attachment.digest in case.spoilt
        yield f"{text} {case.words('certificate.file_spoilt')}" if wrong else text

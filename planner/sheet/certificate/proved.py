"""Who proved the unit, when, with what; what came of it; and plainly what was not measured."""

from collections.abc import Iterator

from planner.markup import as_it_is
from planner.sheet.block import Block, moved
from planner.sheet.certificate.case import Case
from planner.sheet.certificate.contacts import between, listed
from planner.sheet.end_page.rich import rich_lines
from planner.sheet.lettering import PITCH, TITLE_HEIGHT, panel_title, say, say_within
from planner.sheet.paper import HALF_WIDTH
from planner.sheet.proving.isolation import stop_gaps
from planner.sheet.stack import Part, piled, stacked

_TOP, _PITCH = TITLE_HEIGHT + 560, 520.0
_VALUES, _INDENT = 3000.0, 320.0


def proved_block(case: Case) -> Block:
    """Set who, when, with which meter."""
    words = case.words
    items = []
    for place, (key, value) in enumerate(_facts(case)):
        base = _TOP + _PITCH * place
        items.append(say((0, base), words(f"certificate.{key}")))
        items.append(say_within((_VALUES, base), value, HALF_WIDTH - _VALUES, bold=True))
    head = panel_title(0, HALF_WIDTH, 0, words("certificate.proved"))
    return Block((*head, *items), _TOP + _PITCH * (len(items) / 2 - 1) + 160)


def _facts(case: Case) -> tuple[tuple[str, str], ...]:
    words, record = case.words, case.record
    meter, none = record.meter, words("certificate.not_said")
    percent = words.number(meter.percent)
    return (
        ("unit", str(record.number)),
        ("by", record.who or none),
        ("at", case.moment(record.at)),
        ("meter", meter.name or none),
        ("zero", words("certificate.so_many_ohm", ohm=case.ohm(meter.zero_ohm))),
        ("error", words("certificate.off", percent=percent, ohm=case.ohm(meter.offset_ohm))),
    )


def short_block(case: Case) -> Block:
    """Say in few lines what came of it."""
    parts = [_line(text) for text in _outcome(case)]
    items, height = piled(parts)
    head = panel_title(0, HALF_WIDTH, 0, case.words("certificate.in_short"))
    return Block((*head, *moved(items, (0, TITLE_HEIGHT + 140))), TITLE_HEIGHT + 140 + height)


def _outcome(case: Case) -> Iterator[str]:
    words, found = case.words, case.judgement
    yield words("certificate.joined_good", count=found.good, all=len(found.paths))
    yield words("certificate.apart_read", count=len(found.open_pairs), all=len(found.all_pairs))
    if case.record.isolation:
        yield words(f"certificate.by_{case.record.isolation}")
    if found.stop is not None:
        gaps = stop_gaps(words, found.stop)
        yield words("certificate.to_line", gaps=gaps, count=found.stop.left)
    if found.expected.contacts and not found.by_plan:
        yield words("certificate.as_recorded")
    if found.faults:
        yield words.counted("certificate.faults", found.faults)
    if found.broken_ends:
        yield words("certificate.broke", ends=as_it_is(listed(found.broken_ends)))
    if found.heard_otherwise:
        tones = (words(f"certificate.tone_{tone}") for tone in found.heard_otherwise)
        yield words("certificate.sounded", tones=listed(tones))
    if case.record.verdict != found.verdict:
        said = words(f"certificate.verdict_{case.record.verdict}")
        yield words("certificate.not_borne_out", verdict=said)


def missing_blocks(case: Case, room: float) -> Iterator[Block]:
    """Yield what was not measured on this unit, and what no meter shows."""
    words = case.words
    parts = [_line(text) for text in _missing(case)]
    title = words("certificate.missing")
    yield from stacked(title, parts, room=room, goes_on=words("page.goes_on", title=title))


def _missing(case: Case) -> Iterator[str]:
    words, found, record = case.words, case.judgement, case.record
    if not found.expected.contacts:
        yield words("certificate.missing_expected")
    if found.unread:
        spots = listed(between(it.path.one, it.path.other) for it in found.unread)
        yield words.counted("certificate.missing_paths", len(found.unread), spots=spots)
    heard = sum(path.standing == "heard" for path in found.paths)
    if heard:
        yield words.counted("certificate.missing_figures", heard)
    through = sum(path.standing == "through" for path in found.paths)
    if through:
        yield words.counted("certificate.missing_through", through)
    if found.pairs_left:
        yield words.counted("certificate.missing_pairs", len(found.pairs_left))
    if found.pairs_beyond:
        yield words.counted("certificate.missing_beyond", len(found.pairs_beyond))
    ends = [end.id for end in case.making.plan.ends]
    flexed = {entry.end for entry in record.wiggle}
    still = [end for end in ends if end not in flexed]
    if still:
        yield words("certificate.missing_wiggle", ends=as_it_is(listed(still)))
    if not record.listening:
        yield words("certificate.missing_listening")
    yield words("certificate.never_seen")


def _line(text: str) -> Part:
    """Set a paragraph behind a dash."""
    said, used = rich_lines((_INDENT, 400), text, HALF_WIDTH - _INDENT)
    return (say((0, 400), "\u2013"), *said), used + PITCH * 0.22

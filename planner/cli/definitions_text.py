"""Definitions as text of 80 columns: a list, one of them, two compared."""

import textwrap
from collections.abc import Iterator, Sequence
from functools import singledispatch

from planner.cli.output import WIDTH
from planner.library.collection import Library
from planner.library.comparing import Difference
from planner.model.cable import Cable
from planner.model.connector import Connector, Shell, Terminal
from planner.model.definition import Definition, is_retired
from planner.model.part import Part
from planner.model.pinout import PinoutRecord
from planner.model.signals import signals_text
from planner.units import number, size_text

_HEADINGS: dict[type, str] = {
    Connector: "Connectors",
    PinoutRecord: "Pinout records",
    Cable: "Cables",
    Part: "Parts",
}


def listed(records: Sequence[Definition]) -> str:
    """Return the records by kind, each with its id and title."""
    if not records:
        return "Nothing found. Try fewer words, such as a size (3.5) or a family (xlr)."
    wide = min(34, max(len(record.id) for record in records))
    lines: list[str] = []
    for kind, heading in _HEADINGS.items():
        group = [record for record in records if isinstance(record, kind)]
        if group:
            lines += ["", f"{heading} ({len(group)})"] if lines else [f"{heading} ({len(group)})"]
        for record in group:
            lines += hung(f"  {record.id:<{wide}}  ", record.title)
    return "\n".join(lines)


def shown(record: Definition, library: Library) -> str:
    """Return everything that a bench needs of one record."""
    lines = [f"{record.id}, revision {record.revision}", *_wrapped("  ", record.title), ""]
    if is_retired(record):
        lines += [*_retired(record), ""]
    lines += _body(record)
    if isinstance(record, Connector):
        fitting = [found.id for found in library.pinouts_for(record.id)]
        lines += hung("  pinout records  ", ", ".join(fitting) or "none")
    if record.remarks:
        lines += ["", *_wrapped("  ", record.remarks)]
    return "\n".join(lines)


def _retired(record: Definition) -> list[str]:
    assert isinstance(record, Connector | PinoutRecord)
    assert record.retired is not None
    why = record.retired
    return hung("  retired ", ", ".join(filter(None, (why.reason, why.by, why.date))))


def compared(first: Definition, second: Definition, found: Sequence[Difference]) -> str:
    """Return a table of what differs."""
    if not found:
        return f"{first.id} and {second.id} are the same but for the id."
    rows = [("", first.id, second.id), *((one.key, one.first, one.second) for one in found)]
    return "\n".join(line for row in rows for line in three_columns(row))


def three_columns(row: tuple[str, str, str]) -> Iterator[str]:
    """Yield the lines of a row of a table of three columns."""
    widths = (28, 24, 24)
    cells = [
        textwrap.wrap(text, wide) or ["-" * bool(row[0])]
        for text, wide in zip(row, widths, strict=True)
    ]
    for at in range(max(map(len, cells))):
        parts = [
            f"{cell[at] if at < len(cell) else '':<{wide}}"
            for cell, wide in zip(cells, widths, strict=True)
        ]
        yield "  ".join(parts).rstrip()


@singledispatch
def _body(record: object) -> list[str]:
    raise TypeError(type(record).__name__)


@_body.register
def _(record: Connector) -> list[str]:
    shell, clamp, barrel = record.shell, record.clamp, record.barrel
    lines = [
        f"  {record.family}, {record.gender}, {record.poles} contacts"
        f"{f', size {record.size}' if record.size else ''}",
        f"  positions in mm, solder side, x right, y up: {_SIDES[record.drawn_from]}",
        "",
        "  contact  name          terminal          x       y       z   takes",
    ]
    for contact in record.contacts:
        terminal = contact.terminal
        lines.append(
            f"  {contact.id:<7}  {contact.spoken:<12.12}  {_terminal_text(terminal):<14}"
            f"{number(terminal.x_mm):>6}  {number(terminal.y_mm):>6}  {number(terminal.z_mm):>6}"
            f"  {terminal.takes:>6}"
        )
    lines += [
        "",
        f"  shell           {_shell_text(shell)}",
        f"  clamp           {number(clamp.min_mm)} to {number(clamp.max_mm)} mm",
        f"  barrel          outside {number(barrel.outside_mm)}, bore {number(barrel.bore_mm)},"
        f" length {number(barrel.length_mm)} mm",
    ]
    for basis in record.basis:
        told = basis.reference or ("measure it on the part" if basis.kind == "memory" else "")
        lines += hung(f"  {basis.figures:<14}  ", f"{basis.kind}{f': {told}' if told else ''}")
    return lines


_SIDES = {
    "solder": "drawn so",
    "mating": "mirrored from the mating side",
    "unstated": "drawn from no stated side",
}


def _shell_text(shell: Shell) -> str:
    if shell.shape == "round":
        return f"bore {number(shell.bore_mm)} mm"
    return f"{number(shell.width_mm)} by {number(shell.height_mm)} mm"


def _terminal_text(terminal: Terminal) -> str:
    sign = "bore" if terminal.kind == "cup" else "wide"
    return f"{terminal.kind} {sign} {number(terminal.across_mm)}"


@_body.register
def _(record: PinoutRecord) -> list[str]:
    lines = hung("  fits    ", ", ".join(record.fits)) + hung("  use     ", record.use)
    lines += [f"  drive   {record.drive}", *_source_card(record), "", "  contact  carries"]
    for contact, carried in record.signals.items():
        lines.append(f"  {contact:<7}  {signals_text(carried) or 'nothing'}")
    return lines


def _source_card(record: PinoutRecord) -> list[str]:
    """Return on whose word the record rests, and how far it has come."""
    source = record.source
    told = ", ".join(filter(None, (source.reference, source.date, source.recorded_by)))
    lines = hung("  source  ", f"{source.kind}{f': {told}' if told else ''}")
    for each in record.statements:
        about = f"{', '.join(each.contacts)}: {each.kind}"
        lines += hung("  but     ", f"{about}{f', {each.reference}' if each.reference else ''}")
    for document in record.documents:
        lines += hung("  with    ", ", ".join(filter(None, (document.name, document.remark))))
    lines += [f"  trust   {record.trust}"]
    for person in record.confirmations:
        lines += hung("  found   ", ", ".join(filter(None, (person.who, person.date, person.how))))
    return lines


@_body.register
def _(record: Cable) -> list[str]:
    jacket = f"  jacket  {number(record.jacket_mm)} mm, {record.jacket_colour}"
    lines = [jacket, "", "  core     colours                   size                   insulation"]
    for core in record.cores:
        size = f"{core.strands}/{number(core.strand_mm, 3)} {size_text(core.area_mm2)}"
        lines.append(
            f"  {core.id:<7}  {f'{core.code} {core.colour_words}':<22.22}  {size:<24}"
            f"  {number(core.insulation_mm)} mm"
        )
    for shield in record.shields:
        cores = ", ".join(shield.around) or "all cores"
        lines += hung(f"  {shield.id:<7}  ", f"{shield.kind} shield round {cores}")
    return lines


@_body.register
def _(record: Part) -> list[str]:
    lines = [
        f"  {record.kind}, bore {number(record.bore_mm)}, outside {number(record.outside_mm)},"
        f" length {number(record.length_mm)} mm"
    ]
    if record.recovered_mm:
        lines.append(f"  recovered bore {number(record.recovered_mm)} mm")
    return lines


def hung(head: str, text: str) -> list[str]:
    """Return a text behind its head, in as many lines as it needs."""
    return textwrap.wrap(text, WIDTH, initial_indent=head, subsequent_indent=" " * len(head)) or [
        head.rstrip()
    ]


def _wrapped(indent: str, text: str) -> list[str]:
    return [line for part in text.splitlines() for line in hung(indent, part)]

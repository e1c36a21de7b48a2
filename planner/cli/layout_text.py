"""The layout of a plan as text of 80 columns."""

import math
import textwrap
from collections.abc import Iterator
from typing import TYPE_CHECKING

from planner.cli.output import WIDTH
from planner.dryfit.bodies import Capsule
from planner.dryfit.fit_words import figure_words, fit_words, verdict_words
from planner.dryfit.turning import Turning
from planner.model.plan import Plan
from planner.services.laying_out import EndLayout, Layout
from planner.units import frequency_text, number, ohm_text

if TYPE_CHECKING:
    from planner.dryfit.wires import FitLine

_LEFT = 17
# Above these nothing is gained, and they are worked out no further.
_ENOUGH_MM = 1.0


def layout_text(path: str, laid: Layout, *, written: bool) -> str:
    """Return the layout of every end and the electrical figures, none wider than 80 columns."""
    plan = laid.plan
    lines = textwrap.wrap(plan.title or path, WIDTH)
    if written:
        lines += textwrap.wrap(f"Kept in {path}: turns, order of soldering, sleeves.", WIDTH)
    for end in laid.ends:
        lines += ["", *_end_lines(plan, end)]
    if not laid.ends:
        lines += ["", "Nothing is landed yet: choose connector and cable, then land the cores."]
    lines += ["", *_electrical_lines(laid)]
    return "\n".join(lines)


def _row(head: str, text: str) -> list[str]:
    return textwrap.wrap(
        text, WIDTH, initial_indent=f"  {head:<{_LEFT - 2}}", subsequent_indent=" " * _LEFT
    )


def _rows(head: str, texts: list[str], nothing: str) -> Iterator[str]:
    for number_of, text in enumerate(texts or [nothing]):
        yield from _row(head if number_of == 0 else "", text)


def _end_lines(plan: Plan, end: EndLayout) -> Iterator[str]:
    fit = end.fit
    connector = plan.connector_of(fit.end)
    title = connector.title if connector else ""
    yield from textwrap.wrap(f"End {fit.end}, {title}, turned {number(fit.turn_deg, 1)}°", WIDTH)
    crossings = [f"{one} and {other}" for one, other in fit.crossings]
    yield from _rows("crossings", crossings, "none")
    yield from _row("smallest gap", _gap_words(fit.least_gap_mm))
    small = [
        f"{_body(gap.first)} to {_body(gap.second)}: {number(gap.gap_mm)} mm, {gap.grade} "
        f"(limit {number(gap.limit_mm)} mm)"
        for gap in fit.gaps
    ]
    yield from _rows("small gaps", small, "none")
    yield from _rows("best turn", list(_turning_words(fit.turn_deg, end.turning)), "not known")
    yield from _joint_lines(end)
    yield from _rows("sleeves", list(_sleeve_words(end)), "none needed")
    yield from _rows("fits", list(_fit_words(end)), "nothing to fit")


def _gap_words(gap_mm: float) -> str:
    return f"{number(gap_mm)} mm" if math.isfinite(gap_mm) else "one net only: no gap to keep"


def _capped(figure_mm: float) -> str:
    return f"{'at least 1 mm' if figure_mm >= _ENOUGH_MM else f'{number(figure_mm)} mm'}"


def _turning_words(now_deg: float, turning: Turning | None) -> Iterator[str]:
    if turning is None:
        return
    same = not turning.swaps and abs(turning.turn_deg - now_deg) < 0.05
    where = "as it is" if same else f"{number(turning.turn_deg, 1)}°"
    crossings = f"{turning.crossings} crossing{'s' * (turning.crossings != 1)}"
    yield f"{where}: {crossings}, smallest gap {_capped(turning.gap_mm)}; {turning.verdict}"
    yield from (f"with {each.words}" for each in turning.groups)
    for core, contact in turning.swaps:
        yield f"with {core} on {contact}"
    if turning.reason and not turning.swaps:
        yield turning.reason


def _joint_lines(end: EndLayout) -> Iterator[str]:
    lengths = {(each.contact, each.conductor): each for each in end.lengths}
    yield "  solder in this order, iron from the angle told:"
    for count, way in enumerate(end.fit.access, start=1):
        room = f"{number(way.direction_deg, 0)}°, room {_capped(way.margin_mm)}"
        clamping = f", clamping {way.clamping + 1}" if way.clamping else ""
        cores = []
        for core in way.conductors:
            length = lengths[way.contact, core]
            cores.append(
                f"{core} cut {number(length.cut_mm, 1)} strip {number(length.strip_mm, 1)}"
            )
        yield from _row(f"  {count:>2} {way.contact}", f"{'; '.join(cores)} mm; {room}{clamping}")


def _sleeve_words(end: EndLayout) -> Iterator[str]:
    sleeves = end.sleeves
    for head, uses in (("on", sleeves.on), ("add", sleeves.sleeves)):
        for use in uses:
            bore = (
                f", bore {number(use.bore_mm)} mm" if use.bore_mm else ", no stock size goes over"
            )
            yield (
                f"{head}: {use.contact} ({use.conductor}), {number(use.length_mm, 1)} mm{bore}; "
                f"parks on {number(use.park_has_mm, 1)} mm, needs {number(use.park_needs_mm, 1)} mm"
            )
    for contact, other, why in sleeves.dabs:
        yield f"dab: {contact}, towards {other}: {why}"
    if sleeves.liner:
        yield "a liner inside the shell"
    for contact, other, why in sleeves.uncured:
        yield f"NOT CURED: {contact}, towards {other}: {why}"


def _fit_words(end: EndLayout) -> Iterator[str]:
    """Yield a line for each fit; strands that fit in the same way share one."""
    alike: dict[tuple[str, ...], list[FitLine]] = {}
    for line in end.fits:
        key = (line.what, verdict_words(line), *figure_words(line))
        alike.setdefault(key, []).append(line)
    for (_, told, needs, has), lines in alike.items():
        if len(lines) == 1:
            yield fit_words(lines[0])
        else:
            where = ", ".join(line.where.contact for line in lines)
            yield f"{lines[0].what.capitalize()} at {where}: each {told} ({needs}, {has})"


def _body(body: Capsule) -> str:
    if body.kind == "shell":
        return "shell"
    return f"{body.contact} ({body.conductor})" if body.conductor else body.contact


def _electrical_lines(laid: Layout) -> Iterator[str]:
    found = laid.electrical
    given = found.assumed
    yield (
        f"Electrical, at {number(given.temperature_c)} °C, "
        f"{number(given.source_ohm)} Ω source, {number(given.load_ohm)} Ω load"
    )
    for each in found.conductors:
        ohm = ohm_text(each.ohm) if each.ohm is not None else "not known"
        yield from _row(each.conductor, f"{ohm} end to end")
    for loop in found.loops:
        if loop.ohm is not None:
            way = f"{loop.source} to {loop.load}"
            yield from _row(f"loop {loop.channel}", f"{ohm_text(loop.ohm)}, {way} and back")
    for balance in found.balances:
        yield from _row("balance", f"{balance.kind}: {number(balance.percent, 1)} % apart")
    for talk in found.crosstalks:
        if talk.db is not None and talk.shared:
            which = f"{talk.driven.channel} into {talk.heard.channel}"
            yield from _row("crosstalk", f"{which}: {number(talk.db, 1)} dB")
    for channel in found.channels:
        if channel.pf is not None and channel.rolloff_hz is not None:
            rolloff = frequency_text(channel.rolloff_hz)
            yield from _row(
                f"channel {channel.channel}", f"{number(channel.pf, 0)} pF; −3 dB at {rolloff}"
            )

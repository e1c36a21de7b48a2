"""What to cut and pick for a lead, for a run of leads, and in which order the run is made."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import groupby
from typing import Literal

from planner.dryfit.cut_lengths import EndCut, Lengths, Opening, Strip
from planner.dryfit.shrink_places import cut_mm
from planner.dryfit.sleeve_sizes import PLAIN_MM, shrink_bore_mm
from planner.dryfit.sleeves import sleeves_on
from planner.dryfit.splicing import splices_at
from planner.model.part import Part
from planner.model.plan import PartUse, Plan
from planner.units import rounded

Kind = Literal[
    "cable", "heat-shrink", "sleeve", "label",
    "cover", "boot", "shell", "clamp", "liner", "plug",
]  # fmt: skip
Note = Literal["", "no-cable", "plug-unknown", "no-size", "joint", "tail", "cap", "splice"]
Act = Literal["cut", "split", "thread", "own", "join", "end", "prove"]
# Heat-shrink over a spare core: half on its insulation, half closed beyond it. Common practice, no
# source.
CAP_MM = 10.0
# Parts that are cut from a length; all others are picked as they are.
CUT_KINDS = frozenset({"heat-shrink", "sleeve", "label"})


@dataclass(frozen=True, slots=True)
class CutLine:
    """One line of the cut list: `count` pieces of `length_mm`, or picked whole where that is 0.

    `stock` is the id of the definition that it is cut from or picked as, empty where none is
    chosen. `where` names the sections, ends or splits that it is for, `uses` the plan's parts in
    it. `bore_mm` is that of sleeves and parts, 0 for the rest. A sleeve has no title of its own;
    its `note` says whether it is for a joint, a tail, the cap of a spare core, or a joint in a
    split.
    """

    kind: Kind
    title: str
    length_mm: float
    count: int
    where: tuple[str, ...]
    note: Note = ""
    stock: str = ""
    bore_mm: float = 0.0
    uses: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class CutList:
    """All that one lead takes: lines, and how each end and split is cut back."""

    lines: tuple[CutLine, ...]
    strips: tuple[Strip, ...]
    ends: tuple[EndCut, ...]
    openings: tuple[Opening, ...]


@dataclass(frozen=True, slots=True)
class Total:
    """What a run takes of one stock: pieces, and their length together (0 where not cut), mm."""

    kind: Kind
    title: str
    stock: str
    bore_mm: float
    count: int
    length_mm: float


@dataclass(frozen=True, slots=True)
class BatchStep:
    """One act done on all leads of a run before the next: `count` times at `where`."""

    act: Act
    where: tuple[str, ...]
    count: int


@dataclass(frozen=True, slots=True)
class Batch:
    """A run of leads: totals per stock, the order of operations."""

    leads: int
    totals: tuple[Total, ...]
    steps: tuple[BatchStep, ...]


def cut_list(plan: Plan) -> CutList:
    """Return what to cut and pick for one lead of the plan, and the lengths at ends and splits."""
    lengths = Lengths(plan)
    singles = (*_cables(plan, lengths), *_parts(plan), *_sleeves(plan, lengths), *_plugs(plan))
    return CutList(_merged(singles), lengths.strips, tuple(lengths.ends.values()), lengths.openings)


def batch(plan: Plan, leads: int) -> Batch:
    """Return the totals of a run of `leads` and its order: all cuts and splits before any joint.

    ValueError for less than one lead.
    """
    if leads < 1:
        raise ValueError(f"a run of {leads} leads: write one or more")
    totals: dict[tuple[str, str, float], Total] = {}
    for line in cut_list(plan).lines:
        key = (line.stock or line.kind, line.title, line.bore_mm)
        known = totals.get(key) or Total(line.kind, line.title, line.stock, line.bore_mm, 0, 0.0)
        totals[key] = replace(
            known,
            count=known.count + line.count * leads,
            length_mm=rounded(known.length_mm + line.length_mm * line.count * leads),
        )
    return Batch(leads, tuple(totals.values()), tuple(_steps(plan, leads)))


def _steps(plan: Plan, leads: int) -> Iterator[BatchStep]:
    """Yield the order of a run: all cables, all splits, all parts, then plug after plug.

    A split whose legs are cables of their own is joined only when the parts are on.
    """
    cables = tuple(section.id for section in plan.sections if not section.fan_of)
    yield BatchStep("cut", cables, leads * len(cables))
    fans = tuple(split.id for split in plan.splits if _opens(plan, split.id))
    if fans:
        yield BatchStep("split", fans, leads * len(fans))
    if plan.parts:
        comes_from = dict.fromkeys(use.comes_from for use in plan.parts)
        yield BatchStep("thread", tuple(comes_from), leads * len(plan.parts))
    plugs = tuple(end.id for end in plan.ends if plan.connector_of(end.id) is not None)
    if plugs:
        yield BatchStep("own", plugs, leads * len(plugs))
    joins = tuple(split.id for split in plan.splits if split.id not in fans)
    if joins:
        yield BatchStep("join", joins, leads * len(joins))
    for _, ends in groupby(plan.ends, key=lambda end: end.connector):
        names = tuple(end.id for end in ends)
        yield BatchStep("end", names, leads * len(names))
    yield BatchStep("prove", (), leads)


def _opens(plan: Plan, split: str) -> bool:
    """Tell whether the legs of a split are the cores of a cable that goes on."""
    return any(leg.fan_of and split in {leg.near, leg.far} for leg in plan.sections)


def _cables(plan: Plan, lengths: Lengths) -> Iterator[CutLine]:
    for section in plan.sections:
        if section.fan_of:
            continue
        cable, length = plan.cable_of(section.id), lengths.piece_mm(section)
        if cable is None:
            yield CutLine("cable", "", length, 1, (section.id,), "no-cable")
            continue
        note: Note = "" if lengths.reckoned(section) else "plug-unknown"
        yield CutLine("cable", cable.title, length, 1, (section.id,), note, cable.id)


def _parts(plan: Plan) -> Iterator[CutLine]:
    known = {part.id: part for part in plan.definitions.parts}
    for use in plan.parts:
        part = known.get(use.part)
        if part is not None:
            length = _part_mm(plan, use, part)
            line = CutLine(part.kind, part.title, length, 1, (use.at,), "", part.id, part.bore_mm)
            yield replace(line, uses=(use.id,))


def _part_mm(plan: Plan, use: PartUse, part: Part) -> float:
    """Return how long to cut a part, mm; 0 for one that is picked as it is.

    Shrink as long as the step that it covers asks for, all else as long as its record says.
    """
    if part.kind not in CUT_KINDS:
        return 0.0
    return rounded(cut_mm(plan, use) or part.length_mm)


def _sleeves(plan: Plan, lengths: Lengths) -> Iterator[CutLine]:
    for end in plan.ends:
        fit = lengths.fits.get(end.id)
        for use in sleeves_on(fit, plan.workmanship) if fit else ():
            yield _sleeve(end.id, use.length_mm, use.bore_mm, use.covers)
        for _, core in lengths.spares(end.id):
            bore = shrink_bore_mm(core.insulation_mm, core.insulation_mm)
            yield _sleeve(end.id, CAP_MM, bore, "cap")
    for split in plan.splits:
        for it in splices_at(plan, split.id):
            yield _sleeve(split.id, it.length_mm, it.bore_mm, "splice")


def _sleeve(where: str, length_mm: float, bore_mm: float, purpose: Note) -> CutLine:
    """Return a sleeve as a line; its stock is named as the shipped parts are."""
    length = rounded(length_mm)
    if bore_mm <= 0:
        return CutLine("sleeve", "", length, 1, (where,), "no-size")
    kind = "sleeve" if bore_mm in PLAIN_MM else "heat-shrink"
    return CutLine("sleeve", "", length, 1, (where,), purpose, f"{kind}-{bore_mm}", bore_mm)


def _plugs(plan: Plan) -> Iterator[CutLine]:
    for end in plan.ends:
        connector = plan.connector_of(end.id)
        if connector is not None:
            yield CutLine("plug", connector.title, 0.0, 1, (end.id,), "", connector.id)


def _merged(lines: Iterable[CutLine]) -> tuple[CutLine, ...]:
    """Put like pieces on one line, in the order of the first."""
    found: dict[CutLine, CutLine] = {}
    for line in lines:
        like = replace(line, count=0, where=(), uses=())
        one = found.get(like, like)
        where = tuple(dict.fromkeys((*one.where, *line.where)))
        found[like] = replace(
            line, count=one.count + line.count, where=where, uses=(*one.uses, *line.uses)
        )
    return tuple(found.values())

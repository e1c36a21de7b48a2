"""The lines of the cut list and the order of a run, in the words of the catalogue."""

from collections.abc import Iterable

from planner.dryfit.cutting import BatchStep, CutLine, Total
from planner.dryfit.sleeve_sizes import THREE_TO_ONE_MM
from planner.markup import as_it_is
from planner.model.plan import Plan
from planner.sheet.way_bar import named
from planner.sheet.words import Words
from planner.units import number

_SLEEVES = frozenset({"joint", "tail", "cap", "splice", "no-size"})
_THREE_TO_ONE = {bore for bore, _ in THREE_TO_ONE_MM}
# Named with their bore: what a piece is cut from is told by it.
_BY_BORE = {"heat-shrink": "heat_shrink", "sleeve": "sleeve", "label": "label"}


def cut_words(line: CutLine, plan: Plan, words: Words) -> str:
    """Say what one line of the cut list is, and what it is for."""
    if line.kind == "plug":
        return words("cuts.plug", where=named(line.where), title=as_it_is(line.title))
    where = where_words(_nodes(line, plan), plan, words)
    if line.kind == "cable":
        return _cable_line(line, where, plan, words)
    if line.kind == "sleeve" and line.note in _SLEEVES:
        key = f"cuts.sleeve_{line.note.replace('-', '_')}"
        return words(key, bore=_bore(line), where=where)
    return words("cuts.part_for", part=_part(line, words), where=where)


def total_words(total: Total, plan: Plan, words: Words) -> str:
    """Say what one total of a run is of."""
    if total.kind == "cable":
        return _cable(total.title, total.stock, plan, words)
    if total.kind == "sleeve" and not total.stock:
        return words("cuts.sleeve_unknown")
    return as_it_is(total.title) if total.kind == "plug" else _part(total, words)


def step_words(step: BatchStep, plan: Plan, words: Words) -> str:
    """Say one act of the order of a run, done on all leads."""
    where = where_words(step.where, plan, words)
    return words(f"cuts.act_{step.act}", count=step.count, where=where)


def where_words(where: Iterable[str], plan: Plan, words: Words) -> str:
    """Name ends as plugs and splits by their name: `plug *A*`, `the split`."""
    ends = [node for node in where if node in plan.end_by_id]
    splits = [split for split in plan.splits if split.id in where]
    told = [_split(as_it_is(split.name or split.id), plan, words) for split in splits]
    if ends:
        told.append(words("cuts.at_plug", ends=named(ends)))
    return ", ".join(told)


def _nodes(line: CutLine, plan: Plan) -> tuple[str, ...]:
    """Return the ends or splits that a line is for; of a cable its ends, else its splits."""
    if line.kind != "cable":
        return line.where
    sections = [plan.section_by_id[section] for section in line.where]
    nodes = tuple(node for section in sections for node in (section.near, section.far))
    return tuple(node for node in nodes if node in plan.end_by_id) or nodes


def _split(name: str, plan: Plan, words: Words) -> str:
    if len(plan.splits) == 1:
        return words("cuts.the_split")
    return words("cuts.at_split", split=name)


def _cable_line(line: CutLine, where: str, plan: Plan, words: Words) -> str:
    """Say which cable, of several which one, and whether a plug is missing that takes of it."""
    said = _cable(line.title, line.stock, plan, words)
    if sum(not section.fan_of for section in plan.sections) > 1:
        said = words("cuts.part_for", part=said, where=where)
    return f"{said}. {words('cuts.plug_unknown')}" if line.note == "plug-unknown" else said


def _cable(title: str, stock: str, plan: Plan, words: Words) -> str:
    if not stock:
        return words("cuts.no_cable")
    cable = next(it for it in plan.definitions.cables if it.id == stock)
    key = "cuts.cable_spool" if cable.spool else "cuts.cable"
    return words(key, title=as_it_is(title), spool=as_it_is(cable.spool))


def _bore(line: CutLine | Total) -> str:
    """Say a bore; of shrink that is sold as 3:1 that too, since 2:1 of nearly that bore is sold."""
    bore = number(line.bore_mm)
    three_to_one = f"heat-shrink-{line.bore_mm}" == line.stock and line.bore_mm in _THREE_TO_ONE
    return f"{bore} (3:1)" if three_to_one else bore


def _part(line: CutLine | Total, words: Words) -> str:
    key = _BY_BORE.get(line.kind, "")
    return words(f"cuts.{key}", bore=_bore(line)) if key else as_it_is(line.title)

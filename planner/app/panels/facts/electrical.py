"""What the in-hand pages say of resistance, balance, crosstalk and capacitance."""

import re
from collections import Counter
from collections.abc import Callable, Iterator
from functools import partial

from PySide6.QtWidgets import QVBoxLayout, QWidget

from planner.app.panels.widgets.fields import Field
from planner.app.panels.widgets.labels import label, line
from planner.app.panels.widgets.rows import Fact
from planner.app.workbench import Edit
from planner.edits.working import set_assumed
from planner.electrical.capacitance import Basis, ChannelCapacitance, section_capacitances
from planner.electrical.crosstalk import Crosstalk
from planner.electrical.loops import Loop
from planner.electrical.resistance import conductor_ohm, ohm_per_km
from planner.electrical.summary import ElectricalSummary, electrical_summary
from planner.model.cable import Cable, Core, Shield
from planner.model.plan import Plan
from planner.units import frequency_text, number, ohm_text, parse_figure, significant
from planner.wiring.graph import Wiring

Do = Callable[[str, Edit], str]

OHM, DEGREES = "\u03a9", "\u00b0C"
NOT_KNOWN = "not known yet"
_FIGURE = re.compile(r"(?<=\d) (?=\u03a9|\u00b0C|%|dB|pF|[kM]?Hz)")
_UNITS = {"\u03a9": (OHM, "ohm"), "\u00b0C": (DEGREES, "C"), "%": ("%",), "dB": ("dB",)}
# Field of the plan, its name here, its unit, what it is for.
_GEAR = (
    ("temperature_c", "Temperature", DEGREES, "What the wire is thought to have"),
    ("load_ohm", "Load", OHM, "What hangs on each channel: a driver, an input"),
    ("source_ohm", "Source", OHM, "The output that the capacitance loads"),
)
_LIMITS = (
    ("balance_limit_percent", "Balance", "%", "A note when two channels differ by more"),
    ("crosstalk_limit_db", "Crosstalk", "dB", "A note when a shared return couples by more"),
)


def unbroken(text: str) -> str:
    """Keep each figure and its unit on one line."""
    return _FIGURE.sub("\u00a0", text)


def conductor_text(plan: Plan, conductor: str) -> str:
    """Say the resistance of a conductor: end to end, or run by run where it forks."""
    found = conductor_ohm(plan, conductor)
    about = "about " if found.estimated else ""
    at = f" at {number(plan.assumed.temperature_c, 1)} {DEGREES}"
    if found.ohm is not None:
        return unbroken(f"{about}{ohm_text(found.ohm)} end to end{at}")
    runs = [f"{run.section} {ohm_text(run.ohm)}" for run in found.runs if run.ohm is not None]
    return unbroken(f"{about}{', '.join(runs)}{at}") if runs else NOT_KNOWN


def section_ohm_text(plan: Plan, section: str) -> str:
    """Say the ohm per km of each core and shield of a section's cable, like ones together."""
    cable = plan.cable_of(section)
    if cable is None:
        return ""
    said: dict[str, list[str]] = {}
    parts: list[Core | Shield] = [*cable.cores, *_shields(plan, section, cable)]
    for part in parts:
        about = "about " if isinstance(part, Shield) else ""
        per_km = significant(ohm_per_km(part, plan.assumed.temperature_c))
        said.setdefault(f"{about}{per_km} {OHM}/km", []).append(_code(part))
    rows = [f"{_few(codes)}: {text}" for text, codes in said.items()]
    return unbroken("\n".join(rows))


def _shields(plan: Plan, section: str, cable: Cable) -> tuple[Shield, ...]:
    """Return the shields that run in a section: cores out of their jacket have left them."""
    return () if plan.section_by_id[section].fan_of else cable.shields


def _code(part: Core | Shield) -> str:
    return part.code if isinstance(part, Core) else part.kind


def _few(codes: list[str]) -> str:
    each = list(dict.fromkeys(codes))
    return " ".join(each) if len(each) <= 4 else f"{each[0]} to {each[-1]}"


def section_capacitance_text(plan: Plan, section: str) -> str:
    """Say the capacitance of the circuits of a section's cable, each different figure once."""
    cable = plan.cable_of(section)
    said: dict[str, str] = {}
    for pair in section_capacitances(plan, section):
        codes = [_code(part) for name in (pair.first, pair.second) if (part := _part(cable, name))]
        said.setdefault(_pf_text(pair.pf_per_m, "pF/m", pair.basis), " to ".join(codes))
    rows = [f"{codes}: {text}" for text, codes in said.items()]
    return unbroken("\n".join(rows))


def _pf_text(pf: float, unit: str, basis: Basis) -> str:
    """Say a capacitance, to two digits where it is reckoned from typical figures."""
    if basis == "printed":
        return f"{significant(pf)} {unit}, as printed"
    left_out = ", shield not counted" if basis == "no-shield" else ""
    return f"about {significant(pf, 2)} {unit}{left_out}"


def _part(cable: Cable | None, name: str) -> Core | Shield | None:
    return cable.part(name) if cable else None


def lead_rows(summary: ElectricalSummary) -> Iterator[tuple[str, str]]:
    """Yield name and words of the loops, balances and crosstalks of a lead, like ones together."""
    yield from _loop_rows(summary)
    for balance in summary.balances:
        name = "Balance" if len(summary.balances) == 1 else f"Balance at {balance.high.load}"
        if balance.percent < 0.05:  # it would print as 0.0
            yield name, "all alike"
        else:
            more = f"{balance.high.channel} over {balance.low.channel}"
            softer = f"{significant(balance.level_db, 2)} dB softer"
            yield name, f"{more}: {significant(balance.percent, 2)} %, {softer}"
    said: dict[tuple[frozenset[str], str], list[Crosstalk]] = {}
    for each in summary.crosstalks:
        pair = frozenset((each.driven.channel, each.heard.channel))
        said.setdefault((pair, _crosstalk(each)), []).append(each)
    for (_, text), alike in said.items():
        first = alike[0]
        word = "and" if len(alike) > 1 else "into"
        yield "Crosstalk", f"{first.driven.channel} {word} {first.heard.channel}: {text}"


def _loop_rows(summary: ElectricalSummary) -> Iterator[tuple[str, str]]:
    often = Counter(loop.channel for loop in summary.loops)
    said: dict[tuple[str, str], list[str]] = {}
    for loop, channel in zip(summary.loops, summary.channels, strict=True):
        name = loop.channel if often[loop.channel] == 1 else f"{loop.channel} {loop.load}".strip()
        said.setdefault(_loop(loop, channel), []).append(name)
    for (ohm, more), names in said.items():
        each = " each" if len(names) > 1 and ohm != NOT_KNOWN else ""
        loops = "Loops" if len(names) > 1 else "Loop"
        yield f"{loops} {_few(names)}".rstrip(), f"{ohm}{each}{more}"


def _loop(loop: Loop, channel: ChannelCapacitance) -> tuple[str, str]:
    if loop.ohm is None:
        return NOT_KNOWN, ""
    ohm = f"{'about ' if loop.estimated else ''}{ohm_text(loop.ohm)}"
    if channel.pf is None or channel.rolloff_hz is None or channel.basis is None:
        return ohm, ", there and back"
    rolls = f"\u22123 dB at {frequency_text(channel.rolloff_hz, 2)}"
    return ohm, f", there and back\n{_pf_text(channel.pf, 'pF', channel.basis)}, {rolls}"


def _crosstalk(each: Crosstalk) -> str:
    if each.db is None:
        return NOT_KNOWN
    shared = f", {ohm_text(each.shared_ohm)} shared" if each.shared_ohm else ""
    return f"{number(each.db, 1)} dB{shared}"


class LeadFigures(QWidget):
    """The figures of the whole lead, and what is assumed for them, which may be changed."""

    def __init__(self, do: Do) -> None:
        super().__init__()
        self._do = do
        self.fields = {key: self._field(key, *more) for key, *more in (*_GEAR, *_LIMITS)}
        self.rows: list[Fact] = []
        self._rows = QVBoxLayout()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 8, 0, 0)
        column.setSpacing(4)
        column.addWidget(line())
        column.addWidget(label("Electrical", "head"))
        column.addLayout(self._rows)
        for title, rows in (("Reckoned for", _GEAR), ("With a note beyond", _LIMITS)):
            column.addWidget(label(title, "section"))
            for key, *_ in rows:
                column.addWidget(self.fields[key])

    def _field(self, key: str, name: str, unit: str, tip: str) -> Field:
        return Field(name, partial(self._on_changed, key, name, unit), tip)

    def show_plan(self, plan: Plan, wiring: Wiring) -> None:
        """Show the figures of a plan."""
        for key, _, unit, _ in (*_GEAR, *_LIMITS):
            self.fields[key].show_text(f"{number(getattr(plan.assumed, key), 3)} {unit}")
        rows = list(lead_rows(electrical_summary(plan, wiring)))
        self._make_rows(len(rows))
        for fact, (name, text) in zip(self.rows, rows, strict=False):
            fact.show_named(name, unbroken(text))
        for fact in self.rows[len(rows) :]:
            fact.show_value("")

    def _make_rows(self, count: int) -> None:
        while len(self.rows) < count:
            self.rows.append(Fact(""))
            self._rows.addWidget(self.rows[-1])

    def _on_changed(self, key: str, name: str, unit: str, text: str) -> str:
        try:
            value = parse_figure(text, *_UNITS[unit])
        except ValueError as error:
            return f"{error}."
        return self._do(f"{name} {text}", lambda plan: set_assumed(plan, **{key: value}))

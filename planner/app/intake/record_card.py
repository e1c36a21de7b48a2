"""The card of one definition: what it is, on whose word, how it came to be, where it is used."""

from collections.abc import Callable, Iterator, Sequence
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from planner.app.intake.face_view import FaceView
from planner.app.intake.ladder import Ladder
from planner.app.panels.widgets.labels import button, label
from planner.app.panels.words import SOURCE_WORDS
from planner.drawing.carried_face import CarriedFace
from planner.intake.likeness import disagreeing
from planner.model.connector import Connector
from planner.model.pinout import PinoutRecord
from planner.units import number

if TYPE_CHECKING:
    from planner.app.intake.owner import Owner
    from planner.drawing.looks import Look
    from planner.library.history import Change
    from planner.model.definition import Definition
    from planner.model.source import Document

_MOST_USES = 8
_BOTH_STAND = (
    "Both stand until one is retired with a reason: measure a sample, and retire the one that is "
    "wrong."
)
_OF_ANOTHER = (
    "Makers differ, and each may be right for its own parts: measure the part in hand before you "
    "choose. A record that is wrong is retired with a reason; until then all stand."
)
DRIVE_WORDS = {
    "load": "drives nothing: a load",
    "single-ended": "single-ended: the minus legs are the common ground",
    "driven-balanced": "driven-balanced: the minus legs are amplifier outputs",
    "line": "balanced line level",
}


class RecordCard(QScrollArea):
    """Show one definition; papers open by a button each."""

    def __init__(
        self,
        owner: "Owner",
        look: "Look",
        open_paper: "Callable[[Document], object]",
        look_at: "Callable[[str], object]",
    ) -> None:
        super().__init__()
        self.owner, self.look, self._open_paper, self.look_at = owner, look, open_paper, look_at
        self.record: Definition | None = None
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName("The chosen definition")
        self.show_record(None)

    def show_record(self, record: "Definition | None") -> None:
        """Show another definition."""
        self.record = record
        page = QWidget()
        page.setProperty("surface", "panel")
        column = QVBoxLayout(page)
        column.setContentsMargins(20, 14, 20, 14)
        column.setSpacing(5)
        parts = self._parts(record) if record is not None else (_nothing(),)
        for part in parts:
            column.addWidget(part)
        column.addStretch(1)
        self.setWidget(page)

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self.look = look
        self.show_record(self.record)

    def _parts(self, record: "Definition") -> Iterator[QWidget]:
        yield label(record.title, "question", wrap=True)
        yield label(f"{record.id}, revision {record.revision}", "second")
        retired = getattr(record, "retired", None)
        if retired is not None:
            by = ", ".join(filter(None, (retired.by, retired.date)))
            told = f"Retired: {retired.reason}" + (f" ({by})" if by else "")
            yield label(told, "error", wrap=True)
        if isinstance(record, PinoutRecord):
            yield from self._pinout(record)
        if isinstance(record, Connector):
            yield from self._connector(record)
        if record.remarks:
            yield label("Remarks", "section")
            yield label(record.remarks, wrap=True)
        yield from self._papers(getattr(record, "documents", ()))
        yield from self._used(record)
        yield from self._past(record)

    def _pinout(self, record: PinoutRecord) -> Iterator[QWidget]:
        connector = next(filter(None, map(self.owner.library.connector, record.fits)), None)
        if connector is not None:
            yield from self._carried(record, connector)
        fits = [self.owner.library.connector(each) for each in record.fits]
        titles = ", ".join(
            it.title if it else name for it, name in zip(fits, record.fits, strict=True)
        )
        yield label(f"For {titles}", wrap=True)
        yield label(f"{record.use}; {DRIVE_WORDS[record.drive]}", wrap=True)
        yield label("Source card", "section")
        yield label(_source_words(record), wrap=True)
        ladder = Ladder(self.look)
        ladder.show_trust(record.trust)
        yield ladder
        for each in record.statements:
            names = ", ".join(each.contacts)
            said = ", ".join(filter(None, (SOURCE_WORDS[each.kind], each.reference)))
            yield label(f"{names}: {said}", "second", wrap=True)
        for confirmation in record.confirmations:
            when = f" on {confirmation.date}" if confirmation.date else ""
            words = f"Confirmed by {confirmation.who}{when}: {confirmation.how}"
            yield label(words, "second", wrap=True)

    def _carried(self, record: PinoutRecord, connector: Connector) -> Iterator[QWidget]:
        """Show the face, and on it what a record that disagrees has."""
        carried = {name: frozenset(it) for name, it in record.signals.items()}
        others = disagreeing(record, connector, self.owner.library.pinouts())
        near = others[0] if others else None
        was = {it.contact: it.theirs for it in near.differs} if near is not None else {}
        pairs = near.pairs if near is not None else ()
        yield self._face(CarriedFace(connector, carried, was=was, pairs=pairs, other="there"))
        for other in others[:_MOST_USES]:
            told = f"{other.record.title} ({other.record.id}) disagrees: {other.told}."
            yield label(told, "bold", wrap=True)
            made = button(f"Look at {other.record.title}", partial(self.look_at, other.record.id))
            yield _at_left(made)
        if others:
            makers = {it.record.maker for it in others} - {record.maker, ""}
            yield label(_OF_ANOTHER if makers else _BOTH_STAND, "second", wrap=True)

    def _connector(self, record: Connector) -> Iterator[QWidget]:
        yield self._face(CarriedFace(record, {}, names_only=True))
        seen = "mating side" if record.drawn_from == "mating" else f"{record.drawn_from} side"
        sizes = (
            f"Barrel {number(record.barrel.outside_mm)} mm outside, bore "
            f"{number(record.barrel.bore_mm)} mm; clamp {number(record.clamp.min_mm)} to "
            f"{number(record.clamp.max_mm)} mm"
        )
        yield label(f"{record.poles} contacts, {record.gender}, drawn from the {seen}", wrap=True)
        yield label(sizes, wrap=True)
        yield label("What the figures rest on", "section")
        for basis in record.basis:
            said = "measure it on the part in hand" if basis.kind == "memory" else basis.kind
            words = f"{basis.figures.capitalize()}: {said}"
            if basis.reference and basis.kind != "memory":
                words += f", {basis.reference}"
            yield label(words, "second", wrap=True)
        if record.tracing is not None:
            yield label(_traced(record), "second", wrap=True)

    def _face(self, shown: CarriedFace) -> FaceView:
        view = FaceView(self.look)
        view.setFixedHeight(280)
        view.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        view.show_face(shown)
        return view

    def _papers(self, documents: "Sequence[Document]") -> Iterator[QWidget]:
        if not documents:
            return
        yield label("Papers", "section")
        for document in documents:
            made = button(f"{document.name}", partial(self._open_paper, document), "plain")
            made.setToolTip(document.remark or "Open the copy that is kept")
            yield made

    def _used(self, record: "Definition") -> Iterator[QWidget]:
        uses = self.owner.uses(record)
        count = f"Used in {len(uses)} plan{'' if len(uses) == 1 else 's'}"
        yield label(count if uses else "Used in no plan", "section")
        for use in uses[:_MOST_USES]:
            title = use.title or use.path.name
            yield label(f"{title}, as of revision {use.revision}", "second", wrap=True)
        if not uses:
            yield label("Looked for beside the plans opened lately.", "second", wrap=True)

    def _past(self, record: "Definition") -> Iterator[QWidget]:
        changes = self.owner.changes(record)
        yield label("History", "section")
        if not changes:
            yield label("As it ships; not changed here.", "second")
        for change in reversed(changes[-12:]):
            yield label(_change_words(change), "second", wrap=True)


def _at_left(widget: QWidget) -> QWidget:
    holder = QWidget()
    row = QHBoxLayout(holder)
    row.setContentsMargins(0, 0, 0, 0)
    row.addWidget(widget)
    row.addStretch(1)
    return holder


def _traced(record: Connector) -> str:
    """Return over which picture a connector was drawn, at what scale and turn."""
    tracing = record.tracing
    if tracing is None:
        return ""
    names = {it.digest: it.name for it in record.documents}
    turn = f", turned {number(tracing.turn_deg)}\u00b0" if tracing.turn_deg else ""
    dots = number(25.4 / tracing.mm_per_px)
    return f"Drawn over {names.get(tracing.digest, 'a picture')}: {dots} dots an inch{turn}"


def _nothing() -> QWidget:
    return label(
        "Choose a definition at the left, or take in a new pinout or connector.",
        "second",
        wrap=True,
    )


def _source_words(record: PinoutRecord) -> str:
    source = record.source
    by = f"recorded by {source.recorded_by}" if source.recorded_by else ""
    words = SOURCE_WORDS[source.kind]
    parts = (words[:1].upper() + words[1:], source.reference, source.date, by)
    return ", ".join(filter(None, parts))


def _change_words(change: "Change") -> str:
    why = f": {change.why}" if change.why else ""
    return f"{change.at[:10]}, revision {change.revision}, {change.what} by {change.who}{why}"

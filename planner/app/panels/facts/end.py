"""In hand: an end: connector, pinout and on whose word, channel, role, turn, what fits."""

from functools import partial
from typing import TYPE_CHECKING, cast

from planner.app.panels.facts.fits import Fits
from planner.app.panels.facts.page import Page
from planner.app.panels.facts.parts import Parts
from planner.app.panels.facts.units import ShownUnits
from planner.app.panels.widgets.fields import Choice, Field
from planner.app.panels.widgets.labels import label
from planner.app.panels.widgets.rows import MarkedLine
from planner.app.panels.words import (
    CHANNEL_WORDS,
    ROLE_WORDS,
    SOURCE_WORDS,
    TRUST_WORDS,
    trust_mark,
)
from planner.app.workbench import Workbench
from planner.drawing.looks import Look
from planner.dryfit.bodies import proposed_room_mm
from planner.edits import ends
from planner.model.connector import Connector
from planner.model.pinout import PinoutRecord
from planner.units import length_text, number, parse_length_mm
from planner.wiring.roles import role_of
from planner.wording import listed

if TYPE_CHECKING:
    from planner.model.plan import Channel, Role

_SIDES = {
    "solder": "solder side",
    "mating": "mating side, read mirrored",
    "unstated": "side not stated",
}


ROOM_TIP = (
    "How far the jacket's cut end stands above the highest terminal, such as 9.5 mm; empty takes "
    "what is proposed"
)


class EndPage(Page):
    """Show the end that is selected."""

    word = "end"

    def __init__(self, workbench: Workbench, look: Look, units: ShownUnits) -> None:
        super().__init__(workbench, look, units)
        self.title = label("", "head", wrap=True)
        self.name = Field("Name", self._on_name, "What the end is called, such as left cup")
        self.pinout = Choice("Pinout", (), self._on_pinout)
        self.trust = MarkedLine("caution", "", look)
        self.channel = Choice("Channel", CHANNEL_WORDS, self._on_channel)
        self.role = Choice("Goes to the", ROLE_WORDS, self._on_role)
        self.turn = Field("Turn", self._on_turn, "Counter-clockwise, seen from the solder side")
        self.room = Field("Jacket end", self._on_room, ROOM_TIP)
        self.measure = label("", "small", wrap=True)
        self.column.addWidget(self.title)
        self.column.addWidget(self.name)
        self.add_facts("Connector", "Drawn from")
        self.column.addWidget(self.pinout)
        self.column.addWidget(self.trust)
        self.add_facts("Reference", "Recorded")
        for part in (self.channel, self.role, self.turn, self.room):
            self.column.addWidget(part)
        self.add_facts("Shell", "Clamp")
        self.column.addWidget(self.measure)
        self.fits = Fits(workbench, look)
        self.column.addWidget(self.fits)
        self.parts = Parts(self)
        self.column.addWidget(self.parts)
        self.column.addStretch(1)

    def refresh(self) -> None:
        """Show what is selected now."""
        plan, key = self.workbench.plan, self.workbench.selection.end
        end = plan.end_by_id.get(key)
        if end is None:
            return
        connector, pinout = plan.connector_of(key), plan.pinout_of(key)
        self.title.setText(f"End {key}")
        self.name.show_text(end.name)
        self._show_connector(connector)
        self._show_pinout(connector, pinout)
        self.channel.setVisible(pinout is None or pinout.one_channel)
        self.channel.show_value(end.channel)
        self.role.show_value(end.role)
        found = role_of(plan, key)
        self.role.setToolTip(f"By its pinout and connector: {found or 'not known'}")
        self.turn.show_text(f"{number(end.turn_deg, 1)}\u00b0")
        self._show_room(end.room_mm, connector)
        self.fits.show_end(key)
        self.parts.show_place(end=key)

    def _show_connector(self, connector: Connector | None) -> None:
        if connector is None:
            self.show_fact("Connector", "not chosen: pick one on the shelf")
            for name in ("Drawn from", "Shell", "Clamp"):
                self.show_fact(name, "")
            self.measure.hide()
            return
        maker = f", {connector.maker}" if connector.maker else ""
        self.show_fact("Connector", f"{connector.title}{maker}")
        self.show_fact("Drawn from", _SIDES[connector.drawn_from])
        small = self.units.small
        shell = connector.shell
        sides = f"{number(shell.width_mm)} by {small(shell.height_mm)}"
        self.show_fact("Shell", sides if shell.shape == "d" else f"bore {small(shell.bore_mm)}")
        clamp = connector.clamp
        self.show_fact("Clamp", f"grips {number(clamp.min_mm)} to {small(clamp.max_mm)}")
        groups = connector.to_measure()
        self.measure.setText(f"From memory, measure on the part: {listed(groups)}.")
        self.measure.setVisible(bool(groups))

    def _show_room(self, room_mm: float, connector: Connector | None) -> None:
        proposed = proposed_room_mm(connector) if connector else 0.0
        text = length_text(room_mm or proposed, self.units.length)
        self.room.show_text(text if room_mm else f"{text}, proposed")
        self.room.setVisible(connector is not None)

    def _show_pinout(self, connector: Connector | None, pinout: PinoutRecord | None) -> None:
        fitting = list(self.workbench.library.pinouts_for(connector.id)) if connector else []
        if pinout is not None and pinout.id not in {it.id for it in fitting}:
            fitting.insert(0, pinout)
        none = () if pinout else (("", "not chosen" if fitting else "none fits"),)
        self.pinout.set_choices((*none, *((it.id, it.title) for it in fitting)))
        self.pinout.show_value(pinout.id if pinout else "")
        self.pinout.box.setEnabled(bool(fitting))
        self.trust.setVisible(pinout is not None)
        self.show_fact("Reference", pinout.source.reference if pinout else "")
        self.show_fact("Recorded", _recorded(pinout) if pinout else "")
        if pinout is not None:
            self.trust.mark.set_kind(trust_mark(pinout))
            said = f"{SOURCE_WORDS[pinout.source.kind]}, {TRUST_WORDS[pinout.trust]}"
            self.trust.words.setText(said[:1].upper() + said[1:])

    # -- edits ------------------------------------------------------------------------------

    @property
    def _key(self) -> str:
        return self.workbench.selection.end

    def _on_name(self, text: str) -> str:
        return self.do(f"Name {self._key}", partial(ends.rename_end, end=self._key, name=text))

    def _on_pinout(self, key: str) -> None:
        record = self.workbench.library.pinout(key)
        if record is not None:
            edit = partial(ends.choose_pinout, end=self._key, pinout=record)
            self.do(f"Choose {record.title} for {self._key}", edit)

    def _on_channel(self, value: str) -> None:
        edit = partial(ends.set_channel, end=self._key, channel=cast("Channel", value))
        self.do(f"Channel of {self._key}", edit)

    def _on_role(self, value: str) -> None:
        edit = partial(ends.set_role, end=self._key, role=cast("Role", value))
        self.do(f"Role of {self._key}", edit)

    def _on_turn(self, text: str) -> str:
        plain = text.rstrip("\u00b0 ").replace("\u2212", "-").replace(",", ".")
        try:
            turn_deg = float(plain)
        except ValueError:
            return f"{text!r} is not an angle: write degrees, such as 20 or -45."
        if not -360 <= turn_deg <= 360:
            return f"{text!r} is more than a full turn: write -360 to 360 degrees."
        return self.do(
            f"Turn {self._key}", partial(ends.turn_end, end=self._key, turn_deg=turn_deg)
        )

    def _on_room(self, text: str) -> str:
        if text.strip() in {"", "0"} or text.rstrip().endswith("proposed"):
            room_mm = 0.0
        else:
            try:
                room_mm = parse_length_mm(text, "in" if self.units.length == "inch" else "mm")
            except ValueError as error:
                return f"{error}."
        edit = partial(ends.set_room, end=self._key, room_mm=room_mm)
        return self.do(f"Jacket end at {self._key}", edit)


def _recorded(pinout: PinoutRecord) -> str:
    return ", ".join(filter(None, (pinout.source.date, pinout.source.recorded_by)))

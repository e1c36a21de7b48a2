"""The canvas by keyboard: from contact to contact, pick up, land, lift, put back."""

import math
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from planner.model.place import Place

if TYPE_CHECKING:
    from planner.app.canvas.view import BenchView

_WAYS = {
    Qt.Key.Key_Left: (-1.0, 0.0),
    Qt.Key.Key_Right: (1.0, 0.0),
    Qt.Key.Key_Up: (0.0, -1.0),
    Qt.Key.Key_Down: (0.0, 1.0),
}


class Keys:
    """Move the focus frame over the contacts and act on the one that it is round."""

    def __init__(self, view: "BenchView") -> None:
        self._view = view

    def press(self, event: QKeyEvent) -> bool:
        """Handle a key; False for one that means nothing here."""
        key = Qt.Key(event.key())
        if key in _WAYS:
            self._go(*_WAYS[key])
        elif key in {Qt.Key.Key_Space, Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self._act(exchange=bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier))
        elif key in {Qt.Key.Key_Delete, Qt.Key.Key_Backspace}:
            self._lift()
        else:
            return False
        return True

    def step(self, *, forward: bool) -> bool:
        """Go to the next contact in the order of ends; False beyond the last one."""
        order = list(self._view.bench_scene.bench.contacts)
        here = (self._view.focused.end, self._view.focused.contact)
        if not order:
            return False
        place = order.index(here) + (1 if forward else -1) if here in order else 0
        if here not in order and not forward:
            place = len(order) - 1
        if not 0 <= place < len(order):
            return False
        self._focus(order[place])
        return True

    def _focus(self, found: tuple[str, str]) -> None:
        self._view.focus_contact(Place(end=found[0], contact=found[1]))

    def _go(self, dx: float, dy: float) -> None:
        contacts = self._view.bench_scene.bench.contacts
        here = contacts.get((self._view.focused.end, self._view.focused.contact))
        if here is None:
            self.step(forward=True)
            return

        def cost(point: tuple[float, float]) -> float:
            ahead = (point[0] - here[0]) * dx + (point[1] - here[1]) * dy
            aside = abs((point[0] - here[0]) * dy) + abs((point[1] - here[1]) * dx)
            return ahead + 2.0 * aside if ahead > 1.0 else math.inf

        best = min(contacts, key=lambda key: cost(contacts[key]))
        if cost(contacts[best]) < math.inf:
            self._focus(best)

    def _act(self, *, exchange: bool) -> None:
        view, place = self._view, self._view.focused
        if not place.contact or view.side != "solder":
            return
        if view.workbench.hand is None:
            conductor = self._core_for(place)
            if conductor:
                view.workbench.pick_up(place.end, conductor)
            return
        found = (place.end, place.contact)
        view.aim.look_at(found, view.room(), exchange=exchange)
        target = view.aim.target
        if target is None:
            view.workbench.put_back()
        elif not view.aim.drop():
            view.workbench.refused.emit(target.ghost.reason, "Hold Shift to exchange.")

    def _core_for(self, place: Place) -> str:
        """Return the core to take: what is landed there, else what wants it, else any."""
        block = self._view.bench_scene.bench.ends[place.end].block
        landed = [name for name, strand in block.strands.items() if strand.contact == place.contact]
        loose = [name for name, strand in block.strands.items() if not strand.contact]
        wanting = [name for name in loose if block.materials[name].wanted == place.contact]
        return (landed + wanting + loose + [""])[0]

    def _lift(self) -> None:
        view, place = self._view, self._view.focused
        there = view.workbench.wiring.landed_on(place.end, place.contact) if place.contact else ()
        if there:
            view.workbench.lift(place.end, there[-1])
        elif view.workbench.selection.conductor:
            chosen = view.workbench.selection
            if (chosen.end, chosen.conductor) in view.workbench.plan.landing_at:
                view.workbench.lift(chosen.end, chosen.conductor)

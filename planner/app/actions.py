"""Every action of the window made from the table: menus, buttons and the key list follow."""

from collections.abc import Callable, Iterator

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QWidget

from planner.app.action_spec import ActionSpec, Scope
from planner.app.action_specs import SPECS


def key_text(keys: tuple[str, ...]) -> str:
    """Print the first of some keys as a person reads it: `Ctrl + Z`."""
    if not keys:
        return ""
    return QKeySequence(keys[0]).toString(QKeySequence.SequenceFormat.NativeText)


class Actions(QObject):
    """The actions made from their specs. An action without a handler stays disabled."""

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self._made: dict[str, QAction] = {}
        self._handled: set[str] = set()
        for spec in SPECS:
            self._made[spec.name] = self._make(spec, window)

    def _make(self, spec: ActionSpec, window: QWidget) -> QAction:
        action = QAction(spec.text, self)
        action.setObjectName(spec.name)
        action.setShortcuts([QKeySequence(key) for key in spec.keys])
        shown = key_text(spec.keys)
        action.setToolTip(f"{spec.tip} ({shown})" if shown else spec.tip)
        action.setStatusTip(spec.tip)
        action.setCheckable(spec.checkable)
        action.setEnabled(False)
        if spec.scope != "window":
            action.setShortcutContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        else:
            action.setShortcutContext(Qt.ShortcutContext.WindowShortcut)
            window.addAction(action)
        return action

    def __getitem__(self, name: str) -> QAction:
        return self._made[name]

    def __iter__(self) -> Iterator[tuple[ActionSpec, QAction]]:
        return ((spec, self._made[spec.name]) for spec in SPECS)

    def handle(self, name: str, slot: Callable[[], object]) -> None:
        """Give an action its one handler, and enable it."""
        action = self._made[name]
        action.triggered.connect(lambda _checked=False: slot())
        self._handled.add(name)
        action.setEnabled(True)

    def is_handled(self, name: str) -> bool:
        """Tell whether an action has a handler."""
        return name in self._handled

    def scope_to(self, widget: QWidget, *scopes: Scope) -> None:
        """Let the actions of these scopes work while `widget` or a child of it has the focus."""
        widget.addActions([action for spec, action in self if spec.scope in scopes])

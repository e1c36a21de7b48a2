"""One square ink frame on a paper gap round what the keyboard came to; nothing for the mouse.

The same as `:focus-visible` on the web: what is typed in is always framed, anything else only where
the last thing that a person used was the keyboard.
"""

from PySide6.QtCore import QEvent, QObject, QRect, Qt
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent, QPen, QWindow
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractSpinBox,
    QApplication,
    QComboBox,
    QLineEdit,
    QPlainTextEdit,
    QWidget,
)
from shiboken6 import isValid

from planner.drawing.looks import Look

_REACH = 4
_TYPED_IN = (QLineEdit, QPlainTextEdit)
_CONTROLS = (*_TYPED_IN, QAbstractButton, QAbstractSpinBox, QComboBox)


class FocusRing(QWidget):
    """The frame itself: it lies over the window and lets every event through."""

    def __init__(self, parent: QWidget, look: Look) -> None:
        super().__init__(parent)
        self._look = look
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setAccessibleName("")

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint ink outside, paper inside."""
        with QPainter(self) as painter:
            for inset, width, colour in ((1, 2, self._look.ink), (2.5, 1, self._look.paper)):
                pen = QPen(QColor(colour), width)
                pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
                painter.setPen(pen)
                painter.drawRect(self.rect().toRectF().adjusted(inset, inset, -inset, -inset))


def _frames_itself(widget: QWidget) -> bool:
    """Tell whether a panel draws the frame of this control itself."""
    step: QWidget | None = widget if isinstance(widget, _CONTROLS) else None
    while step is not None and step.property("surface") is None:
        step = step.parentWidget()
    return step is not None or widget.property("card") is not None


def _is_held(event: QKeyEvent) -> bool:
    """Tell whether a key only changes what others do."""
    keys = Qt.Key
    return event.key() in {
        keys.Key_Shift,
        keys.Key_Control,
        keys.Key_Alt,
        keys.Key_AltGr,
        keys.Key_Meta,
    }


class FocusKeeper(QObject):
    """Move the frame with the focus, in whichever window it is, once it is woken."""

    def __init__(self, app: QApplication, look: Look) -> None:
        super().__init__(app)
        self._look = look
        self._ring: FocusRing | None = None
        self._watched: list[QWidget] = []  # what is framed, and what it lies in
        self._typed_into: QWidget | None = None  # what has the keyboard, framed or not
        self._by_keyboard = False
        self._awake = False  # no frame while the window is being built
        self._app = app

    def wake(self) -> None:
        """Frame what gets the focus from now on."""
        self._awake = True
        self._app.focusChanged.connect(self._on_focus_changed)
        self._app.focusWindowChanged.connect(self._on_window_changed)
        self._on_window_changed(self._app.focusWindow())
        self._listen_to(self._app.focusWidget())

    def let_go(self) -> None:
        """Frame nothing any more; a second call does nothing."""
        if not self._awake:
            return
        self._awake = False
        self._let_go()
        self._listen_to(None)
        self._app.focusChanged.disconnect(self._on_focus_changed)
        self._app.focusWindowChanged.disconnect(self._on_window_changed)

    def set_look(self, look: Look) -> None:
        """Draw in another look from the next focus on."""
        self._look = look
        if self._watched:
            self._frame(self._watched[0])

    @property
    def ring(self) -> FocusRing | None:
        """The frame that is shown, if one is."""
        return self._ring

    def _on_focus_changed(self, _old: QWidget | None, now: QWidget | None) -> None:
        self._let_go()
        self._listen_to(now)
        if now is not None and self._is_due(now):
            self._frame(now)

    def _is_due(self, widget: QWidget) -> bool:
        if widget.isWindow() or _frames_itself(widget):
            return False
        return isinstance(widget, _TYPED_IN) or self._by_keyboard

    # -- keyboard or pointer ----------------------------------------------------------------

    def _on_window_changed(self, window: QWindow | None) -> None:
        """Hear where the pointer is pressed in a window; a second call installs nothing more."""
        if window is not None:
            window.installEventFilter(self)

    def _listen_to(self, widget: QWidget | None) -> None:
        """Hear the keys, which reach what has the focus before any shortcut does."""
        before, self._typed_into = self._typed_into, widget
        if before is not None and isValid(before):
            before.removeEventFilter(self)
        if widget is not None:
            widget.installEventFilter(self)

    def _on_pointed(self) -> None:
        self._by_keyboard = False
        if self._watched and not isinstance(self._watched[0], _TYPED_IN):
            self._let_go()

    # -- the frame --------------------------------------------------------------------------

    def _let_go(self) -> None:
        for widget in self._watched:
            # The focus also leaves a window that is being taken down.
            if isValid(widget) and widget is not self._typed_into:
                widget.removeEventFilter(self)
        self._watched = []
        if self._ring is not None and isValid(self._ring):
            self._ring.hide()
            self._ring.deleteLater()
        self._ring = None

    def _frame(self, widget: QWidget) -> None:
        self._let_go()
        window = widget.window()
        self._ring = FocusRing(window, self._look)
        step: QWidget | None = widget
        while step is not None:
            self._watched.append(step)
            step.installEventFilter(self)
            step = None if step is window else step.parentWidget()
        self._move()

    def _move(self) -> None:
        if self._ring is None or not self._watched:
            return
        widget, window = self._watched[0], self._watched[-1]
        shown = QRect(widget.mapTo(window, widget.rect().topLeft()), widget.size())
        shown.adjust(-_REACH, -_REACH, _REACH, _REACH)
        self._ring.setGeometry(shown.intersected(window.rect()))
        self._ring.setVisible(widget.isVisible())
        self._ring.raise_()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Follow what is framed when it moves; see whether keyboard or pointer was last used."""
        kind, kinds = event.type(), QEvent.Type
        if kind in {kinds.Move, kinds.Resize, kinds.Show, kinds.Hide}:
            self._move()
        elif kind == kinds.ShortcutOverride and isinstance(event, QKeyEvent):
            self._by_keyboard |= not _is_held(event)
        elif isinstance(watched, QWindow) and kind in {kinds.MouseButtonPress, kinds.TouchBegin}:
            self._on_pointed()
        return False

"""Hands on the real window: pointer and keys go in at the window, as a system sends them."""

from collections.abc import Callable

from PySide6.QtCore import QPoint, Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QApplication,
    QDialog,
    QFileDialog,
    QTreeView,
    QWidget,
)

from planner.app.printing.dialog import SheetDialog

LEFT, NONE = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
CTRL = Qt.KeyboardModifier.ControlModifier
ENTER, S = Qt.Key.Key_Return, Qt.Key.Key_S
_STEPS = 6


class Hands:
    """Point, press, drag and type. Nothing is reached that a person could not see or focus."""

    def __init__(self, shell):
        self.shell = shell
        self.in_front = shell.window  # what a window manager gives the focus back to
        self.canvas = shell.bench.canvas
        self.plan = lambda: shell.bench.workbench.plan

    # -- pointer ----------------------------------------------------------------------------

    def settle(self):
        """Let everything happen that is due; give the focus back as a window manager does."""
        QApplication.processEvents()
        if QApplication.focusWindow() is None:
            (QApplication.activeModalWidget() or self.in_front).activateWindow()
            QApplication.processEvents()

    def _spot(self, widget: QWidget, point: QPoint | None):
        self.settle()
        window = widget.window()
        at = widget.mapTo(window, point or widget.rect().center())
        there = window.childAt(at) or window
        assert there is widget or widget.isAncestorOf(there), f"{there} lies over {widget}"
        assert widget.isEnabled()
        return window.windowHandle(), at

    def click(self, widget: QWidget, point: QPoint | None = None):
        """Click in the middle of a widget, or at a point of it."""
        window, at = self._spot(widget, point)
        QTest.mouseMove(window, at)
        QTest.mouseClick(window, LEFT, NONE, at)
        self.settle()

    def click_row(self, view, index):
        """Scroll a row into sight and click it."""
        view.scrollTo(index)
        self.click(view.viewport(), view.visualRect(index).center())

    def click_menu(self, title: str, name: str):
        """Open a menu of the bar and click one of its entries."""
        menu, bar = self.shell.window.menus[title], self.shell.window.menuBar()
        self.click(bar, bar.actionGeometry(menu.menuAction()).center())
        self.click(menu, menu.actionGeometry(self.shell.window.acts[name]).center())

    def drag_core(self, end: str, conductor: str, contact: str):
        """Drag the tip of a core onto a contact, in a few steps."""
        drawn = self.canvas.bench_scene.bench
        start, stop = (
            self.canvas.mapFromScene(*point)
            for point in (drawn.tips[end, conductor], drawn.contacts[end, contact])
        )
        window, at = self._spot(self.canvas.viewport(), start)
        way = stop - start
        QTest.mouseMove(window, at)
        QTest.mousePress(window, LEFT, NONE, at)
        for step in range(1, _STEPS + 1):
            QTest.mouseMove(window, at + way * (step / _STEPS))
        QTest.mouseRelease(window, LEFT, NONE, at + way)
        self.settle()

    # -- keys -------------------------------------------------------------------------------

    def key(self, *codes, modifiers=NONE):
        """Press keys, each in the window that has the focus."""
        for code in codes:
            self.settle()
            QTest.keyClick(QApplication.focusWindow(), code, modifiers)

    def write(self, text: str, *then):
        """Type text, letter by letter, then press keys."""
        for letter in text:
            self.key(letter)
        self.key(*then)

    # -- dialogs ----------------------------------------------------------------------------

    @staticmethod
    def in_dialog(kind: type[QDialog], doing: Callable[[QDialog], object], begin) -> None:
        """Do something in the dialog that `begin` opens and waits for."""
        met, failed = [], []

        def look():
            dialog = QApplication.activeModalWidget()
            if not isinstance(dialog, kind):
                QTimer.singleShot(20, look)
                return
            met.append(dialog)
            try:
                doing(dialog)
            except BaseException as error:  # noqa: BLE001 - raised below, out of the dialog's loop
                failed.append(error)
            dialog.close()  # only where it was not answered: the test must not hang

        QTimer.singleShot(20, look)
        begin()
        if failed:
            raise failed[0]
        assert len(met) == 1

    def name_file(self, name: str, begin, *, button: str = ""):
        """Write a file's name in the dialog that `begin` opens; click a button of it, or Enter."""

        def doing(dialog):
            self.key(Qt.Key.Key_A, modifiers=CTRL)
            self.write(name)
            self.click(_button(dialog, button)) if button else self.key(ENTER)

        self.in_dialog(QFileDialog, doing, begin)

    def save_sheet(self, name: str, begin, *, button: str = ""):
        """Save the sheet from the dialog that `begin` opens: by its buttons, or by keys alone."""

        def doing(dialog):
            for _ in range(500):  # the pages are drawn in the background
                if not dialog.desk.busy:
                    break
                QTest.qWait(20)
            save = dialog.save
            ask = (lambda: self.click(save)) if button else lambda: self.key(S, modifiers=CTRL)
            self.name_file(name, ask, button=button)
            self.click(dialog.closing) if button else self.key(Qt.Key.Key_Escape)

        self.in_dialog(SheetDialog, doing, begin)

    def click_file(self, name: str, begin):
        """Click a file, and then Open, in the dialog that `begin` opens."""

        def doing(dialog):
            view = dialog.findChild(QTreeView, "treeView")
            for _ in range(500):  # the folder is read in the background
                found = [row for row in _rows(view) if row.data() == name]
                if found:
                    break
                QTest.qWait(10)
            self.click_row(view, found[0])
            self.click(_button(dialog, "Open"))

        self.in_dialog(QFileDialog, doing, begin)


def _rows(view: QTreeView):
    model, root = view.model(), view.rootIndex()
    return [model.index(row, 0, root) for row in range(model.rowCount(root))]


def _button(dialog: QDialog, words: str) -> QAbstractButton:
    """The button of a dialog that says so."""
    return next(
        button
        for button in dialog.findChildren(QAbstractButton)
        if button.isVisible() and button.text().replace("&", "") == words
    )

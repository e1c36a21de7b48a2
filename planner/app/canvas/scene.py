"""The scene of the bench: one item a group, replaced one by one as the plan changes."""

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QGraphicsScene

from planner.app.canvas.items.group_item import GroupItem
from planner.drawing.bench import Bench, Layer
from planner.drawing.primitives import DrawList


class BenchScene(QGraphicsScene):
    """Hold the items of a bench drawing, and the overlays that come and go above it."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.bench = Bench()
        self._items: dict[str, GroupItem] = {}
        self._overlays: dict[str, GroupItem] = {}

    def show_bench(self, bench: Bench) -> None:
        """Show another drawing; what did not change keeps its item and is not repainted."""
        self.bench = bench
        for key in self._items.keys() - bench.groups.keys():
            self.removeItem(self._items.pop(key))
        for key, group in bench.groups.items():
            item = self._items.get(key)
            if item is None:
                item = self._items[key] = GroupItem(key, group.layer)
                self.addItem(item)
            item.show_items(group.items, group.origin)
            item.setZValue(group.layer)

    def item_of(self, key: str) -> GroupItem | None:
        """Return the item of a group."""
        return self._items.get(key)

    def overlay(self, key: str, layer: Layer, items: DrawList) -> None:
        """Show an overlay in a layer; no items take it away."""
        item = self._overlays.get(key)
        if item is None:
            if not items:
                return
            item = self._overlays[key] = GroupItem(key, layer)
            self.addItem(item)
        item.show_items(items)

    def overlay_items(self, key: str) -> DrawList:
        """Return what an overlay draws now."""
        item = self._overlays.get(key)
        return item.items if item is not None else ()

    def hide_strand(self, end: str, conductor: str, *, hidden: bool) -> None:
        """Hide a core with its plate while it is in hand."""
        for kind in ("conductor", "plate"):
            item = self._items.get(f"{kind}/{end}/{conductor}")
            if item is not None:
                item.setVisible(not hidden)

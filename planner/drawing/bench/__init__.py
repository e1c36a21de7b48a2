"""The bench: every end of the lead at once, the cable between, and where each thing can be hit."""

from planner.drawing.bench.layout import BenchLayout
from planner.drawing.bench.parts import Bench, EndBlock, Group, Layer, Settings

__all__ = ["Bench", "BenchLayout", "EndBlock", "Group", "Layer", "Settings"]

"""The mating side as a small marked key, where it has no room in the frame of the face."""

from planner.model.connector import Connector
from planner.sheet.end_page.panel import Panel
from planner.sheet.facts import EndFacts
from planner.sheet.frame import STRIP, Framing, mating_strip
from planner.sheet.paper import LIVE_WIDTH


def key_panel(facts: EndFacts, connector: Connector) -> Panel:
    """Draw the key with its words in the right column."""
    framing = Framing(LIVE_WIDTH, 0.0, STRIP, lines=0, in_corners=True)
    drawn = mating_strip(framing, facts, connector)
    return Panel(Panel(drawn, STRIP).at(-200, -framing.strip_top), STRIP)

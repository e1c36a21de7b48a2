"""The side view of an end on paper, where its terminals stand at different heights."""

from dataclasses import replace

from planner.drawing.fitting.side import side_height, side_view, side_width, wants_side_view
from planner.drawing.primitives import DrawList, Text
from planner.dryfit.fit import EndFit
from planner.model.connector import Connector
from planner.sheet.facts import EndFacts
from planner.sheet.frame import scale_text
from planner.sheet.lettering import TITLE_HEIGHT, panel_title
from planner.sheet.stack import Part
from planner.sheet.words import Words

SCALES = (4.0, 3.5, 3.0, 2.5, 2.2, 2.0, 1.8, 1.5, 1.2, 1.0, 0.75, 0.5)
_TOP = TITLE_HEIGHT + 200
_WIDEST = 7000.0
_HEIGHT_WORDS = ("low", "middle", "high", "long")


def side_panel(
    facts: EndFacts, connector: Connector, width: float, most: float, *, withheld: bool
) -> Part | None:
    """Draw the side view `width` wide and at most `most` high, its words included.

    None where it would say nothing, or has no room.
    """
    fit = facts.fit
    if fit is None or not wants_side_view(connector):
        return None
    scale = _scale(facts, connector, fit, min(width, _WIDEST), most - _TOP)
    if scale is None:
        return None
    drawn = side_view(
        connector,
        fit,
        origin=(0, _TOP),
        width=min(width, _WIDEST),
        scale=scale * 100,
        look=facts.look,
        sleeves_mm=_sleeves(facts),
        withheld=withheld,
        view_deg=facts.view_deg,
    )
    head = panel_title(
        0, width, 0, facts.words("end.side_view"), facts.words.decimal(scale_text(scale))
    )
    height = _TOP + side_height(connector, fit, scale * 100, facts.look)
    return (*head, *_translated(drawn, facts.words)), height


def _translated(drawn: DrawList, words: Words) -> DrawList:
    """Return the view with its words for heights from the catalogue."""
    return tuple(
        replace(item, text=words(f"end.height_{item.text}"))
        if isinstance(item, Text) and not item.bold and item.text in _HEIGHT_WORDS
        else item
        for item in drawn
    )


def _scale(
    facts: EndFacts, connector: Connector, fit: EndFit, width: float, height: float
) -> float | None:
    for scale in SCALES:
        high = side_height(connector, fit, scale * 100, facts.look)
        if high <= height and side_width(connector, fit, scale * 100, facts.look) <= width:
            return scale
    return None


def _sleeves(facts: EndFacts) -> dict[str, float]:
    flags = (flag for joint in facts.joints for flag in joint.flags)
    return {flag.conductor: flag.sleeve_mm for flag in flags if flag.sleeve_mm > 0}

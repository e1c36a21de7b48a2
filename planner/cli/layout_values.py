"""The layout of a plan as the JSON object that machines read."""

import dataclasses
import math
from collections.abc import Sequence
from typing import Any

from planner.dryfit.bodies import Capsule
from planner.dryfit.turning import Turning
from planner.dryfit.wires import FitLine
from planner.services.laying_out import EndLayout, Layout
from planner.units import rounded

_DIGITS = 4
_OHM_DIGITS = 6


def layout_values(path: str, laid: Layout, *, written: bool) -> dict[str, object]:
    """Return the object of a layout; a figure that is not known is null. See docs/formats."""
    return {
        "plan": path,
        "written": written,
        "ends": [_end_values(end) for end in laid.ends],
        "electrical": _plain(laid.electrical),
    }


def _end_values(end: EndLayout) -> dict[str, object]:
    fit, sleeves = end.fit, end.sleeves
    return {
        "end": fit.end,
        "turn_deg": _figure(fit.turn_deg),
        "crossings": [list(pair) for pair in fit.crossings],
        "least_gap_mm": _figure(fit.least_gap_mm),
        "gaps": [
            {
                "first": _body(gap.first),
                "second": _body(gap.second),
                "gap_mm": _figure(gap.gap_mm),
                "limit_mm": _figure(gap.limit_mm),
                "class": gap.grade,
            }
            for gap in fit.gaps
        ],
        "best": _turning_values(end.turning) if end.turning else None,
        "joints": [
            {
                "order": number,
                "contact": way.contact,
                "conductors": list(way.conductors),
                "margin_mm": _figure(way.margin_mm),
                "iron_deg": _figure(way.direction_deg),
                "clamping": way.clamping + 1,
                "nearest": way.blocker,
            }
            for number, way in enumerate(fit.access, start=1)
        ],
        "leads": [_plain(length) for length in end.lengths],
        "sleeves": [_plain(use) for use in sleeves.sleeves],
        "sleeved": [_plain(use) for use in sleeves.on],
        "dabs": _spots(sleeves.dabs),
        "liner": sleeves.liner,
        "uncured": _spots(sleeves.uncured),
        "fits": [_fit_values(line) for line in end.fits],
    }


def _turning_values(turning: Turning) -> dict[str, object]:
    return {
        "turn_deg": _figure(turning.turn_deg),
        "crossings": turning.crossings,
        "gap_mm": _figure(turning.gap_mm),
        "swaps": [{"conductor": core, "contact": contact} for core, contact in turning.swaps],
        "groups": [_plain(group) for group in turning.groups],
        "verdict": turning.verdict,
    }


def _fit_values(line: FitLine) -> dict[str, object]:
    return {
        "what": line.what,
        "where": line.where.as_dict(),
        "into": line.into,
        "answer": line.fit.answer,
        "needs_mm": _figure(line.fit.needs_mm),
        "has_mm": _figure(line.fit.has_mm),
        "conductors": list(line.wires),
    }


def _spots(spots: Sequence[tuple[str, str, str]]) -> list[dict[str, str]]:
    return [{"contact": contact, "towards": other, "why": why} for contact, other, why in spots]


def _body(body: Capsule) -> dict[str, str]:
    named = {"contact": body.contact, "conductor": body.conductor}
    return {"kind": body.kind} | {key: name for key, name in named.items() if name}


def _plain(value: object) -> Any:  # noqa: ANN401 - whatever JSON holds
    """Return a record's values as JSON has them, resistances to a microohm."""
    if dataclasses.is_dataclass(value):
        return {
            field.name: _plain(getattr(value, field.name)) for field in dataclasses.fields(value)
        }
    if hasattr(value, "model_dump"):
        return value.model_dump()
    if isinstance(value, tuple | list):
        return [_plain(item) for item in value]
    return _figure(value, _OHM_DIGITS) if isinstance(value, float) else value


def _figure(value: float, digits: int = _DIGITS) -> float | None:
    """Return a figure, rounded; null for what is not finite: there is no such pair."""
    return rounded(value, digits) if math.isfinite(value) else None

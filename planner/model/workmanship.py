"""How the bench works, and what it works to: profiles, limits, and what is assumed of the gear."""

from typing import Literal

from pydantic import Field

from planner.model.base import Record

InsulationGap = Literal["below-two", "one-to-two"]
SleeveOverlap = Literal["five-mm", "six-mm"]
ShieldJoint = Literal["first", "last", "free"]


class Workmanship(Record):
    """The chosen rules of workmanship of a plan.

    `insulation_gap`: `below-two`, less than two conductor diameters (NASA-STD-8739.3, 9.1.1 and
    9.1.2); `one-to-two`, one to two diameters with insulation (US Army STP 11-25R13-SM-TG, App. A).
    `sleeve_overlap` on the insulation: `five-mm`, 5 mm or two diameters, the larger
    (NASA-STD-8739.3, 9.8); `six-mm`, 6 mm or two diameters (J-STD-001).
    Gap limits are shares of the connector's own smallest bare gap; bodies are thought thicker by
    `tolerance_mm`, since leads wander. `shield_joint`: soldered first, last, or where it is best.
    `trim_mm` is cut off each end of a cable to square it: common practice, no source.
    What the shares and the tolerance are at first is our own choice, with no source.
    """

    insulation_gap: InsulationGap = "one-to-two"
    sleeve_overlap: SleeveOverlap = "five-mm"
    sleeve_share: float = Field(default=0.35, gt=0, le=1)
    watch_share: float = Field(default=0.7, gt=0, le=2)
    tolerance_mm: float = Field(default=0.05, ge=0, le=1)
    shield_joint: ShieldJoint = "free"
    trim_mm: float = Field(default=10.0, ge=0, le=200)


class Assumed(Record):
    """What is taken for granted of the gear on both sides, and the limits for notes on it.

    The figures that it begins with are our own choice, with no source.
    """

    temperature_c: float = Field(default=20.0, ge=-60, le=200)
    source_ohm: float = Field(default=100.0, gt=0, le=1e6)
    load_ohm: float = Field(default=32.0, gt=0, le=1e6)
    balance_limit_percent: float = Field(default=5.0, gt=0, le=1000)
    crosstalk_limit_db: float = Field(default=-40.0, ge=-200, le=0)

"""Diagnosis: from readings to the smallest explanations, in the builder's words."""

from planner.proving.diagnosing.diagnose import diagnose
from planner.proving.diagnosing.records import (
    Contradiction,
    Diagnosis,
    Explanation,
    Fault,
    HighJoint,
    NextProbe,
)
from planner.proving.diagnosing.search import CancelledError

__all__ = [
    "CancelledError",
    "Contradiction",
    "Diagnosis",
    "Explanation",
    "Fault",
    "HighJoint",
    "NextProbe",
    "diagnose",
]

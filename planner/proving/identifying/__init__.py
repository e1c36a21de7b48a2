"""Tell what hangs on the contacts of a sample from readings between them."""

from planner.proving.identifying.answer import (
    CommonReturn,
    Driver,
    Found,
    Identified,
    Microphone,
    NextReading,
    Rival,
    ShellState,
)
from planner.proving.identifying.identifying import identify
from planner.proving.identifying.sample import SampleReading, SampleReadings, sample_of
from planner.proving.identifying.telling import METER_CAUTION, cautions, sentences

__all__ = [
    "METER_CAUTION",
    "CommonReturn",
    "Driver",
    "Found",
    "Identified",
    "Microphone",
    "NextReading",
    "Rival",
    "SampleReading",
    "SampleReadings",
    "ShellState",
    "cautions",
    "identify",
    "sample_of",
    "sentences",
]

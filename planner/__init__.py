"""Cupwright: a pinout and solder-layout planner for hand-built audio leads."""

__version__ = "0.1.0"

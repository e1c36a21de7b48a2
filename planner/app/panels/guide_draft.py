"""What has been chosen for a new lead so far, and the plan that is made of it. No Qt here."""

from dataclasses import dataclass, field
from typing import Literal

from planner.edits import cables, ends, shapes
from planner.edits.texts import set_order
from planner.model.cable import Cable
from planner.model.connector import Connector
from planner.model.pinout import PinoutRecord
from planner.model.plan import Plan, ShieldPolicy
from planner.units import parse_length_mm

Shape = Literal["one", "two", "many"]
MANY = "B1 \u2026"  # the legs of a loom are chosen together: they are alike


@dataclass(frozen=True, slots=True)
class Chosen:
    """A connector, and its pinout once that is chosen."""

    connector: Connector
    pinout: PinoutRecord | None = None


@dataclass(slots=True)
class Draft:
    """The answers of the guide; lengths stay text until they are read."""

    shape: Shape = "two"
    legs: int = 8
    length: str = "1.2 m"
    leg_length: str = "0.6 m"
    policy: ShieldPolicy | None = "source-end"
    order: str = ""
    cable: Cable | None = None
    chosen: dict[str, Chosen] = field(default_factory=dict)

    def ends(self) -> tuple[str, ...]:
        """Return the ends to choose for, in their order."""
        return {"one": ("A", "B"), "two": ("A", "L", "R"), "many": ("A", MANY)}[self.shape]

    def missing(self) -> str:
        """Say what is still to be chosen before landing can start; empty when nothing is."""
        for end in self.ends():
            if end not in self.chosen:
                return f"Choose what is at {self.named(end)}."
        if self.cable is None:
            return "Choose the cable."
        return self.length_error(self.length) or (
            self.length_error(self.leg_length) if self.shape != "one" else ""
        )

    def named(self, end: str) -> str:
        """Return an end as the guide calls it."""
        return f"B1 to B{self.legs}" if end == MANY else end

    @staticmethod
    def length_error(text: str) -> str:
        """Say what is wrong with a length, or nothing."""
        try:
            length_mm = parse_length_mm(text)
        except ValueError as error:
            return f"{error}."
        if text.rstrip()[-1] in "0123456789.,":
            return f"{text.strip()} of what? Write its unit, such as {text.strip()} m."
        if not 0 < length_mm <= 1_000_000:
            return f"{text!r} is no length of a lead: write more than 0 and at most 1000 m."
        return ""

    def build(self) -> Plan:
        """Make the plan; EditRefused where something does not go together."""
        plan = self._shaped()
        for end in self.ends():
            for key in self._keys(end):
                chosen = self.chosen[end]
                plan = ends.choose_connector(
                    plan, end=key, connector=chosen.connector, pinout=chosen.pinout
                )
        assert self.cable is not None
        plan = cables.choose_cable(plan, section=shapes.TRUNK, cable=self.cable)
        return set_order(plan, order=self.order.strip())

    def _keys(self, end: str) -> tuple[str, ...]:
        if end != MANY:
            return (end,)
        return tuple(f"B{number}" for number in range(1, self.legs + 1))

    def _shaped(self) -> Plan:
        length_mm = parse_length_mm(self.length)
        if self.shape == "one":
            return shapes.one_to_one(length_mm=length_mm, policy=self.policy)
        leg_mm = parse_length_mm(self.leg_length)
        if self.shape == "two":
            return shapes.one_to_two(length_mm=length_mm, leg_mm=leg_mm, policy=self.policy)
        return shapes.one_to_many(self.legs, length_mm=length_mm, leg_mm=leg_mm, policy=self.policy)

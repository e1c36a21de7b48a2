"""Which contact of a plan a file of readings means by what it writes."""

from dataclasses import dataclass, field

from planner.model.connector import Connector
from planner.model.plan import End, Plan
from planner.problem import did_you_mean
from planner.proving.entries import shown
from planner.proving.reading import Contact


@dataclass(frozen=True, slots=True)
class Missing:
    """A name that is not there: in which of two columns (0 the end, 1 the contact), and why."""

    column: int
    what: str
    mend: str


@dataclass
class Finder:
    """Finds contacts by end and name, each spelling once."""

    plan: Plan
    _known: dict[tuple[str, str], Contact | Missing] = field(default_factory=dict)

    def find(self, end: str, contact: str) -> Contact | Missing:
        """Return the contact; ends go by id or name, contacts by id, moulded mark or name."""
        key = (end, contact)
        if key not in self._known:
            self._known[key] = self._find(end, contact)
        return self._known[key]

    def _find(self, typed_end: str, typed: str) -> Contact | Missing:
        end = self._end(typed_end)
        if isinstance(end, Missing):
            return end
        connector = self.plan.connector_of(end.id)
        if connector is None:
            return Missing(
                0, f"end {end.id} has no connector yet", "Choose its connector in the plan first."
            )
        return self._contact(end, connector, typed)

    def _end(self, typed: str) -> End | Missing:
        if typed in self.plan.end_by_id:
            return self.plan.end_by_id[typed]
        wanted = typed.casefold()
        fits = [end for end in self.plan.ends if wanted in _end_names(end)]
        if typed and len(fits) == 1:
            return fits[0]
        if not typed:
            return Missing(0, "the end is missing", did_you_mean("", self.plan.end_by_id))
        if fits:
            ids = " and ".join(end.id for end in fits)
            return Missing(0, f"the end {shown(typed)} may be {ids}", "Write the end's letter.")
        named = {end.name for end in self.plan.ends if end.name}
        mend = did_you_mean(typed, [*self.plan.end_by_id, *named])
        return Missing(0, f"the plan has no end {shown(typed)}", mend)

    def _contact(self, end: End, connector: Connector, typed: str) -> Contact | Missing:
        # An exact id first: a moulded mark may be another contact's number.
        contact = connector.by_id.get(typed) or connector.find(typed)
        if contact is None:
            spoken = {each.spoken.casefold(): each for each in connector.contacts}
            contact = spoken.get(typed.casefold())
        if contact is not None:
            return (end.id, contact.id)
        what = f"end {end.id} has no contact {shown(typed)}" if typed else "the contact is missing"
        names = [name for each in connector.contacts for name in (each.id, each.name) if name]
        return Missing(1, what, did_you_mean(typed, names if typed else connector.by_id))


def _end_names(end: End) -> set[str]:
    return {end.id.casefold(), end.name.casefold(), f"end {end.id}".casefold()} - {""}

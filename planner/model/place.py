"""A place in a plan, as findings and acceptances name it."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """An end, a contact or conductor at it, or a part; empty text where it does not apply."""

    end: str = ""
    contact: str = ""
    conductor: str = ""
    part: str = ""

    def as_dict(self) -> dict[str, str]:
        """Return the fields that are set, as `check --json` prints them."""
        pairs = (
            ("end", self.end),
            ("contact", self.contact),
            ("conductor", self.conductor),
            ("part", self.part),
        )
        return {key: value for key, value in pairs if value}

    @property
    def key(self) -> str:
        """One string for the place, stable over edits elsewhere."""
        return "/".join((self.end, self.contact, self.conductor, self.part))

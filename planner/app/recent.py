"""Plans that were on the bench lately: what is remembered of each, and how it is said."""

from dataclasses import asdict, dataclass
from datetime import datetime
from pathlib import Path

_MARKS = {"stop", "caution", "clear", "empty", "nothing"}


@dataclass(frozen=True, slots=True)
class RecentPlan:
    """One plan file: its title and order, how it stood (the mark of the answer), and when."""

    path: Path
    title: str = ""
    order: str = ""
    kind: str = "nothing"
    at: str = ""

    @property
    def name(self) -> str:
        """The title, or the file's name where there is none."""
        return self.title or self.path.name

    def as_text(self) -> str:
        """Return one line for the settings file."""
        import json  # noqa: PLC0415 - not before the window is shown

        return json.dumps(asdict(self) | {"path": str(self.path)})

    @classmethod
    def from_text(cls, text: str) -> "RecentPlan | None":
        """Read such a line; None where it is none (the file may be edited by hand)."""
        import json  # noqa: PLC0415 - not before the window is shown

        try:
            values = json.loads(text)
            fields = {name: str(values.get(name, "")) for name in ("title", "order", "kind", "at")}
            path = Path(str(values["path"]))
        except (ValueError, KeyError, TypeError, AttributeError):
            return None
        if fields["kind"] not in _MARKS:
            fields["kind"] = "nothing"
        return cls(path, **fields)


def when_text(at: str, now: datetime) -> str:
    """Say when: `today 11:20`, `Tuesday`, `14 March`, `2 March 2025`; empty if not known."""
    try:
        then = datetime.fromisoformat(at)
    except ValueError:
        return ""
    days = (now.date() - then.date()).days
    if days == 0:
        return f"today {then:%H:%M}"
    if 0 < days < 7:
        return f"{then:%A}"
    day = f"{then.day} {then:%B}"
    return day if then.year == now.year else f"{day} {then.year}"

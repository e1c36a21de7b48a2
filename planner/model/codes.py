"""The short codes that tell the cores and shields of one end apart without their colours."""

from collections import Counter
from collections.abc import Sequence

from planner.model.cable import Core, Shield

MOST = 9  # letters in a code


def told_apart(parts: Sequence[Core | Shield], *, shield: str = "SH") -> tuple[str, ...]:
    """Return a code for each part: letters of the colours, or `shield` for one that is alone.

    Where a code stands more than once, the group or the name is added.
    """
    shields = sum(isinstance(part, Shield) for part in parts)
    often = Counter(part.code for part in parts if isinstance(part, Core))
    return tuple(_code(part, often, shield if shields == 1 else "") for part in parts)


def _code(part: Core | Shield, often: Counter[str], shield: str) -> str:
    if isinstance(part, Shield):
        return shield or f"SH {part.id}"[:MOST]
    if often[part.code] > 1:
        return f"{part.code} {part.group or part.id}"[:MOST]
    return part.code

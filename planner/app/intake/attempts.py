"""Run an edit of a draft from a field: the field itself says why it was refused."""

from collections.abc import Callable
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    from planner.app.intake.drafting import Drafting

Draft = TypeVar("Draft")


def tried(drafting: "Drafting[Draft]", text: str, edit: Callable[[Draft], Draft]) -> str:
    """Do an edit as one undo step; return why it was refused, or nothing."""
    said: list[str] = []

    def hear(reason: str, mend: str) -> None:
        said.append(f"{reason}. {mend}" if mend else f"{reason}.")

    drafting.refused.connect(hear)
    try:
        drafting.do(text, edit)
    finally:
        drafting.refused.disconnect(hear)
    return said[0] if said else ""

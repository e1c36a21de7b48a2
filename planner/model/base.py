"""What every record shares: frozen, strict about unknown keys, changed only through `evolve`."""

from typing import Annotated, Any, Self

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, StringConstraints


def _no_controls(text: str) -> str:
    if any(ord(mark) < 32 or ord(mark) == 127 for mark in text):
        msg = "control characters are not allowed"
        raise ValueError(msg)
    return text


Ident = Annotated[str, StringConstraints(pattern=r"^[A-Za-z0-9][A-Za-z0-9._-]*$", max_length=64)]
Line = Annotated[str, StringConstraints(max_length=200), AfterValidator(_no_controls)]
Paragraph = Annotated[str, StringConstraints(max_length=4000)]
MOST_REVISION = 1_000_000_000
Revision = Annotated[int, Field(ge=1, le=MOST_REVISION)]


def next_revision(revision: int) -> int:
    """Return the number of the next revision; after the highest one there is no other."""
    return min(revision + 1, MOST_REVISION)


class Record(BaseModel):
    """A frozen record. Tuples instead of lists keep the freeze deep."""

    model_config = ConfigDict(
        frozen=True, extra="forbid", allow_inf_nan=False, str_strip_whitespace=True
    )

    def evolve(self, **changes: Any) -> Self:  # noqa: ANN401 - any field may change
        """Return a copy with `changes`, validated again (`model_copy` would validate nothing)."""
        fields = {name: getattr(self, name) for name in type(self).model_fields}
        return type(self).model_validate(fields | changes)

"""On whose word a record rests: the source card, and the ladder of trust that follows from it."""

from collections.abc import Iterable
from typing import Annotated, Literal

from pydantic import AfterValidator, Field

from planner.model.base import Ident, Line, Record

SourceKind = Literal["standard", "drawing", "letter", "measured", "practice", "hearsay", "memory"]
Trust = Literal["hearsay", "documented", "confirmed", "confirmed-by-two"]
TRUST_LADDER: tuple[Trust, ...] = ("hearsay", "documented", "confirmed", "confirmed-by-two")

# What a document may be; the suffix is the one that it is kept under.
SUFFIXES: dict[str, str] = {
    "application/pdf": ".pdf",
    "image/png": ".png",
    "image/jpeg": ".jpg",
    "image/webp": ".webp",
    "message/rfc822": ".eml",
    "text/plain": ".txt",
}
Media = Literal[
    "application/pdf", "image/png", "image/jpeg", "image/webp", "message/rfc822", "text/plain"
]
MOST_DOCUMENTS = 40
_NO_PAPER = {"hearsay", "memory"}
_HEX = frozenset("0123456789abcdef")


def _is_digest(text: str) -> str:
    if len(text) != 64 or not set(text) <= _HEX:
        msg = f"{text[:20]!r} is no digest: write the 64 digits that SHA-256 gives, a to f small"
        raise ValueError(msg)
    return text


def _is_file_name(text: str) -> str:
    if not text or len(text) > 120 or text.startswith(".") or set(text) & set('/\\:*?"<>|'):
        msg = f"{text[:40]!r} is no plain file name: write the name alone, without a folder"
        raise ValueError(msg)
    return text


Digest = Annotated[str, AfterValidator(_is_digest)]
FileName = Annotated[Line, AfterValidator(_is_file_name)]


class Source(Record):
    """Where a pinout came from. `practice` is common practice of the trade with no standard."""

    kind: SourceKind
    reference: Line = ""
    date: Line = ""
    recorded_by: Line = ""


class Document(Record):
    """A paper, picture or mail that is kept with the definitions, found by its SHA-256 `digest`."""

    digest: Digest
    name: FileName
    media: Media
    remark: Line = ""

    @property
    def kept_as(self) -> str:
        """The name of the copy in the folder of documents."""
        return self.digest + SUFFIXES[self.media]


class Statement(Record):
    """What is said of some contacts on another word than the record's own source.

    `document` is the digest of the one of the record's documents that shows it, if one does.
    """

    contacts: tuple[Ident, ...] = Field(min_length=1)
    kind: SourceKind
    reference: Line = ""
    document: Digest | Literal[""] = ""


class Confirmation(Record):
    """A person who found on a part that the record is right; `how` says by what means."""

    who: Line = Field(min_length=1)
    date: Line = ""
    how: Line = Field(min_length=1)


class Retired(Record):
    """Why a definition is to be used no more; it stays, so that older plans can be understood."""

    reason: Line = Field(min_length=1)
    by: Line = ""
    date: Line = ""


def earned_trust(
    source: Source, statements: Iterable[Statement], confirmations: Iterable[Confirmation]
) -> Trust:
    """Return how far up the ladder a record has come.

    A measured source is itself a confirmation by who recorded it. Two confirmations by one person
    are one. Without any, a record is as weak as the weakest of what it rests on.
    """
    people = {_person(each.who) for each in confirmations}
    if source.kind == "measured":
        people.add(_person(source.recorded_by))
    if len(people - {""}) > 1:
        return "confirmed-by-two"
    if people:
        return "confirmed"
    kinds = {source.kind, *(each.kind for each in statements)}
    return "hearsay" if kinds & _NO_PAPER else "documented"


def _person(name: str) -> str:
    return " ".join(name.casefold().split())

"""The documents that are kept with definitions: by digest, checked when they are read."""

import hashlib
from pathlib import Path, PurePath

from planner.files.atomic import write_atomic
from planner.files.folders import check_inside
from planner.files.limits import read_bytes
from planner.model.source import SUFFIXES, Document, Media
from planner.problem import InputError

PAPERS_FOLDER = "documents"
DOCUMENT_BYTES = 20_000_000
_MEDIA = {suffix: media for media, suffix in SUFFIXES.items()} | {".jpeg": "image/jpeg"}
# How a file of each kind begins; of text there is no such mark.
_BEGINNINGS: dict[str, tuple[bytes, ...]] = {
    "image/png": (b"\x89PNG\r\n\x1a\n",),
    "image/jpeg": (b"\xff\xd8\xff",),
    "image/webp": (b"RIFF",),
}


class Papers:
    """The documents of one folder of definitions."""

    def __init__(self, folder: Path) -> None:
        self._root = folder
        self.folder = folder / PAPERS_FOLDER

    def keep(self, document: Document, data: bytes) -> None:
        """Keep a document's bytes, once; InputError if they are not the document's.

        A copy that was damaged since is replaced.
        """
        check_paper(document, data, document.name)
        path = self.folder / document.kept_as
        if not self._is_whole(path, data):
            check_inside(path, self._root)
            self.folder.mkdir(exist_ok=True)
            write_atomic(path, data)

    @staticmethod
    def _is_whole(path: Path, data: bytes) -> bool:
        """Tell whether a file holds just these bytes; its size is looked at first."""
        same_size = path.is_file() and path.stat().st_size == len(data)
        return same_size and read_bytes(path, DOCUMENT_BYTES) == data

    def holds(self, document: Document) -> bool:
        """Tell whether the document is there, without reading it."""
        return (self.folder / document.kept_as).is_file()

    def path(self, document: Document) -> Path:
        """Return the file of a document, to open it; InputError if it is not there or damaged."""
        self.read(document)
        return self.folder / document.kept_as

    def read(self, document: Document) -> bytes:
        """Return a document's bytes; InputError if they are not there or were changed since."""
        path = self.folder / document.kept_as
        data = read_bytes(path, DOCUMENT_BYTES)
        check_paper(document, data, str(path))
        return data


def described(path: Path, remark: str = "") -> tuple[Document, bytes]:
    """Read a file to be kept and describe it; InputError if it is of no kind that is kept."""
    media = _MEDIA.get(path.suffix.lower())
    if media is None:
        what = f"{path.suffix or 'a file without a suffix'} is no kind of document that is kept"
        kinds = ", ".join(sorted(_MEDIA))
        raise InputError.single(what, str(path), f"Save it as one of {kinds}.")
    data = read_bytes(path, DOCUMENT_BYTES)
    document = _document(path.name, media, data, remark)
    check_paper(document, data, str(path))
    return document, data


def described_text(name: str, text: str, remark: str = "") -> tuple[Document, bytes]:
    """Describe a text that the program wrote, to be kept as a document."""
    data = text.encode()
    return _document(name, "text/plain", data, remark), data


def _document(name: str, media: str, data: bytes, remark: str) -> Document:
    digest = hashlib.sha256(data).hexdigest()
    return Document(digest=digest, name=_plain(name), media=media, remark=remark)


def check_paper(document: Document, data: bytes, where: str) -> None:
    """Raise InputError if the bytes are too many, of another kind, or not those of the digest."""
    if len(data) > DOCUMENT_BYTES:
        what = f"the document has more than the {DOCUMENT_BYTES // 1_000_000} MB that are kept"
        raise InputError.single(what, where, "Make the scan smaller, or split it.")
    if hashlib.sha256(data).hexdigest() != document.digest:
        what = "its bytes are not those that its digest names: it was changed or damaged"
        raise InputError.single(what, where, "Ask the sender for it again, or take it from a copy.")
    if not _begins_well(document.media, data):
        what = f"it does not begin as a file of the kind {document.media} does"
        raise InputError.single(what, where, "Open it, and save it anew as that kind.")


def _begins_well(media: Media, data: bytes) -> bool:
    if media == "application/pdf":
        return b"%PDF-" in data[:1024]  # some begin with a few bytes of a mail gateway
    if media in _BEGINNINGS:
        return data.startswith(_BEGINNINGS[media])
    return b"\x00" not in data


def _plain(name: str) -> str:
    """Return a file's name without what a record can't hold; the end, with the suffix, stays."""
    kept = "".join("_" if mark in '/\\:*?"<>|' or not mark.isprintable() else mark for mark in name)
    return PurePath(kept).name.lstrip(".")[-120:].lstrip(".") or f"document{PurePath(name).suffix}"

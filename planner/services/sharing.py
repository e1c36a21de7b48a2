"""Send definitions and take them in: what the window and the command line both do."""

from collections.abc import Iterable, Sequence
from pathlib import Path

from planner.files.folders import library_folder
from planner.library.collection import Library
from planner.library.loading import shipped_folders
from planner.library.papers import Papers
from planner.library.parcel import parcel_bytes
from planner.library.store import Saved, Store
from planner.model.definition import Definition, documents_of
from planner.model.pinout import PinoutRecord
from planner.model.source import Document
from planner.problem import InputError


def pack(record: Definition, library: Library, folders: Sequence[Path] = ()) -> bytes:
    """Return one file with a definition, its sources and documents.

    A pinout record brings the connectors that it fits and that do not ship. `folders` are those
    that the library was loaded from. InputError if a document is missing or was changed.
    """
    shelves = papers_of(folders)
    return parcel_bytes(
        [record, *_hardware(record, library)],
        lambda document: _holder(document, shelves).read(document),
    )


def papers_of(folders: Sequence[Path]) -> tuple[Papers, ...]:
    """Return where documents are kept: in the user's own folder, then in the folders named."""
    return tuple(Papers(folder) for folder in (library_folder(), *folders))


def find_paper(document: Document, folders: Sequence[Path] = ()) -> Path:
    """Return the checked file of a document, to be opened; InputError if no folder has it whole."""
    return _holder(document, papers_of(folders)).path(document)


def save_with_papers(
    store: Store,
    record: Definition,
    basis: str,
    *,
    who: str,
    folders: Sequence[Path],
    why: str = "",
) -> Saved:
    """Save a definition into a folder, with its documents from whichever folder has them.

    A document that no folder has is left to the store to refuse or, of an older record, to bear.
    """
    for document in documents_of(record):
        if not store.papers.holds(document):
            for papers in papers_of(folders):
                if papers.holds(document):
                    store.keep_document(document, papers.read(document))
                    break
    return store.save(record, basis, who=who, why=why)


def _hardware(record: Definition, library: Library) -> tuple[Definition, ...]:
    if not isinstance(record, PinoutRecord):
        return ()
    found = [library.connector(name) for name in record.fits]
    return tuple(it for it in found if it is not None and not _ships(it, library))


def _ships(record: Definition, library: Library) -> bool:
    path = library.file_of(record)
    return path is not None and any(path.is_relative_to(it) for it in shipped_folders())


def _holder(document: Document, shelves: Iterable[Papers]) -> Papers:
    """Return the first folder that has a document; InputError if none has."""
    for papers in shelves:
        if papers.holds(document):
            return papers
    what = f"the document {document.name} is in no folder of definitions"
    mend = "Connect the drive that it lies on, or take it off the record."
    raise InputError.single(what, document.kept_as, mend)

"""Sending: what goes along, and where the documents are looked for. Invented data."""

from pathlib import Path

import pytest

from planner.files.folders import library_folder
from planner.library.loading import load_library
from planner.library.parcel import parse_parcel
from planner.library.store import NEW, Store
from planner.problem import InputError
from planner.services.sharing import find_paper, pack, save_with_papers
from tests.files.samples import records

LETTER = b"%PDF-1.4 an invented letter"


@pytest.fixture
def shared(tmp_path):
    folder = tmp_path / "shared"
    folder.mkdir()
    return Store(folder)


@pytest.fixture
def document(shared, tmp_path):
    (tmp_path / "letter.pdf").write_bytes(LETTER)
    return shared.add_document(tmp_path / "letter.pdf")


def packed(record, library, folders):
    return parse_parcel(pack(record, library, folders).decode(), Path("sent"))


def test_a_record_brings_its_own_connectors_and_not_those_that_ship(shared, tmp_path):
    made = records(tmp_path)
    shared.save(made["connector"], NEW, who="Tilney")
    card = made["pinout"].evolve(fits=("bench-three", "jack-3.5-three-pole", "nowhere"))
    shared.save(card, NEW, who="Tilney")
    library = load_library([shared.folder])
    sent = packed(card, library, [shared.folder]).definitions
    assert [it.id for it in sent] == ["bench-three-phones", "bench-three"]
    assert [it.id for it in packed(made["connector"], library, ()).definitions] == ["bench-three"]


def test_documents_are_found_in_whichever_folder_has_them(shared, document, tmp_path):
    record = records(tmp_path)["pinout"].evolve(documents=(document,))
    assert packed(record, load_library(), [shared.folder]).papers == {document.digest: LETTER}
    assert find_paper(document, [shared.folder]).read_bytes() == LETTER
    Store(library_folder()).keep_document(document, LETTER)
    assert find_paper(document).is_relative_to(library_folder())


def test_a_copy_into_another_folder_takes_its_documents_along(shared, document, tmp_path):
    record = records(tmp_path)["pinout"].evolve(documents=(document,))
    own = Store(library_folder())
    save_with_papers(own, record, NEW, who="Tilney", folders=[shared.folder])
    assert own.papers.read(document) == LETTER


def test_a_copy_whose_document_is_nowhere_is_refused(document, tmp_path):
    record = records(tmp_path)["pinout"].evolve(documents=(document,))
    with pytest.raises(InputError, match="is not in the folder"):
        save_with_papers(Store(library_folder()), record, NEW, who="Tilney", folders=[])


def test_a_document_that_is_nowhere_is_told(document):
    with pytest.raises(InputError, match=r"letter\.pdf is in no folder of definitions"):
        find_paper(document)

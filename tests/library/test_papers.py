"""Documents that are kept with definitions. Invented data."""

import pytest

from planner.library.store import Store
from planner.problem import InputError
from tests.library.benches import ID, letter


def test_a_document_is_copied_and_checked_when_it_is_read(store, saved, tmp_path):
    document = store.add_document(letter(tmp_path), remark="both pages")
    assert (document.name, document.media) == ("letter of 1996.pdf", "application/pdf")
    store.save(saved.record.evolve(documents=(document,)), saved.digest, who="Okoro")
    assert store.papers.read(document) == letter(tmp_path).read_bytes()
    store.papers.path(document).write_bytes(b"%PDF-1.4 another letter")
    with pytest.raises(InputError, match="not those that its digest names"):
        store.papers.read(document)


@pytest.mark.parametrize(
    "damaged", [b"%PDF-1.4 another letter", b"%PDF-1.4 an invented lettex", bytes(20_000_001)]
)
def test_a_damaged_document_that_is_added_again_is_whole_again(store, tmp_path, damaged):
    document = store.add_document(letter(tmp_path))
    store.papers.path(document).write_bytes(damaged)
    assert store.add_document(letter(tmp_path)) == document
    assert store.papers.read(document) == letter(tmp_path).read_bytes()


def test_a_record_whose_document_is_not_in_the_folder_is_not_saved(store, saved, tmp_path):
    other = Store(tmp_path / "other")
    other.folder.mkdir()
    document = other.add_document(letter(tmp_path))
    with pytest.raises(InputError, match=r"letter of 1996\.pdf is not in the folder"):
        store.save(saved.record.evolve(documents=(document,)), saved.digest, who="Okoro")


def test_a_record_whose_document_was_lost_can_still_be_retired(store, saved, tmp_path):
    document = store.add_document(letter(tmp_path))
    store.save(saved.record.evolve(documents=(document,)), saved.digest, who="Okoro")
    store.papers.path(document).unlink()
    assert store.retire("pinout", ID, reason="wrong", who="Okoro").record.retired


@pytest.mark.parametrize(
    ("name", "data", "said"),
    [
        ("macro.exe", b"MZ", "no kind of document"),
        ("scan.png", b"%PDF-1.4", "does not begin as a file of the kind image/png"),
        ("mail.txt", b"a\x00b", "does not begin as a file of the kind text/plain"),
        ("no-suffix", b"x", "a file without a suffix"),
    ],
)
def test_a_document_of_another_kind_is_refused(store, tmp_path, name, data, said):
    path = tmp_path / name
    path.write_bytes(data)
    with pytest.raises(InputError, match=said):
        store.add_document(path)


def test_a_document_that_is_too_large_is_refused(store, tmp_path, monkeypatch):
    monkeypatch.setattr("planner.library.papers.DOCUMENT_BYTES", 10)
    with pytest.raises(InputError, match="more than the"):
        store.add_document(letter(tmp_path))

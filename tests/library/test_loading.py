"""Loading the collection: layers of folders, broken files, links that lead out, speed."""

import os
import time
import tomllib

import pytest

from planner.files.definitions import part_text, read_definition
from planner.files.folders import library_folder
from planner.library.collection import Library
from planner.library.crosscheck import crosscheck
from planner.library.folder import definition_files
from planner.library.loading import load_library, shipped_folders
from tests.files.samples import CONNECTOR, PART, PINOUT, records


def shelve(folder, **texts):
    """Write files called after the keys."""
    folder.mkdir(parents=True, exist_ok=True)
    for name, text in texts.items():
        (folder / f"{name}.toml").write_text(text, encoding="utf-8")
    return folder


def problems_with(*folders):
    return [(problem.where, problem.what) for problem in load_library(folders).problems]


def test_what_ships_loads_without_a_problem():
    assert problems_with() == []


def test_every_shipped_file_is_called_after_its_id():
    paths = [path for folder in shipped_folders() for path in definition_files(folder, [])]
    assert len(paths) > 76
    assert {path.stem for path in paths if read_definition(path).id != path.stem} == set()


def test_a_folder_below_the_family_is_loaded_too(tmp_path):
    shelve(tmp_path / "boots" / "small", boot=PART)
    assert load_library([tmp_path]).part("bench-boot").title == "Bench boot"


def test_the_users_own_folder_comes_before_the_folders_named(tmp_path):
    shelve(library_folder(), boot=PART, other=PART.replace("bench-boot", "own-boot"))
    shelve(tmp_path, boot=PART.replace("Bench boot", "Boot of the house"))
    library = load_library([tmp_path])
    assert library.part("bench-boot").title == "Boot of the house"
    assert library.part("own-boot") is not None


def test_a_users_definition_takes_the_place_of_a_shipped_one():
    shipped = load_library().parts()[0]
    shelve(library_folder(), mine=part_text(shipped.evolve(title="My own")))
    library = load_library()
    assert library.part(shipped.id).title == "My own"
    assert library.problems == ()


def test_a_broken_file_is_told_and_hurts_no_other(tmp_path):
    shelve(tmp_path, bad="id = ", good=PART, worse=PART.replace("length_mm = 22", "length_mm = 0"))
    assert problems_with(tmp_path) == [
        (f"{tmp_path}/bad.toml: line 1, column 6", "malformed TOML: invalid value"),
        (f"{tmp_path}/worse.toml: length_mm", "0 must be above 0"),
    ]
    assert load_library([tmp_path]).part("bench-boot") is not None


def test_one_id_in_two_files_of_a_folder_is_told(tmp_path):
    shelve(tmp_path, a=PART, b=PART)
    assert problems_with(tmp_path) == [
        (f"{tmp_path}/b.toml: id", "the id 'bench-boot' is also used by a.toml")
    ]


def test_two_kinds_may_share_an_id(tmp_path):
    shelve(tmp_path, part=PART, connector=CONNECTOR.replace("bench-three", "bench-boot"))
    assert problems_with(tmp_path) == []


def test_a_folder_that_is_not_there_is_told(tmp_path):
    gone = tmp_path / "gone"
    assert problems_with(gone) == [(str(gone), "there is no such folder")]


def test_a_folder_that_can_t_be_read_is_told_and_the_others_load(tmp_path, monkeypatch):
    shelve(tmp_path / "open", boot=PART)
    shelve(tmp_path / "shut", other=PART.replace("bench-boot", "other"))
    scan = os.scandir

    def refused(path):
        if str(path).endswith("shut"):
            raise PermissionError(13, "Permission denied", str(path))
        return scan(path)

    monkeypatch.setattr(os, "scandir", refused)
    assert problems_with(tmp_path) == [(f"{tmp_path}/shut", "it can't be read: permission denied")]
    assert load_library([tmp_path]).part("bench-boot") is not None


@pytest.mark.skipif(os.name != "posix", reason="links need no rights on Unix")
def test_links_that_lead_out_are_not_followed(tmp_path):
    outside = shelve(tmp_path / "outside", boot=PART)
    inside = shelve(tmp_path / "inside", own=PART.replace("bench-boot", "own-boot"))
    (inside / "link.toml").symlink_to(outside / "boot.toml")
    (inside / "folder").symlink_to(outside)
    (inside / "alias.toml").symlink_to(inside / "own.toml")
    library = load_library([inside])
    assert library.part("bench-boot") is None
    assert [(problem.where, problem.what) for problem in library.problems] == [
        (f"{inside}/link.toml", "it is a link to a file outside its folder, and is not followed"),
        (f"{inside}/own.toml: id", "the id 'own-boot' is also used by alias.toml"),
    ]


def test_a_record_that_names_a_contact_the_connector_lacks_is_told(tmp_path):
    spoiled = PINOUT.replace("R = [", "RR = [")
    shelve(tmp_path, connector=CONNECTOR, pinout=spoiled)
    assert problems_with(tmp_path) == [
        ("pinout record bench-three-phones: signals.RR", "bench-three has no contact 'RR'")
    ]


def test_a_record_for_a_connector_that_is_not_there_is_no_problem(tmp_path):
    assert list(crosscheck(Library(pinouts=[records(tmp_path)["pinout"]]))) == []


def test_the_order_does_not_depend_on_the_file_system(tmp_path):
    names = ["b", "a", "c"]
    for place, name in enumerate(names):
        shelve(tmp_path / name, **{f"f{place}": PART.replace("bench-boot", f"boot-{name}")})
    found = [path.parent.name for path in definition_files(tmp_path, [])]
    assert found == ["a", "b", "c"]


def test_loading_takes_a_few_times_what_parsing_alone_takes():
    """A ratio holds on a slow machine too; the best of three is free of other work."""
    texts = [path.read_text() for folder in shipped_folders() for path in folder.rglob("*.toml")]

    def best(work):
        spans = []
        for _attempt in range(3):
            began = time.perf_counter()
            work()
            spans.append(time.perf_counter() - began)
        return min(spans)

    assert best(load_library) < 5 * best(lambda: [tomllib.loads(text) for text in texts])

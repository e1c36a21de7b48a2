"""Files attached to a unit: kept by what is in them, noticed when they change."""

import hashlib
import os
from pathlib import Path

import pytest

from planner.problem import InputError
from planner.proving.attachments import (
    ATTACHMENT_BYTES,
    attach,
    attachment_problem,
    attachments_folder,
    kept_at,
)
from planner.proving.units import Attachment

posix_only = pytest.mark.skipif(os.name != "posix", reason="links of Unix")


@pytest.fixture
def plan_path(tmp_path):
    return tmp_path / "pit-lead.json"


@pytest.fixture
def photo(tmp_path):
    path = tmp_path / "Joint at A.JPG"
    path.write_bytes(b"invented picture")
    return path


def test_a_copy_is_kept_by_its_sha_256(plan_path, photo):
    attachment = attach(plan_path, photo)
    digest = hashlib.sha256(b"invented picture").hexdigest()
    assert attachment == Attachment(
        name="Joint at A.JPG", digest=digest, suffix=".jpg", size_bytes=16
    )
    assert kept_at(plan_path, attachment) == plan_path.parent / "pit-lead.units" / f"{digest}.jpg"
    assert kept_at(plan_path, attachment).read_bytes() == b"invented picture"
    assert attachment_problem(plan_path, attachment) is None


def test_the_same_file_twice_is_one_copy(plan_path, photo):
    assert attach(plan_path, photo) == attach(plan_path, photo)
    assert len(list(attachments_folder(plan_path).iterdir())) == 1


def test_a_changed_and_a_missing_copy_are_noticed_and_can_be_attached_again(plan_path, photo):
    attachment = attach(plan_path, photo)
    copy = kept_at(plan_path, attachment)
    copy.write_bytes(b"another")
    changed = attachment_problem(plan_path, attachment)
    assert changed.what == "'Joint at A.JPG' was changed since it was attached"
    copy.unlink()
    missing = attachment_problem(plan_path, attachment)
    assert missing.what == "'Joint at A.JPG': there is no such file"
    attach(plan_path, photo)
    assert attachment_problem(plan_path, attachment) is None


@pytest.mark.parametrize("name", ["notes", "a.tar.gz", "b.thisismuchtoolong", "c.\u00e4", "d.a b"])
def test_an_ending_is_kept_where_it_is_plain(plan_path, tmp_path, name):
    path = tmp_path / name
    path.write_bytes(b"x")
    attachment = attach(plan_path, path)
    assert attachment.suffix == (".gz" if name == "a.tar.gz" else "")
    assert kept_at(plan_path, attachment).parent == attachments_folder(plan_path)


@posix_only
def test_a_name_with_marks_that_turn_text_round_is_kept_without_them(plan_path, tmp_path):
    path = tmp_path / "a\u202egpj.exe\n"
    path.write_bytes(b"x")
    assert attach(plan_path, path).name == "a_gpj.exe_"


def test_what_is_no_file_is_refused(plan_path, tmp_path):
    for path in (tmp_path / "gone.jpg", tmp_path, Path("a\0b")):
        with pytest.raises(InputError):
            attach(plan_path, path)
    assert not attachments_folder(plan_path).exists()


def test_a_file_beyond_the_limit_is_refused(plan_path, tmp_path):
    path = tmp_path / "film.mov"
    with path.open("wb") as stream:
        stream.truncate(ATTACHMENT_BYTES + 1)
    with pytest.raises(InputError, match="more than the 25 MB"):
        attach(plan_path, path)


@posix_only
def test_a_folder_that_leads_elsewhere_is_refused(plan_path, photo, tmp_path):
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    attachments_folder(plan_path).symlink_to(elsewhere)
    with pytest.raises(InputError, match="link to elsewhere"):
        attach(plan_path, photo)
    assert list(elsewhere.iterdir()) == []

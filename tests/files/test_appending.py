"""A line added to a file: whole, on a line of its own, with or without locks."""

import errno
import os

import pytest

from planner.files.appending import append_line
from planner.problem import InputError

posix_only = pytest.mark.skipif(os.name != "posix", reason="locks of Unix")


def test_lines_stand_one_after_another(tmp_path):
    path = tmp_path / "log"
    for line in (b"one", b"two"):
        append_line(path, line)
    assert path.read_bytes() == b"one\ntwo\n"


def test_a_torn_line_is_closed_off_and_kept(tmp_path):
    path = tmp_path / "log"
    path.write_bytes(b"one\ntw")
    append_line(path, b"three")
    assert path.read_bytes() == b"one\ntw\nthree\n"


def test_a_folder_that_is_not_there_is_told(tmp_path):
    with pytest.raises(InputError, match="it can't be written: no such file"):
        append_line(tmp_path / "gone" / "log", b"one")


@pytest.mark.parametrize("step", ["os.write", "os.fsync"])
def test_a_fault_leaves_the_file_as_it_was(tmp_path, monkeypatch, step):
    path = tmp_path / "log"
    append_line(path, b"one")

    def fail(*_args):
        raise OSError(errno.EIO, "Input/output error")

    monkeypatch.setattr(step, fail)
    with pytest.raises(InputError, match="input/output error"):
        append_line(path, b"two")
    assert path.read_bytes() == b"one\n"


@posix_only
def test_where_there_are_no_locks_it_is_written_and_nothing_is_taken_back(tmp_path, monkeypatch):
    """What another process wrote meanwhile would be taken back with it."""
    path = tmp_path / "log"

    def no_lock(*_args):
        raise OSError(errno.ENOLCK, "No locks available")

    def fail(_handle):
        raise OSError(errno.EIO, "Input/output error")

    monkeypatch.setattr("fcntl.flock", no_lock)
    append_line(path, b"one")
    monkeypatch.setattr("os.fsync", fail)
    with pytest.raises(InputError):
        append_line(path, b"two")
    assert path.read_bytes() == b"one\ntwo\n"

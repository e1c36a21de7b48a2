"""A save that fails, or is killed at any step, leaves the older file as it was."""

import errno
import os
import signal
import subprocess
import sys
import textwrap
from pathlib import Path

import pytest

from planner.files.atomic import write_atomic
from planner.problem import InputError

posix_only = pytest.mark.skipif(os.name != "posix", reason="permissions and signals of Unix")


@pytest.fixture
def target(tmp_path):
    path = tmp_path / "lead.json"
    path.write_bytes(b"old")
    return path


def names_beside(path):
    return [each.name for each in path.parent.iterdir()]


def test_the_new_bytes_are_there_and_nothing_else(target):
    write_atomic(target, b"new")
    assert (target.read_bytes(), names_beside(target)) == (b"new", ["lead.json"])


@pytest.mark.parametrize(
    "step", ["os.fsync", "os.fdopen", "pathlib.Path.chmod", "pathlib.Path.replace"]
)
def test_a_fault_at_any_step_leaves_the_older_file(target, monkeypatch, step):
    def fail(*_args, **_more):
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(step, fail)
    with pytest.raises(InputError, match="it can't be written: no space left on device"):
        write_atomic(target, b"new")
    assert (target.read_bytes(), names_beside(target)) == (b"old", ["lead.json"])


@pytest.mark.parametrize("step", ["os.fsync", "pathlib.Path.chmod", "pathlib.Path.replace"])
def test_a_death_at_any_step_leaves_the_older_file(target, step):
    module, _dot, name = step.rpartition(".")
    script = f"""
        import os, pathlib
        from planner.files.atomic import write_atomic
        {module}.{name} = lambda *args, **more: os._exit(9)
        write_atomic(pathlib.Path({str(target)!r}), b"new")
    """
    done = subprocess.run([sys.executable, "-c", textwrap.dedent(script)], check=False)
    assert (done.returncode, target.read_bytes()) == (9, b"old")


@posix_only
def test_a_kill_at_any_moment_leaves_a_whole_file(target):
    script = f"""
        import pathlib
        from planner.files.atomic import write_atomic
        target = pathlib.Path({str(target)!r})
        print("ready", flush=True)
        for round in range(10**9):
            write_atomic(target, str(round % 10).encode() * 200_000)
    """
    whole = {str(digit).encode() * 200_000 for digit in range(10)} | {b"old"}
    for _kill in range(5):
        with subprocess.Popen(
            [sys.executable, "-c", textwrap.dedent(script)], stdout=subprocess.PIPE
        ) as writer:
            writer.stdout.readline()
            before = target.stat().st_mtime_ns
            while target.stat().st_mtime_ns == before:
                pass
            writer.send_signal(signal.SIGKILL)
        assert target.read_bytes() in whole


@posix_only
def test_permissions_are_kept_and_a_new_file_has_the_usual_ones(target, tmp_path):
    target.chmod(0o640)
    write_atomic(target, b"new")
    assert target.stat().st_mode & 0o777 == 0o640
    fresh, usual = tmp_path / "fresh", tmp_path / "usual"
    write_atomic(fresh, b"new")
    usual.write_bytes(b"new")
    assert fresh.stat().st_mode == usual.stat().st_mode


@posix_only
def test_a_link_stays_a_link(target, tmp_path):
    link = tmp_path / "link.json"
    link.symlink_to(target)
    write_atomic(link, b"new")
    assert link.is_symlink()
    assert target.read_bytes() == b"new"


def test_a_folder_that_is_not_there_is_told():
    with pytest.raises(InputError) as caught:
        write_atomic(Path("absent") / "lead.json", b"new")
    assert caught.value.problems[0].what == "it can't be written: no such file or directory"

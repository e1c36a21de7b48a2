"""Copies kept for recovery: found after a kill, gone after a save, never another's."""

import datetime as dt
import os
import signal
import subprocess
import sys
import textwrap

import pytest

from planner.files.processes import is_running, started
from planner.files.recovery import Keeper, left_behind
from planner.model.plan import Plan
from planner.problem import InputError

TEN = dt.datetime(2031, 5, 6, 10, 0, tzinfo=dt.UTC)
WRITER = """
    import pathlib, sys, time
    from planner.files.recovery import Keeper
    from planner.model.plan import Plan
    keeper, original = Keeper(pathlib.Path(sys.argv[1])), pathlib.Path("/leads/pit.json")
    for round in range(10**9):
        keeper.keep(Plan(title="Pit lead", remarks=str(round) * 500), original)
        if round == 0:
            print("kept", flush=True)
"""


@pytest.fixture
def folder(tmp_path):
    return tmp_path / "recovery"


def kill_a_writer(folder):
    command = [sys.executable, "-c", textwrap.dedent(WRITER), str(folder)]
    with subprocess.Popen(command, stdout=subprocess.PIPE) as writer:
        writer.stdout.readline()
        assert left_behind(folder) == ()
        writer.send_signal(signal.SIGKILL)


@pytest.mark.skipif(os.name != "posix", reason="signals of Unix")
def test_what_a_kill_left_is_found_and_whole(folder):
    kill_a_writer(folder)
    (snapshot,) = left_behind(folder)
    assert snapshot.title == "Pit lead"
    assert str(snapshot.original) == "/leads/pit.json"
    assert snapshot.plan().title == "Pit lead"
    snapshot.discard()
    assert left_behind(folder) == ()


def as_if_dead(monkeypatch):
    monkeypatch.setattr("planner.files.recovery.is_running", lambda pid, began: False)


def test_nothing_is_left_after_a_drop(folder, monkeypatch):
    keeper = Keeper(folder)
    keeper.keep(Plan(title="t"))
    keeper.drop()
    keeper.drop()
    as_if_dead(monkeypatch)
    assert left_behind(folder) == ()


def test_a_plan_without_a_file_is_kept_too(folder, monkeypatch):
    Keeper(folder, clock=lambda: TEN).keep(Plan(title="new"))
    as_if_dead(monkeypatch)
    (snapshot,) = left_behind(folder)
    assert (snapshot.original, snapshot.kept_at, snapshot.plan()) == (None, TEN, Plan(title="new"))


def test_two_open_plans_have_a_copy_each_the_latest_first(folder, monkeypatch):
    Keeper(folder, clock=lambda: TEN).keep(Plan(title="first"))
    Keeper(folder, clock=lambda: TEN + dt.timedelta(minutes=1)).keep(Plan(title="second"))
    as_if_dead(monkeypatch)
    assert [snapshot.title for snapshot in left_behind(folder)] == ["second", "first"]


def test_an_unchanged_plan_is_not_written_again(folder):
    keeper = Keeper(folder)
    keeper.keep(Plan(title="t"))
    (path,) = folder.iterdir()
    path.unlink()
    keeper.keep(Plan(title="t"))
    assert list(folder.iterdir()) == []


def test_the_copies_of_a_running_process_are_not_offered(folder):
    Keeper(folder).keep(Plan(title="t"))
    assert left_behind(folder) == ()


def test_a_spoiled_copy_hurts_no_other(folder, monkeypatch):
    Keeper(folder).keep(Plan(title="good"))
    (folder / "0-bad.json").write_text('{"format": "cupwright-recovery"}')
    (folder / "1-bad.json").write_text("{")
    as_if_dead(monkeypatch)
    assert [snapshot.title for snapshot in left_behind(folder)] == ["good"]


def test_no_folder_means_nothing_left(folder):
    assert left_behind(folder) == ()


def test_the_copies_lie_in_the_data_folder(own_folders):
    Keeper().keep(Plan(title="t"))
    assert len(list((own_folders / "data" / "recovery").iterdir())) == 1


def test_a_folder_that_cannot_be_made_is_told(tmp_path):
    (tmp_path / "file").write_text("")
    with pytest.raises(InputError, match="the folder can't be made"):
        Keeper(tmp_path / "file" / "recovery").keep(Plan(title="t"))


def test_a_number_used_again_by_another_process_is_told_apart():
    own = os.getpid()
    assert is_running(own, started(own))
    if started(own):
        assert not is_running(own, "1")

"""One writer at a time in a folder: who waits, who takes over, who notices that he was too slow."""

import errno
import json
import multiprocessing
import os
import time
from concurrent.futures import ThreadPoolExecutor

import pytest

from planner.library.lock import LOCK_FOLDER, FolderLock
from planner.problem import InputError


@pytest.fixture
def folder(tmp_path):
    return tmp_path


def names(folder):
    return sorted(path.name for path in (folder / LOCK_FOLDER).glob("[!.]*"))


def owned_by_another(folder, *, number=7, age_s=0.0):
    """Leave a claim of another machine that was made `age_s` ago."""
    (folder / LOCK_FOLDER).mkdir(exist_ok=True)
    owner = {"who": "Okoro", "machine": "paint-shop", "token": "x", "pid": 1, "began": ""}
    path = folder / LOCK_FOLDER / str(number)
    path.write_text(json.dumps(owner | {"at": "2026-05-11"}))
    made = time.time() - age_s
    os.utime(path, (made, made))
    return path


def test_a_folder_is_held_and_freed_again_and_again(folder):
    for number in (1, 2, 3):
        with FolderLock(folder) as lock:
            lock.check()
            assert names(folder) == [str(number)]
        assert names(folder) == [str(number), f"{number}.free"]


def test_claims_stay_out_of_a_repository(folder):
    with FolderLock(folder):
        assert (folder / LOCK_FOLDER / ".gitignore").read_text() == "*\n"


def test_an_error_inside_frees_the_folder(folder):
    with pytest.raises(KeyError), FolderLock(folder):
        raise KeyError
    with FolderLock(folder, wait_s=0):
        pass


def test_who_comes_second_is_told_who_holds(folder):
    owned_by_another(folder)
    with pytest.raises(InputError, match=r"Okoro on paint-shop, 2026-05-11"):
        FolderLock(folder, wait_s=0.01).__enter__()


def test_a_claim_of_another_machine_grows_stale_by_the_clock_of_the_drive(folder):
    owned_by_another(folder, age_s=59)
    with pytest.raises(InputError):
        FolderLock(folder, wait_s=0).__enter__()
    owned_by_another(folder, age_s=61)
    with FolderLock(folder, wait_s=0):
        assert names(folder) == ["8"]


@pytest.mark.parametrize("left", ["", "{", "[]", "{}"])
def test_a_claim_that_a_kill_left_empty_is_taken_over_soon(folder, left):
    path = owned_by_another(folder)
    path.write_text(left)
    made = time.time() - 6
    os.utime(path, (made, made))
    with FolderLock(folder, wait_s=0):
        assert names(folder) == ["8"]


def _hold_and_die(folder):
    FolderLock(folder).__enter__()
    os._exit(0)


def test_a_claim_of_a_process_that_is_gone_is_taken_over_at_once(folder):
    other = multiprocessing.get_context("fork").Process(target=_hold_and_die, args=(folder,))
    other.start()
    other.join()
    with FolderLock(folder, wait_s=0):
        assert names(folder) == ["2"]


def test_a_holder_that_slept_too_long_notices_before_it_writes(folder):
    with FolderLock(folder, "sleeper") as sleeper:
        made = time.time() - 100
        os.utime(folder / LOCK_FOLDER / "1", (made, made))
        with FolderLock(folder, wait_s=0) as other:
            with pytest.raises(InputError, match="held too long"):
                sleeper.check()
            other.check()
    with FolderLock(folder, wait_s=0) as after:
        after.check()


def test_a_claim_on_what_was_freed_long_ago_gives_way_to_the_folder_as_it_is(folder, monkeypatch):
    """Who looked while claim 1 was free and comes when 2 stands and 1 is swept away."""
    with FolderLock(folder):
        pass
    with FolderLock(folder):
        late = FolderLock(folder, wait_s=0)
        tops = iter([0, 2])
        monkeypatch.setattr(FolderLock, "_top", lambda self: next(tops, 2))
        with pytest.raises(InputError):
            late.__enter__()
        assert "1" not in names(folder)


def _no_links(*_names):
    raise OSError(errno.ENOTSUP, "not supported")


@pytest.mark.parametrize("links", [True, False])
def test_many_threads_hold_it_one_after_the_other(folder, links, monkeypatch):
    if not links:  # as some network drives can't
        monkeypatch.setattr(os, "link", _no_links)
    inside, met = [], []

    def work(_number):
        with FolderLock(folder, wait_s=30):
            inside.append(1)
            met.append(len(inside))
            inside.pop()

    with ThreadPoolExecutor(8) as pool:
        list(pool.map(work, range(60)))
    assert met == [1] * 60

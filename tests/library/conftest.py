"""A shared folder, and a record in it. Invented data."""

import pytest

from planner.library.store import NEW, Store
from tests.files.samples import records


@pytest.fixture
def store(tmp_path):
    folder = tmp_path / "shared"
    folder.mkdir()
    return Store(folder, wait_s=2)


@pytest.fixture
def pinout(tmp_path):
    return records(tmp_path)["pinout"]


@pytest.fixture
def saved(store, pinout):
    return store.save(pinout, NEW, who="Tilney", why="from the letter")

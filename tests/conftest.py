"""What every test gets: settings and data of its own, never the user's."""

import gc

import pytest


def pytest_collection_finish(session):
    """Leave all that stands now out of later collections of garbage: each GUI test ends with one.

    With the whole suite loaded each took a quarter of a second.
    """
    gc.collect()
    gc.freeze()


@pytest.fixture(autouse=True)
def own_folders(monkeypatch, tmp_path_factory):
    """Point settings and data at new empty folders."""
    folder = tmp_path_factory.mktemp("profile")
    monkeypatch.setenv("CUPWRIGHT_SETTINGS", str(folder / "settings"))
    monkeypatch.setenv("CUPWRIGHT_DATA", str(folder / "data"))
    monkeypatch.setenv("XDG_CONFIG_HOME", str(folder / "config"))
    monkeypatch.setenv("XDG_DATA_HOME", str(folder / "share"))
    return folder

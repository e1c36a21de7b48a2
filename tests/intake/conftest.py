"""The collection as shipped, read once; the user's own folder is kept out of it."""

import pytest

from planner.library.loading import load_library


@pytest.fixture(scope="session")
def shipped(tmp_path_factory):
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("CUPWRIGHT_DATA", str(tmp_path_factory.mktemp("no-own-definitions")))
        yield load_library()

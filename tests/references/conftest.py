"""The collection as shipped, read once; the user's own folder is kept out of it."""

from collections.abc import Iterator

import pytest

from planner.library.collection import Library
from planner.library.loading import load_library


@pytest.fixture(scope="session")
def shipped(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Library]:
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("CUPWRIGHT_DATA", str(tmp_path_factory.mktemp("no-own-definitions")))
        yield load_library()

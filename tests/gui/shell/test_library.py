"""The builder's own definitions: added in the settings, and what is wrong with them is shown."""

import pytest

from planner.app import furnish
from planner.data import data_dir
from planner.library.loading import load_library


@pytest.fixture
def folder(tmp_path):
    """A folder with one file that can't be read and a copy of a shipped cable under another id."""
    folder = tmp_path / "own"
    folder.mkdir()
    (folder / "bad.toml").write_text("format = 'cupwright-cable'\nversion = 1\n", encoding="utf-8")
    shipped = (data_dir("resources") / "cable" / "pair-foil.toml").read_text(encoding="utf-8")
    text = shipped.replace("pair-foil", "own-pair", 1)
    (folder / "own-pair.toml").write_text(text, encoding="utf-8")
    return folder


def test_a_folder_in_the_settings_is_read_at_once(shell, answers, folder, monkeypatch):
    assert not shell.window.acts["problems"].isEnabled()
    monkeypatch.setattr(furnish, "load_library", load_library)
    shell.settings.folders = (folder,)
    assert shell.bench.workbench.library.cable("own-pair") is not None
    assert "in the library" in shell.window.notice.text
    shell.window.acts["problems"].trigger()
    (headline, problems) = answers.troubles[0]
    assert headline == "Problems in the library"
    assert any("bad.toml" in problem.where for problem in problems)
    assert all(problem.what and problem.mend for problem in problems)

from datetime import datetime
from pathlib import Path

import pytest

from planner.app.recent import RecentPlan, when_text
from planner.app.settings import CHOICES, MOST_RECENT, Settings, settings_path


@pytest.fixture
def path(tmp_path):
    return tmp_path / "cupwright.ini"


def test_settings_lie_in_the_folder_named_by_the_environment(monkeypatch, tmp_path):
    monkeypatch.setenv("CUPWRIGHT_SETTINGS", str(tmp_path))
    assert settings_path() == tmp_path / "cupwright.ini"


def test_what_is_chosen_is_there_the_next_time(qapp, path):
    first = Settings(path)
    first.choose("units", "inch")
    first.bench_name = "  Saltmarsh Playhouse bench "
    first.folders = (Path("/leads"), Path("/odd ones"))
    first.autosave = False
    first.flush()
    again = Settings(path)
    assert again.choice("units") == "inch"
    assert again.bench_name == "Saltmarsh Playhouse bench"
    assert again.folders == (Path("/leads"), Path("/odd ones"))
    assert again.autosave is False


@pytest.mark.parametrize("key", CHOICES)
def test_a_value_that_is_not_allowed_reads_as_the_first(qapp, path, key):
    path.write_text(f"[General]\n{key}=nonsense\nrecent=nonsense\n", encoding="utf-8")
    assert Settings(path).choice(key) == CHOICES[key][0]
    assert Settings(path).recent == ()


def test_a_choice_that_does_not_exist_is_refused(qapp, path):
    with pytest.raises(ValueError, match="paper is one of a4, letter, not 'a3'"):
        Settings(path).choose("paper", "a3")


def test_changed_names_what_was_changed_and_only_then(qapp, qtbot, path):
    settings = Settings(path)
    with qtbot.waitSignal(settings.changed) as told:
        settings.choose("theme", "dark")
    assert told.args == ["theme"]
    with qtbot.assertNotEmitted(settings.changed):
        settings.choose("theme", "dark")


def test_recent_plans_are_latest_first_once_each_and_few(qapp, path):
    settings = Settings(path)
    for number in range(MOST_RECENT + 2):
        settings.remember(RecentPlan(Path(f"/{number}.json")))
    settings.remember(RecentPlan(Path("/5.json"), "Cue desk lead", "SP-0417", "stop"))
    settings.forget(Path("/9.json"))
    settings.flush()
    again = Settings(path).recent
    assert [plan.path.stem for plan in again] == ["5", "8", "7", "6", "4", "3", "2"]
    assert (again[0].title, again[0].order, again[0].kind) == ("Cue desk lead", "SP-0417", "stop")


@pytest.mark.parametrize(
    ("at", "said"),
    [
        ("2026-11-24T11:20:00", "today 11:20"),
        ("2026-11-20T09:00:00", "Friday"),
        ("2026-03-14T09:00:00", "14 March"),
        ("2025-03-02T09:00:00", "2 March 2025"),
        ("no date", ""),
    ],
)
def test_when_is_said_as_people_say_it(at, said):
    assert when_text(at, datetime.fromisoformat("2026-11-24T18:00:00")) == said

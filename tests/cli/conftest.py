"""Run the command line in this process, without a window."""

from dataclasses import dataclass

import pytest

from planner.cli.main import main
from planner.files.plans import write_plan
from tests.files.samples import split_plan


@dataclass(frozen=True)
class Done:
    """What a run gave."""

    status: int
    out: str
    err: str


@pytest.fixture
def opened():
    """The windows that were opened: what they were asked for."""
    return []


@pytest.fixture
def cupwright(capsys, opened):
    def open_window(plan, **options):
        opened.append((plan, options))
        return 0

    def run(*words):
        capsys.readouterr()
        status = main([str(word) for word in words], open_window)
        out, err = capsys.readouterr()
        return Done(status, out, err)

    return run


@pytest.fixture
def plan_path(tmp_path):
    path = tmp_path / "pit-lead.json"
    write_plan(path, split_plan(tmp_path))
    return path

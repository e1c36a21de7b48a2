"""Format and version: another format, a newer version, and steps for older ones."""

from pathlib import Path

import pytest

from planner.files.envelope import Step, head, kind_of, opened
from planner.problem import InputError, Problem

HERE = Path("f")


def problem_of(values, **more):
    with pytest.raises(InputError) as caught:
        opened(values, "plan", HERE, **more)
    (problem,) = caught.value.problems
    return problem


@pytest.mark.parametrize(
    ("values", "problem"),
    [
        (
            {"format": "cupwright-plna", "version": 1},
            Problem(
                "'cupwright-plna' is no format of ours",
                "f: format",
                "Did you mean 'cupwright-plan'?",
            ),
        ),
        (
            {"format": "cupwright-cable", "version": 1},
            Problem(
                "this is a cable file, a plan is wanted",
                "f: format",
                "Name a file that says cupwright-plan.",
            ),
        ),
        (
            {"format": "cupwright-plan"},
            Problem("the key 'version' is missing", "f: version", "Add version 1."),
        ),
        (
            {"format": "cupwright-plan", "version": 2},
            Problem(
                "written by a newer Cupwright: version 2, this one reads 1",
                "f: version",
                "Install a newer Cupwright, or save it there as version 1.",
            ),
        ),
    ],
)
def test_what_is_wrong_with_the_head_is_told(values, problem):
    assert problem_of(values) == problem


@pytest.mark.parametrize("version", ["1", 1.0, True, 0, -1, None])
def test_a_version_is_a_whole_number_from_one_up(version):
    problem = problem_of({"format": "cupwright-plan", "version": version})
    assert problem.what == f"the version {version!r} is not a whole number from 1 up"


def test_a_file_without_a_format_is_told_which_there_are():
    with pytest.raises(InputError, match="Add one of cupwright-plan, cupwright-connector"):
        kind_of({}, HERE)


def test_the_body_has_no_head():
    assert opened({**head("plan"), "title": "t"}, "plan", HERE) == {"title": "t"}


def test_an_older_file_goes_through_the_steps_from_its_version_up():
    steps = (
        Step(1, "name became title", lambda body: {"title": body["name"]}),
        Step(2, "titles are upper case", lambda body: {"title": body["title"].upper()}),
    )
    first = {"format": "cupwright-plan", "version": 1, "name": "lead"}
    second = {"format": "cupwright-plan", "version": 2, "title": "lead"}
    third = {"format": "cupwright-plan", "version": 3, "title": "lead"}
    read = [opened(each, "plan", HERE, current=3, steps=steps) for each in (first, second, third)]
    assert read == [{"title": "LEAD"}, {"title": "LEAD"}, {"title": "lead"}]
    assert first["name"] == "lead"

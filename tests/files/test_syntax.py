"""Malformed text is told with line and column."""

import os
from pathlib import Path

import pytest

from planner.files.limits import DEFINITION_BYTES, PLAN_BYTES
from planner.files.syntax import parse_json, parse_toml, read_json, read_toml
from planner.problem import InputError

HERE = Path("file")


def problem_of(parse, text):
    with pytest.raises(InputError) as caught:
        parse(text, HERE)
    (problem,) = caught.value.problems
    assert problem.what
    assert problem.mend
    return problem


@pytest.mark.parametrize(
    ("text", "where"),
    [
        ("a = 1\nb = \n", "file: line 2, column 5"),
        ('a = 1\nb = "open', "file: line 2, column 10"),
        ("a = 1\na = 2\n", "file: line 2, column 6"),
        ("a = 1\x00", "file: line 1, column 6"),
        ("a = 1\n# \x1b[31m", "file: line 2, column 3"),
        ("a = 1\nb = '\u202e'", "file: b"),
        ('a = "\\u0007"', "file: a"),
        ('[[t]]\nx = "a"\n[[t]]\nx = "\\u001b"', "file: t.#2.x"),
    ],
)
def test_malformed_toml_is_told_with_its_place(text, where):
    assert problem_of(parse_toml, text).where == where


@pytest.mark.parametrize(
    ("text", "where"),
    [
        ("", "file: line 1, column 1"),
        ('{\n"a": 1,\n}', "file: line 3, column 1"),
        ('{"a": 1}}', "file: line 1, column 9"),
        ('{"b": {"a": 1},\n "a": 2,\n "a": 3}', "file: line 3, column 2"),
        ('{"x": [1,\n NaN]}', "file: line 2, column 2"),
        ('{"x": -Infinity}', "file: line 1, column 7"),
        ('{"x": "\\u0000"}', "file: x"),
        ('{"x": {"y": ["\\ud800"]}}', "file: x.y.#1"),
        ('{"\\u0001": 1}', "file: top"),
        ("[]", "file: line 1"),
        ("null", "file: line 1"),
        ("{" + '"a":{' * 60 + "}" * 61, "file"),
        ('{"a":' + "[" * 100_000, "file"),
        ('{"a": ' + "1" * 5000 + "}", "file"),
    ],
)
def test_malformed_json_is_told_with_its_place(text, where):
    assert problem_of(parse_json, text).where == where


def test_a_key_that_repeats_in_another_object_is_fine():
    assert parse_json('{"a": {"a": 1}, "b": {"a": 2}}', HERE) == {"a": {"a": 1}, "b": {"a": 2}}


def test_deep_toml_is_refused():
    assert "deep" in problem_of(parse_toml, ".".join("a" * 30) + " = 1").what
    assert "deep" in problem_of(parse_toml, "a = " + "[" * 3000 + "]" * 3000).what


def test_a_very_long_line_of_toml_is_refused_before_it_is_parsed():
    problem = problem_of(parse_toml, "a = 1\n" + ".".join("a" * 100_000) + " = 1")
    assert problem.where == "file: line 2"


@pytest.mark.parametrize(
    ("read", "limit", "words"),
    [
        (read_toml, DEFINITION_BYTES, "more than the 1 MB that are read"),
        (read_json, PLAN_BYTES, "the file has 10.0 MB, more than the 8 MB that are read"),
    ],
)
def test_a_file_above_the_limit_is_refused(tmp_path, read, limit, words):
    path = tmp_path / "large"
    path.write_bytes(b" " * (10_000_000 if limit == PLAN_BYTES else limit + 1))
    with pytest.raises(InputError) as caught:
        read(path)
    assert words in caught.value.problems[0].what


def test_bytes_that_are_no_text_are_told_with_their_line(tmp_path):
    path = tmp_path / "latin.toml"
    path.write_bytes("a = 1\nb = 'schön'".encode("latin-1"))
    with pytest.raises(InputError, match="line 2: byte 0xf6 is not text in UTF-8"):
        read_toml(path)


def test_a_mark_at_the_beginning_that_some_editors_write_is_taken(tmp_path):
    path = tmp_path / "marked.toml"
    path.write_bytes(b"\xef\xbb\xbfa = 1")
    assert read_toml(path) == {"a": 1}


def test_folders_pipes_and_absent_files_are_told_apart(tmp_path):
    with pytest.raises(InputError, match="it is a folder"):
        read_toml(tmp_path)
    with pytest.raises(InputError, match="there is no such file"):
        read_toml(tmp_path / "absent")
    with pytest.raises(InputError, match="can't be read"):
        read_toml(Path("a\0b"))


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="named pipes are a thing of Unix")
def test_a_pipe_is_refused_and_does_not_hang(tmp_path):
    path = tmp_path / "pipe"
    os.mkfifo(path)
    with pytest.raises(InputError, match="it is no plain file"):
        read_json(path)


def test_a_mark_that_reorders_text_is_told_with_line_and_column(tmp_path):
    path = tmp_path / "turned.toml"
    path.write_text("a = 1\nb = '\u202e'", encoding="utf-8")
    with pytest.raises(InputError, match=r"line 2, column 6: the control character U\+202E"):
        read_toml(path)

"""What is not valid is told in plain words, with the value, the place and the mend."""

from pathlib import Path

import pytest

from planner.files.definitions import parse_definition
from planner.problem import InputError, Problem
from tests.files.samples import CABLE, CONNECTOR, PART, PINOUT

HERE = Path("f")


def problems_in(text):
    with pytest.raises(InputError) as caught:
        parse_definition(text, HERE)
    return caught.value.problems


@pytest.mark.parametrize(
    ("text", "old", "new", "problem"),
    [
        (
            CONNECTOR,
            "bore_mm = 7",
            "bor_mm = 7\nbore_mm = 7",
            Problem(
                "the key 'bor_mm' is not known here", "f: shell.bor_mm", "Did you mean 'bore_mm'?"
            ),
        ),
        (
            CONNECTOR,
            "[shell]",
            'veiw = "solder"\n[shell]',
            Problem("the key 'veiw' is not known here", "f: veiw", "Did you mean 'view'?"),
        ),
        (
            CABLE,
            "awg = 28",
            "awg = 28\nagw = 28",
            Problem("the key 'agw' is not known here", "f: cores[RD].agw", "Did you mean 'awg'?"),
        ),
        (
            CONNECTOR,
            'family = "jack"\n',
            "",
            Problem("the key 'family' is missing", "f: family", "Add family."),
        ),
        (
            CONNECTOR,
            "bore_mm = 7",
            "bore_mm = -7",
            Problem("-7 must be above 0", "f: shell.bore_mm", "Write a value above 0."),
        ),
        (
            PINOUT,
            "[signals]",
            "revision = 2_000_000_000\n[signals]",
            Problem(
                "2000000000 must be at most 1000000000",
                "f: revision",
                "Write a value at most 1000000000.",
            ),
        ),
        (
            CONNECTOR,
            "bore_mm = 7",
            'bore_mm = "7"',
            Problem("'7' is not a number", "f: shell.bore_mm", "Write a number."),
        ),
        (
            CONNECTOR,
            "bore_mm = 7",
            "bore_mm = nan",
            Problem(
                "nan is not a number that can be used", "f: shell.bore_mm", "Write a plain number."
            ),
        ),
        (
            CONNECTOR,
            "takes=2",
            "takes=1.5",
            Problem(
                "1.5 is not a whole number",
                "f: contacts[S].terminal.takes",
                "Write a whole number.",
            ),
        ),
        (
            CONNECTOR,
            "takes=2",
            "takes=true",
            Problem(
                "true is not a whole number",
                "f: contacts[S].terminal.takes",
                "Write a whole number.",
            ),
        ),
        (
            CONNECTOR,
            'gender = "male"',
            'gender = "mael"',
            Problem(
                "'mael' is not one of the words allowed",
                "f: gender",
                "Did you mean 'male'? Write one of male, female.",
            ),
        ),
        (
            CONNECTOR,
            'family = "jack"',
            'family = "../jack"',
            Problem(
                "'../jack' can't be a name",
                "f: family",
                "Use letters, digits, dot, hyphen and underscore, no spaces; "
                "begin with a letter or digit.",
            ),
        ),
        (
            CONNECTOR,
            'id = "R"',
            'id = "t"',
            Problem("contact 't' stands twice", "f", "Correct it there."),
        ),
        (
            PINOUT,
            'R = ["R+"]',
            'R = "R+"',
            Problem("'R+' is not a list in [ ]", "f: signals.R", "Write a list in [ ]."),
        ),
        (
            PINOUT,
            'R = ["R+"]',
            'R = ["Q+"]',
            Problem(
                "'Q+' is not a signal",
                "f: signals.R[#1]",
                "Write L+, L-, R+, R-, 1+ to 8-, mic+, +, -, shield or chassis.",
            ),
        ),
        (
            PINOUT,
            'fits = ["bench-three"]',
            "fits = []",
            Problem("the list is too short", "f: fits", "Give it 1 or more items."),
        ),
        (
            PART,
            'title = "Bench boot"',
            f'title = "{"x" * 201}"',
            Problem("the text has 201 characters, more than 200", "f: title", "Make it shorter."),
        ),
        (
            PART,
            'title = "Bench boot"',
            'title = ""',
            Problem("the text is too short", "f: title", "Give it 1 or more characters."),
        ),
        (
            PART,
            'title = "Bench boot"',
            'title = "one\\ntwo"',
            Problem("control characters are not allowed", "f: title", "Correct it there."),
        ),
    ],
)
def test_a_spoiled_file_gives_exactly_this_problem(text, old, new, problem):
    assert old in text
    assert problems_in(text.replace(old, new, 1)) == (problem,)


def test_all_problems_of_a_file_are_told_at_once():
    spoiled = CONNECTOR.replace("bore_mm = 7", "bore_mm = -7").replace("min_mm = 2", "min_mm = 0")
    assert [problem.where for problem in problems_in(spoiled)] == [
        "f: shell.bore_mm",
        "f: clamp.min_mm",
    ]


def test_nothing_that_the_validator_says_of_itself_gets_through():
    spoiled = CONNECTOR.replace("[shell]\nbore_mm = 7", "shell = 5").replace("7", "'x'")
    told = " ".join(str(problem) for problem in problems_in(spoiled))
    assert "Input should" not in told
    assert "pydantic" not in told

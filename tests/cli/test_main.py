"""Which words open the window, which are commands, and what wrong use says."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from planner import __version__
from planner.cli.main import COMMANDS, main

PLAIN = {"demo": False, "debug": False, "fresh_profile": False}


def test_no_word_opens_an_empty_window(cupwright, opened):
    assert cupwright().status == 0
    assert opened == [(None, PLAIN)]


def test_a_plan_opens_in_the_window(cupwright, opened, plan_path):
    assert cupwright(plan_path).status == 0
    assert opened == [(plan_path, PLAIN)]


def test_switches_reach_the_window(cupwright, opened):
    cupwright("--demo", "--fresh-profile", "--debug")
    assert opened == [(None, {"demo": True, "debug": True, "fresh_profile": True})]


def test_a_plan_that_is_not_there_opens_no_window(cupwright, opened):
    done = cupwright("gone.json")
    assert (done.status, opened) == (3, [])
    assert done.err == (
        "cupwright: gone.json: there is no such file.\n  Check the name and the folder.\n"
    )


def test_a_file_called_like_a_command_is_opened_by_its_path(
    cupwright, opened, tmp_path, monkeypatch
):
    monkeypatch.chdir(tmp_path)
    Path("chek").write_text("{}")
    cupwright("chek")
    Path("check").write_text("{}")
    cupwright("./check")
    assert [plan for plan, _options in opened] == [Path("chek"), Path("check")]


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["chek"], "there is no command and no file 'chek'. Did you mean 'check'?"),
        (["--deno"], "'--deno' is not understood here. Did you mean '--demo'?"),
        (["--debug", "conectors"], "Did you mean 'connectors'?"),
        (["check"], "the following arguments are required: PLAN."),
        (["check", "a.json", "--jsno"], "'--jsno' is not understood here. Did you mean '--json'?"),
        (["check", "a.json", "b.json"], "'b.json' is not understood here."),
        (["schema", "cabel"], "Did you mean 'cable'?"),
        (["schema"], "the following arguments are required: kind."),
        (["connectors", "shwo", "x"], "Did you mean 'show'?"),
        (["connectors", "--jso"], "Did you mean '--json'?"),
        (["connectors", "compare", "a"], "the following arguments are required: ID."),
        (["sheet", "a.json"], "the following arguments are required: -o/--output."),
        (["sheet", "a.json", "-o", "a.png"], "'a.png' must end in .svg, .pdf or .csv."),
        (["sheet", "a.json", "-o", "a.svg", "--paper", "a5"], "'a5' is not one of a4, letter."),
        (["sheet", "a.json", "-o", "a.svg", "--date", "x" * 41], "--date takes at most 40"),
        (["--demo", "check", "a.json"], "'--demo' is not understood here."),
    ],
)
def test_wrong_use_is_told_with_status_2(cupwright, opened, words, told):
    done = cupwright(*words)
    assert (done.status, done.out, opened) == (2, "", [])
    assert told in done.err
    assert "Traceback" not in done.err


def test_a_plan_and_the_demo_are_not_opened_at_once(cupwright, plan_path):
    done = cupwright(plan_path, "--demo")
    assert (done.status, done.err) == (2, "cupwright: name a plan or --demo, not both.\n")


@pytest.mark.parametrize("words", [["--help"], *([name, "--help"] for name in COMMANDS)])
def test_help_is_printed_and_names_what_is_asked_for(cupwright, words):
    with pytest.raises(SystemExit) as caught:
        cupwright(*words)
    assert caught.value.code == 0


def test_the_help_lists_every_command(capsys):
    with pytest.raises(SystemExit):
        main(["--help"], lambda *_words, **_more: 0)
    out = capsys.readouterr().out
    assert all(f"  {name} " in out for name in COMMANDS)


def test_the_version(capsys):
    with pytest.raises(SystemExit):
        main(["--version"], lambda *_words, **_more: 0)
    assert capsys.readouterr().out == f"Cupwright {__version__}\n"


def failing_window(error):
    def open_window(_plan, **_options):
        raise error

    return open_window


def test_an_unforeseen_error_is_a_sentence(capsys):
    assert main([], failing_window(RuntimeError("wire\nmore"))) == 3
    err = capsys.readouterr().err
    assert err.startswith(
        "cupwright: inside Cupwright: an error that was not foreseen: RuntimeError: wire.\n"
    )
    assert "Traceback" not in err


def test_debug_shows_where_an_unforeseen_error_comes_from(capsys):
    assert main(["--debug"], failing_window(RuntimeError("wire"))) == 3
    assert "Traceback" in capsys.readouterr().err


def test_an_interruption_is_quiet(capsys):
    assert main([], failing_window(KeyboardInterrupt())) == 130
    assert capsys.readouterr() == ("", "")


@pytest.mark.parametrize(
    ("error", "told"),
    [
        (ImportError("no PySide6", name="PySide6"), "run pip install 'PySide6-Essentials"),
        (
            ImportError("libEGL.so.1: cannot open shared object file", name=None),
            "apt-get install libegl1 libgl1 libxkbcommon0 libdbus-1-3 libfontconfig1 libglib2.0-0 "
            "libxcb-cursor0",
        ),
    ],
)
def test_a_window_that_lacks_a_library_is_one_sentence(capsys, error, told):
    assert main([], failing_window(error)) == 2
    err = capsys.readouterr().err
    assert told in err
    assert "cupwright check, cupwright connectors" in err
    assert err.count("\n") == 1


def run_apart(*words, **more):
    command = [sys.executable, "-m", "planner", *map(str, words)]
    return subprocess.run(command, capture_output=True, text=True, check=False, **more)


def test_the_module_starts_and_passes_the_status_on(plan_path):
    assert run_apart("check", "gone.json").returncode == 3
    assert run_apart("check").returncode == 2


@pytest.mark.skipif(os.name != "posix", reason="a closed pipe of Unix")
def test_a_reader_that_goes_away_is_no_error():
    command = [sys.executable, "-m", "planner", "schema", "plan"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as writer:
        writer.stdout.close()
        assert (writer.stderr.read(), writer.wait()) == (b"", 0)


def test_a_terminal_that_lacks_a_sign_gets_a_plain_one():
    plain = {**os.environ, "PYTHONIOENCODING": "ascii"}
    done = run_apart("connectors", "show", "jack-3.5-two-pole-slim", env=plain)
    assert (done.returncode, done.stderr) == (0, "")
    assert "-1.65" in done.stdout


@pytest.mark.parametrize(
    "words",
    [
        ["check", "PLAN"],
        ["check", "PLAN", "--json"],
        ["connectors"],
        ["connectors", "show", "xlr-3-male"],
        ["connectors", "compare", "xlr-3-male", "xlr-3-female"],
        ["schema", "plan"],
        ["sheet", "PLAN", "-o", "SHEET.svg"],
        ["sheet", "PLAN", "-o", "SHEET.pdf"],
    ],
)
def test_commands_load_no_qt(words, plan_path, tmp_path):
    named = [
        word.replace("PLAN", str(plan_path)).replace("SHEET", str(tmp_path / "sheet"))
        for word in words
    ]
    script = (
        "import sys\n"
        "from planner.__main__ import main\n"
        f"status = main({named!r})\n"
        "print(*[name for name in sys.modules if name.split('.')[0] in ('PySide6', 'shiboken6')],"
        " file=sys.stderr)\n"
        "sys.exit(status)\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=False
    )
    assert done.stderr == "\n"
    assert done.returncode in {0, 1}


def test_wrong_use_is_told_without_loading_the_records():
    script = (
        "import sys\nfrom planner.__main__ import main\nmain(['check'])\n"
        "print([name for name in ('pydantic', 'networkx', 'numpy') if name in sys.modules])"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )
    assert done.stdout == "[]\n"

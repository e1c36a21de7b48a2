"""The file of units: nothing is lost by a kill, by another process, or by one bad line."""

import json
import os
import subprocess
import sys
import textwrap
from concurrent.futures import ThreadPoolExecutor
from itertools import combinations

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from planner.problem import InputError
from planner.proving.judging import Judging
from planner.proving.reading import Reading, Readings
from planner.proving.unit_file import (
    LINE_BYTES,
    Units,
    append_unit,
    load_units,
    unit_line,
    units_path,
)
from planner.proving.units import (
    Asked,
    Attachment,
    Expected,
    Listening,
    Rework,
    StopAt,
)
from tests.proving.unit_samples import AT, PLAN, all_good, unit

FULL = {
    "remarks": "Spare boot in bag 4.\nShell scratched.",
    "attachments": (Attachment(name="joint.jpg", digest="a" * 64, suffix=".jpg", size_bytes=9),),
    "rework": (Rework(at=AT, who="I. Marram", found="high joint on T at L", done="made anew"),),
    "listening": (Listening(tone="in-phase", heard="as-expected", note="in the middle"),),
    "asked": Asked(pairs=((("A", "T"), ("A", "R")),), stop=(StopAt(end="A", mm=3.5),)),
}
posix_only = pytest.mark.skipif(os.name != "posix", reason="links and pipes of Unix")


@pytest.fixture
def plan_path(tmp_path):
    return tmp_path / "pit-lead.json"


def slim(number, **changes):
    """Return a record with one reading, held against nothing: few bytes to cut at."""
    readings = Readings(readings=all_good().readings[:1])
    return unit(number, readings=readings, expected=Expected(), wiggle=(), **changes)


def reasons(units):
    return [problem.what for problem in units.dropped]


def test_no_file_is_no_units(plan_path):
    assert load_units(plan_path) == Units()
    assert load_units(plan_path).next_number == 1


def test_a_record_comes_back_whole(plan_path):
    record = unit(7, **FULL)
    append_unit(plan_path, record)
    assert units_path(plan_path).name == "pit-lead.units.jsonl"
    assert load_units(plan_path) == Units((record,))


def test_a_later_line_is_the_new_state_and_the_earlier_stays(plan_path):
    first, second, other = unit(2, verdict="failed"), unit(2, **FULL), unit(1)
    for record in (first, other, second):
        append_unit(plan_path, record)
    units = load_units(plan_path)
    assert units.latest == {1: other, 2: second}
    assert units.history(2) == (first, second)
    assert units.next_number == 3


def test_what_stands_in_the_file_is_never_changed(plan_path):
    append_unit(plan_path, unit(1))
    before = units_path(plan_path).read_bytes()
    append_unit(plan_path, unit(2))
    assert units_path(plan_path).read_bytes().startswith(before)


def test_a_line_names_its_format_and_version(plan_path):
    append_unit(plan_path, unit(1))
    values = json.loads(units_path(plan_path).read_text("ascii"))
    assert (values["format"], values["version"]) == ("cupwright-unit", 1)


# -- kills ----------------------------------------------------------------------------------------


def test_cut_at_every_byte_of_its_last_append_the_earlier_units_load(plan_path):
    earlier, path = (slim(1), slim(2, **FULL)), units_path(plan_path)
    for record in earlier:
        append_unit(plan_path, record)
    start = path.stat().st_size
    append_unit(plan_path, slim(3))
    data = path.read_bytes()
    for cut in range(start, len(data) + 1):
        path.write_bytes(data[:cut])
        units = load_units(plan_path)
        whole = cut >= len(data) - 1  # only the line end is missing
        assert units.records[:2] == earlier
        assert len(units.records) == (3 if whole else 2)
        assert len(units.dropped) == (0 if whole or cut == start else 1)
        if units.dropped:
            (problem,) = units.dropped
            assert "its line is torn" in problem.what
            assert problem.where == f"{path}: line 3"


def test_a_torn_line_names_its_unit_as_soon_as_that_is_there(plan_path):
    append_unit(plan_path, unit(12))
    path = units_path(plan_path)
    path.write_bytes(path.read_bytes()[:200])
    assert reasons(load_units(plan_path)) == ["unit 12 was dropped: its line is torn"]
    path.write_bytes(path.read_bytes()[:20])
    assert reasons(load_units(plan_path)) == ["a unit was dropped: its line is torn"]


def test_an_append_after_any_cut_is_whole_and_spoils_nothing(plan_path):
    line, path = unit_line(unit(2)), units_path(plan_path)
    append_unit(plan_path, unit(1))
    first = path.read_bytes()
    for cut in (*range(0, len(line), 41), len(line)):
        path.write_bytes(first + line[:cut])
        append_unit(plan_path, unit(3))
        units = load_units(plan_path)
        kept = [1, 2, 3] if cut == len(line) else [1, 3]
        assert [record.number for record in units.records] == kept
        assert len(units.dropped) == (0 if cut in {0, len(line)} else 1)


def test_a_process_that_is_killed_in_its_append_leaves_the_earlier_units(plan_path):
    append_unit(plan_path, unit(1))
    script = f"""
        import os, pathlib
        from planner.proving.unit_file import append_unit
        from planner.proving.units import UnitRecord
        write = os.write
        def torn(handle, data):
            write(handle, bytes(data)[:300])
            os._exit(9)
        os.write = torn
        record = UnitRecord.model_validate_json({unit(2).model_dump_json()!r})
        append_unit(pathlib.Path({str(plan_path)!r}), record)
    """
    done = subprocess.run([sys.executable, "-c", textwrap.dedent(script)], check=False)
    units = load_units(plan_path)
    assert (done.returncode, [record.number for record in units.records]) == (9, [1])
    assert reasons(units) == ["unit 2 was dropped: its line is torn"]


def test_a_full_disk_takes_back_what_it_could_not_finish(plan_path, monkeypatch):
    append_unit(plan_path, unit(1))
    before, write = units_path(plan_path).read_bytes(), os.write

    def half(handle, data):
        if len(data) < 400:
            raise OSError(28, "No space left on device")
        return write(handle, bytes(data)[: len(data) - 100])

    monkeypatch.setattr("os.write", half)
    with pytest.raises(InputError, match="it can't be written: no space left on device"):
        append_unit(plan_path, unit(2))
    assert units_path(plan_path).read_bytes() == before


def test_processes_that_append_at_once_lose_nothing(plan_path):
    script = f"""
        import pathlib, sys
        from planner.proving.unit_file import append_unit
        from planner.proving.units import UnitRecord
        record = UnitRecord.model_validate_json(sys.stdin.readline())
        for number in range(int(sys.argv[1]), int(sys.argv[1]) + 40):
            append_unit(pathlib.Path({str(plan_path)!r}), record.evolve(number=number))
    """
    command = [sys.executable, "-c", textwrap.dedent(script)]
    firsts = (1, 101)
    writers = [subprocess.Popen([*command, str(first)], stdin=subprocess.PIPE) for first in firsts]
    for writer in writers:  # what they wait for comes when both have started
        writer.stdin.write(unit(1, **FULL).model_dump_json().encode() + b"\n")
        writer.stdin.close()
    assert [writer.wait() for writer in writers] == [0, 0]
    units = load_units(plan_path)
    wanted = [first + step for first in firsts for step in range(40)]
    assert (units.dropped, sorted(record.number for record in units.records)) == ((), wanted)


@posix_only
def test_a_line_that_is_being_written_is_waited_for_and_not_called_torn(plan_path):
    """The writer holds the lock with half a line written, until the reader has had its time."""
    append_unit(plan_path, unit(1))
    script = f"""
        import os, pathlib, sys
        from planner.proving.unit_file import append_unit
        from planner.proving.units import UnitRecord
        write = os.write
        def slow(handle, data):
            done = write(handle, bytes(data)[:300])
            if len(data) > 300:
                print("half", flush=True)
                sys.stdin.readline()
            return done
        record = UnitRecord.model_validate_json({unit(2).model_dump_json()!r})
        os.write = slow
        append_unit(pathlib.Path({str(plan_path)!r}), record)
    """
    command = [sys.executable, "-c", textwrap.dedent(script)]
    pipes = {"stdin": subprocess.PIPE, "stdout": subprocess.PIPE}
    with subprocess.Popen(command, **pipes) as writer, ThreadPoolExecutor() as pool:
        assert writer.stdout.readline() == b"half\n"
        units = pool.submit(load_units, plan_path)
        with pytest.raises(TimeoutError):
            units.result(timeout=0.05)
        writer.stdin.write(b"go\n" * 100)
        writer.stdin.flush()
        found = units.result()
    assert (writer.returncode, found.dropped) == (0, ())
    assert [record.number for record in found.records] == [1, 2]


# -- what strangers write -------------------------------------------------------------------------


def with_body(changes):
    """Return a line with a changed record and a digest that fits."""
    import hashlib  # noqa: PLC0415 - one use

    values = json.loads(unit_line(unit(5)))["record"] | changes
    body = json.dumps(values).encode()
    digest = hashlib.sha256(body).hexdigest()
    return (
        b'{"format":"cupwright-unit","version":1,"sha256":"%b","record":' % digest.encode()
        + body
        + b"}"
    )


HOSTILE = {
    "another format": b'{"format":"other","version":1}',
    "no JSON": b"hello",
    "no text": b"\xff\xfe\x00",
    "a newer version": unit_line(unit(5)).replace(b'"version":1', b'"version":2'),
    "a changed figure": unit_line(unit(5)).replace(b'"number":5', b'"number":6'),
    "a path for a digest": with_body(
        {"attachments": [{"name": "x", "digest": "../" * 21 + "a", "size_bytes": 1}]}
    ),
    "a path for a suffix": with_body(
        {"attachments": [{"name": "x", "digest": "a" * 64, "suffix": "/../x", "size_bytes": 1}]}
    ),
    "an unknown key": with_body({"colour": "red"}),
    "an unknown verdict": with_body({"verdict": "excellent"}),
    "a number as text": with_body({"number": "5"}),
    "no moment": with_body({"at": "yesterday"}),
    "deep": with_body({"remarks": json.loads("[" * 60 + "]" * 60)}),
    "an endless figure": with_body({"plan_revision": 10**400}),
    "a control character": with_body({"who": "a\u202eb"}),
    "too long": with_body({"remarks": "x" * LINE_BYTES}),
    "much too long": b"x" * (3 * LINE_BYTES),
}


@pytest.mark.parametrize("name", HOSTILE)
def test_a_strange_line_is_dropped_with_a_reason_and_all_others_load(plan_path, name):
    good = unit_line(unit(1)), unit_line(unit(2))
    lines = (good[0], HOSTILE[name], good[1], b"")
    units_path(plan_path).write_bytes(b"\n".join(lines))
    units = load_units(plan_path)
    assert [record.number for record in units.records] == [1, 2]
    (problem,) = units.dropped
    assert "was dropped: " in problem.what
    assert problem.where.startswith(f"{units_path(plan_path)}: line 2")
    assert problem.mend


def test_a_newer_version_says_so(plan_path):
    units_path(plan_path).write_bytes(HOSTILE["a newer version"])
    assert reasons(load_units(plan_path)) == [
        "unit 5 was dropped: it is of version 2, this Cupwright reads 1"
    ]


@settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(place=st.integers(0, 5000), byte=st.integers(0, 255))
def test_one_changed_byte_is_noticed(plan_path, place, byte):
    first, second = unit_line(unit(1)), unit_line(unit(2))
    spoilt = bytearray(second)
    spoilt[place % len(second)] = byte
    units_path(plan_path).write_bytes(first + b"\n" + bytes(spoilt) + b"\n")
    units = load_units(plan_path)
    assert units.records[0] == unit(1)
    assert len(units.records) == (2 if bytes(spoilt) == second else 1)


def test_every_pair_of_a_lead_of_256_nets_can_be_kept(plan_path):
    names = [f"C.{number}" for number in range(1, 257)]
    pairs = [(("A", one), ("A", other)) for one, other in combinations(names, 2)]
    apart = tuple(Reading(one=one, other=other, joined=False) for one, other in pairs)
    append_unit(plan_path, unit(1, readings=Readings(readings=apart)))
    (record,) = load_units(plan_path).records
    assert len(record.readings.readings) == 256 * 255 // 2


def test_a_record_too_big_for_a_line_is_refused_before_it_is_written(plan_path):
    entry = Rework(at=AT, found="\u00e9" * 4000, done="\u00e9" * 4000)
    with pytest.raises(InputError, match="more than the 4 MB of a line"):
        append_unit(plan_path, unit(1, rework=(entry,) * 100))
    assert not units_path(plan_path).exists()


@posix_only
@pytest.mark.parametrize("act", [load_units, lambda path: append_unit(path, unit(1))])
def test_a_link_or_a_pipe_in_its_place_is_refused(plan_path, tmp_path, act):
    path, elsewhere = units_path(plan_path), tmp_path / "elsewhere"
    elsewhere.write_bytes(b"mine")
    path.symlink_to(elsewhere)
    with pytest.raises(InputError, match="no plain file"):
        act(plan_path)
    assert elsewhere.read_bytes() == b"mine"
    path.unlink()
    os.mkfifo(path)
    with pytest.raises(InputError, match="no plain file"):
        act(plan_path)


# -- the plan it was built to ---------------------------------------------------------------------


def test_any_change_of_the_plan_makes_a_record_stale():
    record = unit(1)
    assert not Judging(PLAN).is_stale(record)
    assert Judging(PLAN.evolve(remarks="another boot")).is_stale(record)
    assert not Judging(PLAN.evolve(title=PLAN.title)).is_stale(record)

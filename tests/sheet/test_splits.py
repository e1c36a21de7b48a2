"""What the sheet says of a split: splices are named, cores that run on are not."""

from planner.data import data_dir
from planner.files.plans import read_plan
from planner.sheet.splits import split_lines


def lines(name: str) -> list[str]:
    return list(split_lines(read_plan(data_dir("resources") / "demo" / f"{name}.json")))


def test_spliced_legs_name_every_join():
    assert lines("stereo-to-two-mono") == [
        "In the split, join WH of A, WH of L",
        "In the split, join RD of A, WH of R",
        "In the split, join SHIELD of A, SHIELD of L, SHIELD of R",
    ]


def test_cores_that_run_on_out_of_their_jacket_are_not_joined():
    assert lines("cue-desk-headphone-lead") == []

"""What the tests of end pages are made from."""

from functools import cache

from planner.checks.finding import Finding
from planner.data import data_dir
from planner.drawing.primitives import Text
from planner.files.plans import read_plan
from planner.model.place import Place
from planner.sheet.leaf import Making

DEMOS = tuple(sorted(path.stem for path in (data_dir("resources") / "demo").glob("*.json")))
STOP = Finding("bridge", "stop", "T and R1 meet.", "They short.", "Part them.", (Place("A"),))


@cache
def demo(name):
    return read_plan(data_dir("resources") / "demo" / f"{name}.json")


def making(plan, findings=(), paper="a4", language="en"):
    return Making(plan, tuple(findings), paper, "", language)


def texts(items):
    return [item.text for item in items if isinstance(item, Text)]

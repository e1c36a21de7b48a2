"""Plans built from the shipped collection, for the sheet's tests; the scenario is invented."""

from functools import cache

from planner.data import data_dir
from planner.edits.by_signal import land_by_signal
from planner.edits.cables import choose_cable
from planner.edits.ends import choose_connector
from planner.edits.shapes import one_to_many, one_to_one, one_to_two
from planner.files.plans import read_plan
from planner.library.loading import load_library
from planner.services.checking import check_plan
from planner.sheet.page import sheet_pages

DEMOS = sorted((data_dir("resources") / "demo").glob("*.json"))


@cache
def library():
    return load_library()


def with_parts(plan, ends, cable):
    known = library()
    for end, (connector, pinout) in ends.items():
        plan = choose_connector(
            plan, end=end, connector=known.connector(connector), pinout=known.pinout(pinout)
        )
    return choose_cable(plan, section=plan.sections[0].id, cable=known.cable(cable))


@cache
def headphone_lead():
    ends = {
        "A": ("jack-4.4-five-pole", "ferrow-pell-4.4"),
        "L": ("jack-3.5-two-pole-slim", "odalisk-cup"),
        "R": ("jack-3.5-two-pole-slim", "odalisk-cup"),
    }
    plan = one_to_two(title="Cue desk headphone lead", order="SP-0417")
    return land_by_signal(with_parts(plan, ends, "hp4-stripes"))[0]


@cache
def balanced_line():
    ends = {"A": ("xlr-3-female", "xlr-3-line"), "B": ("xlr-3-male", "xlr-3-line")}
    plan = one_to_one(title="Stage left balanced line", order="SP-0409", policy="both-ends")
    return land_by_signal(with_parts(plan, ends, "pair-foil"))[0]


@cache
def loom():
    ends = {"A": ("dsub-25-male", "aes59-analogue")}
    ends |= {f"B{number}": ("xlr-3-male", "xlr-3-line") for number in range(1, 9)}
    plan = one_to_many(8, title="Recording rack loom", order="SP-0398")
    return land_by_signal(with_parts(plan, ends, "loom-eight-pair"))[0]


def findings_of(plan):
    return check_plan(plan)


@cache
def demo_at(name):
    """Return the one demo plan whose file has this in its name."""
    (path,) = [path for path in DEMOS if name in path.stem]
    return read_plan(path)


@cache
def demo_pages(name, findings=None, **options):
    """Return the pages of a demo plan, made once for all tests; with its own findings, or these."""
    plan = demo_at(name)
    return sheet_pages(plan, findings_of(plan) if findings is None else findings, **options)


@cache
def spoiled_lead():
    """The headphone lead with the legs of the right channel exchanged at R."""
    plan = headphone_lead()
    swapped = {"T": "S", "S": "T"}
    landings = tuple(
        landing.evolve(contact=swapped[landing.contact]) if landing.end == "R" else landing
        for landing in plan.landings
    )
    return plan.evolve(landings=landings)

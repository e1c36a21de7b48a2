"""Leads for the order of work: the demo leads and random ones, landed and threaded. Invented."""

import random
from functools import cache
from itertools import count

from planner.data import data_dir
from planner.files.plans import read_plan
from planner.model.plan import Conductor, Landing, Run
from tests.dryfit.threaded import random_lead

DEMO = (
    "cue-desk-headphone-lead",
    "intercom-headset",
    "recording-rack-loom",
    "spoiled-cue-desk",
    "stage-left-balanced-line",
    "stereo-to-two-mono",
)


@cache
def demo(name):
    """Return a demo plan."""
    return read_plan(data_dir("resources") / "demo" / f"{name}.json")


def threaded_lead(seed):
    """Return a random I or Y with parts that hinder each other, a core landed at each end."""
    return landed(random_lead(seed, most=5))


def landed(plan):
    """Return such a lead with the core of each section landed."""
    number = count(1)
    runs = [(Run(section=it.id, core="RD"),) for it in plan.sections]
    conductors = tuple(Conductor(id=f"c{next(number)}", runs=run) for run in runs)
    ends = {end: it for it in conductors for end in _ends(plan, it)}
    landings = (Landing(end=end, conductor=it.id, contact="T") for end, it in ends.items())
    return plan.evolve(conductors=conductors, landings=tuple(landings))


def _ends(plan, conductor):
    section = plan.section_by_id[conductor.runs[0].section]
    return [end for end in (section.near, section.far) if end in plan.end_by_id]


def shuffled(names, seed):
    """Return names in a random order."""
    mixed = list(names)
    random.Random(seed).shuffle(mixed)
    return tuple(mixed)

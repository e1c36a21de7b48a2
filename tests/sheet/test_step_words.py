"""The words of every step, in both languages: nothing missing, nothing left in braces."""

import tomllib

import pytest

from planner.data import data_dir
from planner.dryfit.work import steps
from planner.model.cable import Shield
from planner.model.part import Part
from planner.model.plan import Cap, Link, PartUse
from planner.sheet.words import LANGUAGES, Words
from planner.wiring.graph import Wiring
from tests.dryfit.crowds import crowd
from tests.dryfit.work.leads import DEMO, demo, threaded_lead

KINDS = ("boot", "shell", "liner", "clamp", "cover", "sleeve", "heat-shrink", "label")


def furnished(plan):
    """Return a lead with a part of every kind at A and at the split, and one that goes on late."""
    parts = [_part(kind) for kind in KINDS] + [_part("shell", opens=True)]
    uses = [
        PartUse(id=f"{part.id}-at-{at}", part=part.id, at=at, comes_from="A")
        for part in parts
        for at in ("A", "split")
    ]
    late = uses[0].evolve(id="late", after_joint=True)
    known = plan.definitions.evolve(parts=tuple(parts))
    return plan.evolve(parts=(*uses, late), definitions=known)


def _part(kind, *, opens=False):
    name = f"{kind}-that-opens" if opens else kind
    sizes = {"bore_mm": 40, "outside_mm": 41, "length_mm": 10}
    return Part(id=name, title=name, kind=kind, opens=opens, **sizes)


def sleeved(plan):
    """Return a lead with all joints sleeved and dabbed, two of them joined, one core spare."""
    landings = tuple(it.evolve(sleeved=True, dabbed=True) for it in plan.landings[:-1])
    last = plan.landings[-1]
    return plan.evolve(landings=landings, caps=(Cap(end=last.end, conductor=last.conductor),))


def shielded(plan, kind):
    """Return a lead with other shields."""
    cables = tuple(
        it.evolve(shields=tuple(Shield(**{**sh.model_dump(), "kind": kind}) for sh in it.shields))
        for it in plan.definitions.cables
    )
    return plan.evolve(definitions=plan.definitions.evolve(cables=cables))


def leads():
    cue, loom = demo("cue-desk-headphone-lead"), demo("recording-rack-loom")
    yield from (demo(name) for name in DEMO)
    yield loom.evolve(parts=())
    yield from (threaded_lead(seed) for seed in range(20))
    yield from (furnished(cue), sleeved(cue), sleeved(demo("intercom-headset")))
    for kind in ("braid", "foil", "spiral"):
        yield from (shielded(cue, kind), shielded(loom, kind))
    yield cue.evolve(ends=tuple(it.evolve(connector="") for it in cue.ends))
    yield cue.evolve(landings=tuple(it for it in cue.landings if it.end != "L"))
    yield cue.evolve(sections=tuple(it.evolve(cable="") for it in cue.sections))
    yield cue.evolve(workmanship=cue.workmanship.evolve(insulation_gap="below-two"))
    yield loom.evolve(links=(Link(end="A", contacts=("25", "11")),))
    yield loom.evolve(landings=tuple(it for it in loom.landings if it.conductor != "1s"))
    yield cue.evolve(landings=tuple(it for it in cue.landings if it.conductor == "SH"))
    yield from (crowd(seed, 12, shields=2) for seed in range(4))


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_step_has_its_words_and_all_their_values(language):
    words = Words(language)
    for plan in leads():
        for step in steps(plan, Wiring(plan)):
            text = words(f"steps.{step.kind}", **dict(step.values))
            assert "{" not in text
            assert text.count("*") % 2 == 0
            assert text == text.strip()


def test_every_text_of_a_step_is_said_by_one_of_these_leads():
    told = {step.kind for plan in leads() for step in steps(plan, Wiring(plan))}
    path = data_dir("resources") / "words" / "en.toml"
    assert set(tomllib.loads(path.read_text(encoding="utf-8"))["steps"]) - told == set()

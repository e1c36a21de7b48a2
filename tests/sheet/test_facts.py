from planner.model.plan import Cap, Link
from planner.sheet.facts import end_facts
from tests.sheet.plain_plan import plain_plan


def facts(end="A", **changes):
    return {each.end.id: each for each in end_facts(plain_plan(**changes))}[end]


def without(*landed):
    kept = [it for it in plain_plan().landings if (it.end, it.conductor) not in landed]
    return {"landings": kept}


def test_each_contact_has_its_signal_and_what_lands_on_it():
    found = [(j.contact.id, j.carries, [f.code for f in j.flags]) for j in facts().joints]
    assert found == [
        ("T", "L+", ["RD"]),
        ("R", "L\u2212", ["WHBK"]),
        ("S", "shield", ["SHIELD"]),
    ]


def test_a_stripe_is_said_in_words():
    (flag,) = facts().joints[1].flags
    assert (flag.words, flag.colours) == ("white, black stripe", ("WH", "BK"))


def test_a_shield_that_lands_elsewhere_ends_here_and_a_core_is_loose():
    at_b = facts("B", **without(("B", "SH"), ("B", "RD")))
    assert [flag.code for flag in at_b.ending] == ["SHIELD"]
    assert [flag.code for flag in at_b.loose] == ["RD"]


def test_a_shield_that_lands_nowhere_is_loose():
    nowhere = facts("B", **without(("A", "SH"), ("B", "SH")))
    assert [flag.code for flag in nowhere.loose] == ["SHIELD"]


def test_a_capped_core_is_spare_and_a_link_is_named():
    changes = without(("A", "RD"))
    changes |= {"caps": [Cap(end="A", conductor="RD")]}
    changes |= {"links": [Link(end="A", contacts=("T", "R"))]}
    found = facts(**changes)
    assert [flag.code for flag in found.capped] == ["RD"]
    assert found.loose == ()
    assert found.links == ("T + R",)


def test_a_sleeve_is_kept():
    assert [joint.flags[0].sleeved for joint in facts().joints] == [True, False, False]


def test_an_end_without_connector_or_cable_has_no_joints():
    empty = facts(definitions={})
    assert (empty.joints, empty.title) == ((), "no connector chosen")

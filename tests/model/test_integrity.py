"""A plan that does not hang together is told with the key path and a guess at what was meant."""

import pytest

from planner.model.integrity import integrity_problems
from planner.model.plan import (
    Acceptance,
    Cap,
    Conductor,
    End,
    Landing,
    Link,
    PartUse,
    Plan,
    Run,
    Section,
    Split,
)
from planner.problem import Problem
from tests.files.samples import split_plan


@pytest.fixture
def plan(tmp_path):
    return split_plan(tmp_path)


def replaced(records, record_id, **changes):
    return tuple(
        record.evolve(**changes) if record.id == record_id else record for record in records
    )


def told(plan):
    return [(problem.where, problem.what) for problem in integrity_problems(plan)]


def test_a_whole_plan_and_an_empty_one_hang_together(plan):
    assert integrity_problems(plan) == ()
    assert integrity_problems(Plan()) == ()


def test_an_acceptance_may_outlive_its_place(plan):
    stale = Acceptance(code="shield-floating", places=("gone///",), reason="kept")
    assert integrity_problems(plan.evolve(acceptances=(stale,))) == ()


def test_a_problem_has_what_where_and_mend(plan):
    spoiled = plan.evolve(landings=(Landing(end="A", conductor="rde", contact="T"),))
    assert integrity_problems(spoiled) == (
        Problem("there is no conductor 'rde'", "landings[#1].conductor", "Did you mean 'red'?"),
    )


@pytest.mark.parametrize(
    ("name", "extra", "where"),
    [
        ("ends", End(id="A"), "ends and splits[A].id"),
        ("splits", Split(id="A"), "ends and splits[A].id"),
        ("sections", Section(id="left", near="A", far="Y", length_mm=1), "sections[left].id"),
        (
            "conductors",
            Conductor(id="red", runs=(Run(section="left", core="WHBU"),)),
            "conductors[red].id",
        ),
        (
            "parts",
            PartUse(id="boot-A", part="bench-boot", at="A", comes_from="A"),
            "parts[boot-A].id",
        ),
    ],
)
def test_an_id_stands_once(plan, name, extra, where):
    spoiled = plan.evolve(**{name: (*getattr(plan, name), extra)})
    assert [problem.where for problem in integrity_problems(spoiled)] == [where]


@pytest.mark.parametrize("name", ["connectors", "pinouts", "cables", "parts"])
def test_a_definition_stands_once(plan, name):
    held = plan.definitions
    twice = held.evolve(**{name: getattr(held, name) * 2})
    record_id = getattr(held, name)[0].id
    assert told(plan.evolve(definitions=twice)) == [
        (f"definitions.{name}[{record_id}].id", f"the id {record_id!r} stands twice among {name}")
    ]


@pytest.mark.parametrize(
    ("name", "record_id", "change", "where"),
    [
        ("ends", "L", {"connector": "bench-thre"}, "ends[L].connector"),
        ("ends", "L", {"pinout": "nothing"}, "ends[L].pinout"),
        ("sections", "left", {"near": "Z"}, "sections[left].near"),
        ("sections", "left", {"far": "Z"}, "sections[left].far"),
        ("sections", "left", {"fan_of": "trnk"}, "sections[left].fan_of"),
        ("sections", "left", {"fan_of": "left"}, "sections[left].fan_of"),
        ("sections", "right", {"cable": "bench-tow"}, "sections[right].cable"),
        ("sections", "right", {"fan_of": "trunk"}, "sections[right]"),
        (
            "conductors",
            "screen",
            {"runs": (Run(section="x", core="SH"),)},
            "conductors[screen].runs[#1].section",
        ),
        ("parts", "boot-A", {"part": "boot"}, "parts[boot-A].part"),
        ("parts", "boot-A", {"at": "Z"}, "parts[boot-A].at"),
        ("parts", "boot-A", {"comes_from": "Y"}, "parts[boot-A].comes_from"),
    ],
)
def test_every_name_is_known(plan, name, record_id, change, where):
    spoiled = plan.evolve(**{name: replaced(getattr(plan, name), record_id, **change)})
    assert [problem.where for problem in integrity_problems(spoiled)] == [where]


@pytest.mark.parametrize(
    ("runs", "where", "what"),
    [
        (
            (Run(section="trunk", core="SHH"),),
            "conductors[screen].runs[#1].core",
            "there is no core or shield in cable 'bench-two' called 'SHH'",
        ),
        (
            (Run(section="trunk", core="RD"),),
            "conductors[screen].runs[#1].core",
            "'RD' of section 'trunk' is also in conductor 'red'",
        ),
        (
            (Run(section="trunk", core="SH"), Run(section="trunk", core="SH")),
            "conductors[screen].runs[#2].core",
            "'SH' of section 'trunk' is also in conductor 'screen'",
        ),
    ],
)
def test_a_core_runs_in_one_conductor_and_once(plan, runs, where, what):
    spoiled = plan.evolve(conductors=replaced(plan.conductors, "screen", runs=runs))
    assert (where, what) in told(spoiled)


def test_a_conductor_runs_through_a_section_once(plan):
    runs = (Run(section="right", core="SH"), Run(section="right", core="RD"))
    spoiled = plan.evolve(
        conductors=(*plan.conductors, Conductor(id="other", runs=runs)),
    )
    assert told(spoiled) == [("conductors[other].runs", "it runs twice through section 'right'")]


def test_the_runs_of_a_conductor_meet(tmp_path):
    plan = split_plan(tmp_path)
    longer = plan.evolve(
        ends=(*plan.ends, End(id="far")),
        splits=(*plan.splits, Split(id="Z")),
        sections=(
            *(
                section.evolve(far="Z") if section.id == "right" else section
                for section in plan.sections
            ),
            Section(id="after", near="Z", far="R", fan_of="right", length_mm=10),
            Section(id="more", near="Z", far="far", fan_of="right", length_mm=10),
        ),
        conductors=(
            Conductor(
                id="gap", runs=(Run(section="trunk", core="RD"), Run(section="after", core="RD"))
            ),
        ),
        landings=(),
        caps=(),
    )
    assert told(longer) == [
        ("conductors[gap].runs", "its runs in trunk, after do not meet at splits")
    ]


def test_a_section_without_a_cable_has_no_cores(plan):
    spoiled = plan.evolve(sections=replaced(plan.sections, "trunk", cable=""))
    assert told(spoiled)[0] == (
        "conductors[red].runs[#1].core",
        "section 'trunk' has no cable, so no core 'RD'",
    )


@pytest.mark.parametrize(
    ("sections", "where", "what"),
    [
        (
            (("a", "A", "Y"), ("b", "Y", "L"), ("c", "Y", "R"), ("d", "L", "R")),
            "sections[d]",
            "it closes a ring: 'L' and 'R' are joined already",
        ),
        ((("a", "A", "A"),), "sections[a]", "it closes a ring: 'A' and 'A' are joined already"),
        ((("a", "A", "Y"), ("b", "Y", "L")), "ends[R]", "'R' is not joined to 'A' by any section"),
        (
            (("a", "A", "L"), ("b", "L", "R"), ("c", "R", "Y")),
            "ends[L]",
            "2 sections meet at end 'L', which is a single end",
        ),
        (
            (("a", "A", "L"), ("b", "L", "R"), ("c", "R", "Y")),
            "splits[Y]",
            "fewer than two sections meet at split 'Y'",
        ),
    ],
)
def test_the_sections_form_a_tree_with_the_ends_at_its_leaves(sections, where, what):
    plan = Plan(
        ends=(End(id="A"), End(id="L"), End(id="R")),
        splits=(Split(id="Y"),),
        sections=tuple(
            Section(id=name, near=near, far=far, length_mm=1) for name, near, far in sections
        ),
    )
    assert (where, what) in told(plan)


def test_a_lone_end_is_no_lead():
    assert told(Plan(ends=(End(id="A"),))) == [("ends[A]", "no section reaches end 'A'")]


def test_a_fan_meets_its_trunk(tmp_path):
    plan = Plan(
        ends=(End(id="A"), End(id="B"), End(id="C"), End(id="D")),
        splits=(Split(id="Y"), Split(id="Z")),
        sections=(
            Section(id="a", near="A", far="Y", length_mm=1),
            Section(id="b", near="Y", far="B", length_mm=1),
            Section(id="y", near="Y", far="Z", length_mm=1),
            Section(id="c", near="Z", far="C", fan_of="a", length_mm=1),
            Section(id="d", near="Z", far="D", length_mm=1),
        ),
    )
    assert told(plan) == [("sections[c].fan_of", "section 'a' does not meet 'c'")]


def test_fans_do_not_go_in_a_ring(plan):
    spoiled = plan.evolve(
        sections=replaced(plan.sections, "trunk", cable="", fan_of="left"),
        conductors=(),
        landings=(),
        caps=(),
    )
    assert ("sections[left].fan_of", "section 'left' is, step by step, the fan of itself") in told(
        spoiled
    )


def test_a_pinout_record_fits_the_connector_at_its_end(plan):
    other = plan.definitions.pinouts[0].evolve(fits=("another",))
    spoiled = plan.evolve(definitions=plan.definitions.evolve(pinouts=(other,)))
    what = "pinout record 'bench-three-phones' is for another; the end has 'bench-three'"
    assert told(spoiled) == [("ends[A].pinout", what)]


def test_a_pinout_record_names_contacts_that_exist(plan):
    other = plan.definitions.pinouts[0].evolve(signals={"T": ("L+",), "R9": ("R+",)})
    spoiled = plan.evolve(definitions=plan.definitions.evolve(pinouts=(other,)))
    assert told(spoiled) == [
        (
            "ends[A].pinout (bench-three-phones: R9)",
            "there is no contact on 'bench-three' called 'R9'",
        )
    ]


@pytest.mark.parametrize(
    ("change", "where", "what"),
    [
        (
            {"landings": (Landing(end="B", conductor="red", contact="T"),)},
            "landings[#1].end",
            "there is no end 'B'",
        ),
        (
            {"landings": (Landing(end="R", conductor="red", contact="T"),)},
            "landings[#1].conductor",
            "conductor 'red' does not come out at end 'R'",
        ),
        (
            {"landings": (Landing(end="A", conductor="red", contact="X"),)},
            "landings[#1].contact",
            "there is no contact on 'bench-three' called 'X'",
        ),
        (
            {
                "landings": (
                    Landing(end="A", conductor="red", contact="T"),
                    Landing(end="A", conductor="red", contact="S"),
                )
            },
            "landings[#2]",
            "conductor 'red' is landed or capped twice at end 'A'",
        ),
        (
            {"caps": (Cap(end="A", conductor="red"),)},
            "caps[#1]",
            "conductor 'red' is landed or capped twice at end 'A'",
        ),
        (
            {"caps": (Cap(end="R", conductor="screen"),)},
            "caps[#1].conductor",
            "conductor 'screen' does not come out at end 'R'",
        ),
        (
            {"links": (Link(end="L", contacts=("T", "X")),)},
            "links[#1].contacts",
            "there is no contact on 'bench-three' called 'X'",
        ),
        (
            {"links": (Link(end="L", contacts=("T", "T")),)},
            "links[#1].contacts",
            "a contact stands twice in it",
        ),
        ({"links": (Link(end="Q", contacts=("T", "S")),)}, "links[#1].end", "there is no end 'Q'"),
    ],
)
def test_landings_caps_and_links_name_what_is_there(plan, change, where, what):
    assert told(plan.evolve(**change)) == [(where, what)]


@pytest.mark.parametrize(
    ("order", "what"),
    [
        (("T", "X"), "there is no contact on 'bench-three' called 'X'"),
        (("T", "T"), "a contact stands twice in it"),
    ],
)
def test_the_solder_order_names_each_contact_once(plan, order, what):
    spoiled = plan.evolve(ends=replaced(plan.ends, "L", solder_order=order))
    assert told(spoiled) == [("ends[L].solder_order", what)]


def test_an_end_without_a_connector_has_no_contacts(plan):
    spoiled = plan.evolve(ends=replaced(plan.ends, "A", connector="", pinout=""))
    assert told(spoiled)[0] == (
        "landings[#1].contact",
        "end 'A' has no connector, so no contact 'T'",
    )

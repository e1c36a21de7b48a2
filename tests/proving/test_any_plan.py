"""Half-made and wrong plans: there is always a sweep and a plan, and they keep their promises."""

from hypothesis import given, settings

from planner.cli.sweep_text import sweep_text
from planner.cli.sweep_values import sweep_values
from planner.model.plan import Plan
from planner.proving.expected import expected_sweep
from planner.proving.form import form_text
from planner.proving.methods import METHODS
from planner.proving.probing import isolation_plans
from planner.proving.reading_csv import readings_from_text
from planner.services.sweeping import sweep_plan
from planner.wiring.graph import Wiring
from tests.strategies import plans


@given(plans())
@settings(max_examples=60, deadline=None)
def test_every_contact_is_in_one_net_and_every_path_is_within_it(plan):
    sweep = expected_sweep(plan, Wiring(plan))
    assert sorted(it for net in sweep.nets for it in net) == sorted(sweep.contacts)
    for path in sweep.paths:
        assert sweep.joined(path.one, path.other)
        assert sweep.joined(path.other, path.one)
        assert path.limit_ohm >= 1 + (path.ohm or 0)


@given(plans())
@settings(max_examples=40, deadline=None)
def test_no_reading_of_isolation_is_between_contacts_that_are_joined(plan):
    wiring = Wiring(plan)
    sweep = expected_sweep(plan, wiring)
    for isolation in isolation_plans(plan, wiring):
        for probe in isolation.probes:
            sides = [{sweep.net_of[it] for it in side} for side in (probe.one, probe.other)]
            assert sides[0]
            assert sides[1]
            assert not sides[0] & sides[1]


@given(plans())
@settings(max_examples=25, deadline=None)
def test_all_that_is_printed_is_printed(plan):
    for method in METHODS:
        swept = sweep_plan(plan, method)
        assert max(map(len, sweep_text("plan.json", swept, stopped=True).splitlines())) <= 80
        assert sweep_values("plan.json", swept)["isolation"]["method"] == method
        if swept.sweep.contacts:
            assert readings_from_text(form_text(swept.probes), plan, "form.csv").readings == ()


@given(plans())
@settings(max_examples=30, deadline=None)
def test_other_names_of_ends_change_only_the_names(plan):
    def named(end):
        return f"{end}x"

    text = plan.model_dump(mode="json")
    renamed = Plan.model_validate(_renamed(text, {end.id: named(end.id) for end in plan.ends}))
    before = isolation_plans(plan, Wiring(plan))
    after = isolation_plans(renamed, Wiring(renamed))
    for one, other in zip(before, after, strict=True):
        assert [_with(it.one, named) + _with(it.other, named) for it in one.probes] == [
            it.one + it.other for it in other.probes
        ]


def _with(contacts, named):
    return tuple((named(end), contact) for end, contact in contacts)


def _renamed(text, names):
    """Return a plan's text with other names of ends wherever an end is named."""
    ends = {"end", "at", "comes_from", "near", "far"}
    for key in ("landings", "caps", "links", "sections"):
        for each in text[key]:
            each |= {name: names.get(each[name], each[name]) for name in ends & each.keys()}
    text["ends"] = [each | {"id": names[each["id"]]} for each in text["ends"]]
    return text

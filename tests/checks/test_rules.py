"""Every rule against its samples, and the rules as a whole against their published list."""

from functools import cache

import pytest

from planner.checks.registry import all_rules
from planner.services.checking import check_plan
from tests.checks.samples import all_samples

# The frozen codes of the wiring and of definitions, with their weights.
WEIGHTS = {
    "open": "stop",
    "bridge": "stop",
    "crossed-channels": "stop",
    "one-channel-reversed": "stop",
    "all-channels-reversed": "caution",
    "joined-driven-returns": "stop",
    "shield-on-signal": "stop",
    "shield-floating": "caution",
    "shield-both-ends": "note",
    "shield-one-end": "note",
    "shield-missing": "caution",
    "crowded-contact": "caution",
    "loose-conductor": "caution",
    "unused-contact": "note",
    "pinout-unconfirmed": "caution",
    "pinout-conflict": "caution",
    "side-unstated": "stop",
}
# Most samples do not care how their cores lie: only its own samples ask whether leads cross.
LAYOUT = {"leads-cross"}


@cache
def samples():
    return [(f"{each.code}: {each.name}", each) for each in all_samples()]


def each_sample(*, bad):
    found = [(name, each) for name, each in samples() if each.is_bad == bad]
    return pytest.mark.parametrize(
        "sample", [each for _, each in found], ids=[name for name, _ in found]
    )


def codes(sample, weights=("stop", "caution")):
    return {each.code for each in sample.findings if each.weight in weights} - (
        LAYOUT - {sample.code}
    )


@each_sample(bad=True)
def test_bad_gives_its_code_and_no_other(sample):
    heavy = codes(sample)
    assert heavy | codes(sample, ("note",)) & {sample.code} == {sample.code}


@each_sample(bad=False)
def test_good_gives_none(sample):
    assert codes(sample) == set()
    assert sample.code not in codes(sample, ("note",))


@each_sample(bad=True)
def test_where_names_things_of_the_plan(sample):
    plan = sample.plan
    for finding in sample.findings:
        for place in finding.where:
            assert not place.end or place.end in plan.end_by_id
            assert not place.conductor or place.conductor in plan.conductor_by_id
            if place.contact:
                assert place.contact in plan.connector_of(place.end).by_id


@each_sample(bad=True)
def test_a_remedy_mends(sample):
    for finding in sample.findings:
        if finding.remedy:
            after = check_plan(finding.remedy.edit(sample.plan), sample.known)
            assert finding.what not in {each.what for each in after}


@pytest.mark.parametrize("code", sorted(WEIGHTS))
def test_weight_is_as_published(code):
    assert {each.code: each.weight for each in all_rules()}[code] == WEIGHTS[code]


@pytest.mark.parametrize("rule", all_rules(), ids=lambda rule: rule.code)
def test_every_rule_has_words(rule):
    assert rule.title
    assert rule.why.endswith(".")


@pytest.mark.parametrize("rule", all_rules(), ids=lambda rule: rule.code)
def test_every_rule_has_bad_and_good_samples(rule):
    kinds = {each.is_bad for _, each in samples() if each.code == rule.code}
    assert kinds == {True, False}


def test_findings_of_samples_read_as_sentences():
    for _, sample in samples():
        for finding in sample.findings:
            assert finding.what.endswith(".")
            assert finding.mend.endswith(".")
            assert finding.what[0] == finding.what[0].upper()

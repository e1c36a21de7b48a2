"""The document tells every change of a plan, whichever part of it changes."""

from planner.model import document
from planner.model.document import Change, Document
from planner.model.plan import Plan


def test_every_part_of_a_plan_is_looked_at():
    assert {*document._LISTS, *document._FIELDS} == set(Plan.model_fields)


def test_a_change_of_what_is_assumed_is_told():
    told = []
    kept = Document(Plan())
    kept.subscribe(told.append)
    kept.replace(kept.plan.evolve(assumed=kept.plan.assumed.evolve(temperature_c=40)))
    assert told == [(Change("replaced", "assumed"),)]

"""How the caution about a pinout that nothing has confirmed names what the record rests on."""

import pytest

from planner.model.source import Retired, Source
from planner.services.checking import check_plan
from tests.building import PHONES, PHONES_IN, Fitting, fitting, lead
from tests.checks.samples_records import WIRES


def said(source, trust="documented"):
    """What is found of a record that is known from `source`."""
    inlet = fitting(
        PHONES_IN.connector, "odd-inlet", "T L+, R R+, S L- R-", source=source, trust=trust
    )
    found = [
        each
        for each in check_plan(lead({"A": PHONES, "B": inlet}, WIRES))
        if each.code == "pinout-unconfirmed"
    ]
    return found[0].what


@pytest.mark.parametrize(
    ("kind", "reference", "date", "rests_on"),
    [
        ("letter", "from the maker", "2011", "a letter from the maker, 2011"),
        ("letter", "letter from the maker", "2011", "a letter from the maker, 2011"),
        ("drawing", "QS-112", "", "a drawing (QS-112)"),
        ("drawing", "drawing QS-112", "", "a drawing QS-112"),
        ("practice", "makers differ", "", "common practice (makers differ)"),
        ("memory", "", "", "memory"),
        ("hearsay", "told at the bench", "", "hearsay (told at the bench)"),
    ],
)
def test_the_source_is_named_once(kind, reference, date, rests_on):
    source = Source(kind=kind, reference=reference, date=date)
    assert said(source) == f"Odd inlet rests on {rests_on}; no part has been measured."


def test_a_drawing_that_is_only_hearsay_is_called_so():
    source = Source(kind="drawing", reference="leaflet in the box")
    assert said(source, "hearsay") == (
        "Odd inlet rests on a drawing (leaflet in the box); "
        "it counts as hearsay, and no part has been measured."
    )


@pytest.mark.parametrize("known", [False, True])
def test_a_retired_record_says_why_whoever_knows_it(known):
    """The copy in the plan may be older than the library's record, where it was retired."""
    inlet = fitting(PHONES_IN.connector, "odd-inlet", "T L+, R R+, S L- R-")
    retired = inlet.pinout.evolve(
        retired=Retired(reason="drawn from the mating side.", by="A. Tilney", date="2026-05-11")
    )
    used = inlet if known else Fitting(inlet.connector, retired)
    found = check_plan(lead({"A": PHONES, "B": used}, WIRES), (retired,) if known else ())
    assert [(each.code, each.what) for each in found] == [
        (
            "pinout-unconfirmed",
            "Odd inlet was retired (A. Tilney, 2026-05-11): drawn from the mating side.",
        )
    ]

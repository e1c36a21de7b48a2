"""Certificates and the summary of all units, as files."""

import csv
import io

import pytest

from planner.drawing.safe_svg import unsafe_parts
from planner.problem import InputError
from planner.proving.attachments import attach, kept_at
from planner.proving.reading import Reading
from planner.proving.unit_file import Units, append_unit
from planner.services.units import COLUMNS, summary_csv, write_certificate, write_summary
from tests.proving.unit_samples import PLAN, all_good, unit


@pytest.fixture
def plan_path(tmp_path):
    return tmp_path / "pit-lead.json"


def rows_of(text):
    return list(csv.DictReader(io.StringIO(text, newline="")))


def test_a_certificate_as_pdf_and_as_safe_svg(plan_path, tmp_path):
    append_unit(plan_path, unit(4))
    (pdf,) = write_certificate(PLAN, plan_path, 4, tmp_path / "four.pdf")
    assert pdf.read_bytes().startswith(b"%PDF-")
    (svg,) = write_certificate(PLAN, plan_path, 4, tmp_path / "four.svg", language="de")
    text = svg.read_text("utf-8")
    assert list(unsafe_parts(text)) == []
    assert "BESTANDEN" in text
    assert "Unit 4 of SP-0420" in text


def test_the_latest_record_counts_and_the_earlier_are_told(plan_path, tmp_path):
    append_unit(plan_path, unit(4, verdict="failed", who="R. Samphire"))
    append_unit(plan_path, unit(4))
    (svg,) = write_certificate(PLAN, plan_path, 4, tmp_path / "four.svg")
    text = svg.read_text("utf-8")
    assert ">PASSED<" in text
    assert "R. Samphire: failed" in text


def test_a_changed_attachment_is_told(plan_path, tmp_path):
    photo = tmp_path / "joint.jpg"
    photo.write_bytes(b"invented picture")
    attachment = attach(plan_path, photo)
    append_unit(plan_path, unit(4, attachments=(attachment,)))
    (svg,) = write_certificate(PLAN, plan_path, 4, tmp_path / "four.svg")
    assert "GONE OR CHANGED" not in svg.read_text("utf-8")
    kept_at(plan_path, attachment).write_bytes(b"another")
    (svg,) = write_certificate(PLAN, plan_path, 4, tmp_path / "four.svg")
    assert "GONE OR CHANGED" in svg.read_text("utf-8")


def test_what_a_stranger_wrote_is_escaped(plan_path, tmp_path):
    append_unit(plan_path, unit(4, remarks="<script>alert(1)</script> & *so* [1]"))
    (svg,) = write_certificate(PLAN, plan_path, 4, tmp_path / "four.svg")
    text = svg.read_text("utf-8")
    assert list(unsafe_parts(text)) == []
    assert "&lt;script&gt;" in text


def test_a_unit_that_is_not_there_names_those_that_are(plan_path, tmp_path):
    with pytest.raises(InputError, match="there is no unit 4") as none:
        write_certificate(PLAN, plan_path, 4, tmp_path / "four.pdf")
    assert "Prove it first" in str(none.value)
    append_unit(plan_path, unit(2))
    with pytest.raises(InputError, match="Kept are 2"):
        write_certificate(PLAN, plan_path, 4, tmp_path / "four.pdf")
    assert not (tmp_path / "four.pdf").exists()


def test_another_ending_is_refused(plan_path, tmp_path):
    append_unit(plan_path, unit(4))
    with pytest.raises(InputError, match=r"\.svg or \.pdf"):
        write_certificate(PLAN, plan_path, 4, tmp_path / "four.doc")


def test_the_summary_has_a_row_for_the_latest_of_each_unit(tmp_path):
    bridge = Reading(one=("A", "T"), other=("A", "R"), joined=True)
    units = Units(
        (
            unit(2, verdict="failed"),
            unit(3, readings=all_good().taken(bridge)),
            unit(2, remarks="two\nlines, and a comma", who="=1+1"),
        )
    )
    (path,) = write_summary(PLAN.evolve(revision=2), units, tmp_path / "units.csv")
    text = path.read_bytes().decode("utf-8")
    two, three = rows_of(text)
    assert tuple(two) == COLUMNS
    assert text.count("\r\n") == 3
    assert (two["unit"], two["verdict"], two["records"]) == ("2", "passed", "2")
    assert (two["paths_good"], two["paths"], two["worst_ohm"]) == ("4", "4", "0.15")
    assert (two["pairs_apart"], two["pairs"], two["faults"]) == ("3", "3", "0")
    assert (two["plan_revision"], two["plan_changed_since"]) == ("1", "yes")
    assert (two["who"], two["remarks"]) == ("'=1+1", "two lines, and a comma")
    assert (three["verdict"], three["faults"]) == ("failed", "1")


def test_without_units_the_summary_is_its_head():
    assert summary_csv(PLAN, Units()) == ",".join(COLUMNS) + "\r\n"

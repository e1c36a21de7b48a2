"""The files of a sheet: names, safe SVG, PDF at true size, the same bytes, nothing half written."""

import re
import shutil
import subprocess
from xml.etree import ElementTree as ET

import pytest

from planner.data import data_dir
from planner.drawing.safe_svg import unsafe_parts
from planner.files.plans import read_plan
from planner.problem import InputError
from planner.services.sheets import sheet_files, write_sheet
from planner.sheet.page import sheet_pages
from tests.sheet.plain_plan import CAUTION, STOP, plain_plan
from tests.sheet.samples import findings_of

DEMOS = sorted((data_dir("resources") / "demo").glob("*.json"))
needs_poppler = pytest.mark.skipif(
    not (shutil.which("pdftoppm") and shutil.which("pdfinfo")),
    reason="poppler-utils is not installed",
)


def demo(name):
    return read_plan(next(path for path in DEMOS if name in path.stem))


@pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.stem)
@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_every_demo_sheet_is_safe_svg(path, paper, tmp_path):
    plan = read_plan(path)
    for file in write_sheet(plan, findings_of(plan), tmp_path / "sheet.svg", paper=paper):
        assert unsafe_parts(file.read_text(encoding="utf-8")) == ()


def test_one_page_goes_to_the_name_given(tmp_path):
    page, *_ = sheet_pages(plain_plan(), ())
    ((name, _),) = sheet_files([page], tmp_path / "a.svg", title="Sample")
    assert name == tmp_path / "a.svg"


def test_several_pages_are_numbered(tmp_path):
    files = write_sheet(demo("loom"), (), tmp_path / "loom.svg")
    assert [file.name for file in files] == [f"loom-{n}.svg" for n in range(1, len(files) + 1)]
    assert len(files) > 1


def test_or_stand_under_one_another_in_one_file(tmp_path):
    (file,) = write_sheet(demo("loom"), (), tmp_path / "loom.svg", one_file=True)
    root = ET.fromstring(file.read_bytes())
    pages = len(write_sheet(demo("loom"), (), tmp_path / "pages.svg"))
    assert root.get("height") == f"{297 * pages}mm"
    assert unsafe_parts(file.read_text(encoding="utf-8")) == ()


@pytest.mark.parametrize("name", ["sheet.svg", "sheet.pdf"])
def test_same_bytes_each_time(name, tmp_path):
    for folder in ("one", "other"):
        (tmp_path / folder).mkdir()
        write_sheet(plain_plan(), (CAUTION,), tmp_path / folder / name, one_file=True)
    assert (tmp_path / "one" / name).read_bytes() == (tmp_path / "other" / name).read_bytes()


@pytest.mark.parametrize("name", ["sheet.png", "sheet"])
def test_another_ending_is_refused_and_nothing_is_written(name, tmp_path):
    with pytest.raises(InputError, match=r"\.svg or \.pdf"):
        write_sheet(plain_plan(), (), tmp_path / name)
    assert list(tmp_path.iterdir()) == []


def test_a_folder_that_is_not_there_is_said(tmp_path):
    with pytest.raises(InputError, match="can't be written"):
        write_sheet(plain_plan(), (), tmp_path / "none" / "sheet.svg")


HOSTILE = '</text><script>alert("x")</script><!--&amp;'


@pytest.mark.parametrize("findings", [(), (STOP, CAUTION)])
def test_markup_in_names_stays_text(tmp_path, findings):
    plan = plain_plan(title=HOSTILE, order=HOSTILE, remarks=f"{HOSTILE}\n\x07\u2028{HOSTILE}")
    ends = tuple(end.evolve(name=HOSTILE) for end in plan.ends)
    files = write_sheet(plan.evolve(ends=ends), findings, tmp_path / "sheet.svg", one_file=True)
    text = files[0].read_text(encoding="utf-8")
    assert unsafe_parts(text) == ()
    assert "<script" not in text
    assert "\x07" not in text


def text_of(file):
    return subprocess.run(["pdftotext", file, "-"], check=True, capture_output=True).stdout.decode()


@needs_poppler
@pytest.mark.parametrize(("paper", "size"), [("a4", (210, 297)), ("letter", (215.9, 279.4))])
def test_the_pdf_has_all_pages_at_the_size_of_the_paper(tmp_path, paper, size):
    # A4: ISO 216. Letter: 8.5 by 11 inches.
    (file,) = write_sheet(demo("loom"), (), tmp_path / "loom.pdf", paper=paper)
    said = subprocess.run(["pdfinfo", file], check=True, capture_output=True).stdout.decode()
    found = [float(x) / 72 * 25.4 for x in re.search(r"([\d.]+) x ([\d.]+) pts", said).groups()]
    assert found == [pytest.approx(one, abs=0.01) for one in size]
    pages = int(re.search(r"Pages:\s+(\d+)", said).group(1))
    assert f"1 of {pages}" in text_of(file)
    assert "SOLDER SIDE" in text_of(file)

"""The PDF backend, against poppler where it is installed."""

import re
import shutil
import subprocess

import pytest

from planner.drawing.metrics import CHARACTERS
from planner.drawing.pdf import PdfPage, pdf_bytes
from planner.drawing.primitives import Circle, Rect, Style, Text
from tests.drawing.test_svg import EVERYTHING

INK = Style(fill="#000000")
BAR = Rect((1000, 2000), 10000, 500, INK)
needs_poppler = pytest.mark.skipif(
    not (shutil.which("pdftoppm") and shutil.which("pdfinfo") and shutil.which("pdftotext")),
    reason="poppler-utils is not installed",
)


def poppler(tool, content, tmp_path, *options):
    path = tmp_path / "file.pdf"
    path.write_bytes(content)
    return subprocess.run([tool, path, *options], check=True, capture_output=True).stdout


def rows_of(content, tmp_path, dpi):
    """The page as poppler paints it: rows of grey values."""
    path = tmp_path / "file.pdf"
    path.write_bytes(content)
    command = ["pdftoppm", "-gray", "-r", str(dpi), "-singlefile", path, tmp_path / "out"]
    subprocess.run(command, check=True)
    return grey((tmp_path / "out.pgm").read_bytes())


def test_same_bytes_each_time():
    pages = [PdfPage(EVERYTHING, 21000, 29700)]
    assert pdf_bytes(pages, title="A") == pdf_bytes(pages, title="A")


def test_cross_reference_points_at_every_object():
    content = pdf_bytes([PdfPage(EVERYTHING, 21000, 29700)])
    places = [int(found) for found in re.findall(rb"(\d{10}) 00000 n", content)]
    heads = [content[place : place + 12].split(b" obj")[0] for place in places]
    assert heads == [b"%d 0" % (number + 1) for number in range(len(places))]


def test_an_unknown_shape_is_refused():
    with pytest.raises((TypeError, AttributeError)):
        pdf_bytes([PdfPage(("no shape",), 100, 100)])


@needs_poppler
@pytest.mark.parametrize(
    ("width", "height", "size"), [(21000, 29700, (210, 297)), (21590, 27940, (215.9, 279.4))]
)
def test_page_is_as_large_as_the_paper(tmp_path, width, height, size):
    # A4: ISO 216. Letter: ANSI/ASME Y14.1 size A, 8.5 by 11 inches.
    output = poppler("pdfinfo", pdf_bytes([PdfPage((), width, height)]), tmp_path).decode()
    found = [float(figure) for figure in re.search(r"([\d.]+) x ([\d.]+) pts", output).groups()]
    assert [figure / 72 * 25.4 for figure in found] == [pytest.approx(s, abs=0.01) for s in size]


def grey(picture):
    _, width, height, _, data = re.match(
        rb"(P5)\s(\d+)\s(\d+)\s(\d+)\s(.*)", picture, re.DOTALL
    ).groups()
    width = int(width)
    return [data[row * width : (row + 1) * width] for row in range(int(height))]


@needs_poppler
def test_a_bar_of_100_mm_measures_100_mm(tmp_path):
    dpi = 600
    rows = rows_of(pdf_bytes([PdfPage((BAR,), 21000, 29700)]), tmp_path, dpi)
    row = rows[round(22.5 / 25.4 * dpi)]
    dark = [place for place, value in enumerate(row) if value < 128]
    assert (dark[-1] - dark[0] + 1) / dpi * 25.4 == pytest.approx(100, abs=0.1)
    assert dark[0] / dpi * 25.4 == pytest.approx(10, abs=0.1)
    column = [place for place, line in enumerate(rows) if line[dark[0] + 10] < 128]
    assert column[0] / dpi * 25.4 == pytest.approx(20, abs=0.1)


@needs_poppler
def test_text_can_be_copied_out(tmp_path):
    line = Text((1000, 5000), "L\u2212 1/2 (Gr\u00fc\u00dfe) \\", 344, "#000000", bold=True)
    content = pdf_bytes([PdfPage((line,), 21000, 29700)])
    assert line.text in poppler("pdftotext", content, tmp_path, "-").decode()


@needs_poppler
def test_more_than_256_characters_take_a_second_font(tmp_path):
    marks = [mark for mark in CHARACTERS if not mark.isspace() and mark != "\u00ad"]
    rows = [
        Text((500, 1000 + 600 * place), "".join(marks[start : start + 40]), 300, "#000000")
        for place, start in enumerate(range(0, len(marks), 40))
    ]
    found = poppler("pdftotext", pdf_bytes([PdfPage(tuple(rows), 21000, 29700)]), tmp_path, "-")
    kept = set(found.decode())
    assert len(marks) > 256
    assert {mark for mark in marks if mark not in kept} <= {"\ufb01"}


@needs_poppler
def test_a_character_outside_the_face_draws_a_box_and_does_no_harm(tmp_path):
    line = Text((1000, 5000), "a\u6f22b", 2000, "#000000")
    text = poppler("pdftotext", pdf_bytes([PdfPage((line,), 21000, 29700)]), tmp_path, "-")
    assert "a\u6f22b" in text.decode()


@needs_poppler
def test_letters_after_a_faint_shape_are_not_faint(tmp_path):
    faint = Rect((0, 0), 500, 500, Style(fill="#000000", opacity=0.3))
    letters = Text((1000, 2000), "HHH", 1000, "#000000", bold=True)
    rows = rows_of(pdf_bytes([PdfPage((faint, letters), 5000, 3000)], unit_mm=0.01), tmp_path, 150)
    assert min(min(row) for row in rows) == 0


@needs_poppler
def test_a_circle_is_round(tmp_path):
    disc = Circle((5000, 5000), 2000, INK)
    rows = rows_of(pdf_bytes([PdfPage((disc,), 10000, 10000)]), tmp_path, 254)
    area = sum(value < 128 for row in rows for value in row) / 100
    assert area == pytest.approx(3.14159 * 20 * 20, rel=0.003)

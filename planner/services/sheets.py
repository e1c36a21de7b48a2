"""Write the bench sheet of a plan to SVG or PDF files, each in one step."""

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import Literal

from planner.checks.finding import Finding
from planner.drawing.outlines import outlined
from planner.drawing.pdf import PdfPage, pdf_bytes
from planner.drawing.svg import svg_text
from planner.files.atomic import write_atomic
from planner.model.plan import Plan
from planner.problem import InputError
from planner.sheet.block import moved
from planner.sheet.page import UNIT_MM, Page, sheet_pages
from planner.sheet.words import Language

PaperChoice = Literal["a4", "letter"]
_GROUND = "#ffffff"
_DESC = "Every face is seen from the solder side. Print at 100 %, do not fit to the page."


def write_sheet(  # noqa: PLR0913 - each names one choice, by keyword
    plan: Plan,
    findings: Sequence[Finding],
    path: Path,
    *,
    paper: PaperChoice = "a4",
    date: str = "",
    one_file: bool = False,
    leads: int = 1,
    language: Language = "en",
    outlines: bool = False,
) -> tuple[Path, ...]:
    """Write the sheet of a run of `leads` to `path` and return the files written.

    `.pdf` holds all pages. `.svg` holds one: several pages go to NAME-1.svg, NAME-2.svg, or under
    one another in a tall file with `one_file`. With `outlines` the text of an SVG needs no face
    installed (that of a PDF never does). InputError for another ending, or where it can't be
    written.
    """
    pages = sheet_pages(plan, findings, paper=paper, date=date, leads=leads, language=language)
    contents = sheet_files(
        pages, path, title=sheet_title(plan), one_file=one_file, outlines=outlines
    )
    for target, data in contents:
        write_atomic(target, data)
    return tuple(target for target, _ in contents)


def sheet_title(plan: Plan) -> str:
    """Return the title that a sheet's file carries."""
    order = f" {plan.order}" if plan.order else ""
    return f"Bench sheet{order}, revision {plan.revision}: {plan.title or 'lead'}"


def sheet_files(
    pages: Sequence[Page],
    path: Path,
    *,
    title: str,
    desc: str = _DESC,
    one_file: bool = False,
    outlines: bool = False,
) -> tuple[tuple[Path, bytes], ...]:
    """Return the files that pages make under `path`: each its name and its bytes."""
    kind = path.suffix.lower()
    if kind == ".pdf":
        sheets = [PdfPage(page.items, page.width, page.height) for page in pages]
        return ((path, pdf_bytes(sheets, unit_mm=UNIT_MM, title=title)),)
    if kind != ".svg":
        raise InputError.single(
            f"a sheet can't be written as {kind or 'a file without an ending'}",
            str(path),
            "End the name in .svg or .pdf.",
        )
    if outlines:
        pages = [replace(page, items=outlined(page.items)) for page in pages]
    if len(pages) == 1 or one_file:
        return ((path, _svg(_stacked(pages), title, desc)),)
    return tuple(
        (path.with_stem(f"{path.stem}-{number}"), _svg(page, f"{title}, page {number}", desc))
        for number, page in enumerate(pages, start=1)
    )


def _stacked(pages: Sequence[Page]) -> Page:
    """Put pages under one another."""
    height = pages[0].height
    items = (
        item
        for number, page in enumerate(pages)
        for item in moved(page.items, (0, number * height))
    )
    return Page(tuple(items), pages[0].width, height * len(pages))


def _svg(page: Page, title: str, desc: str) -> bytes:
    text = svg_text(
        page.items,
        width=round(page.width),
        height=round(page.height),
        unit_mm=UNIT_MM,
        title=title,
        desc=desc,
        paper=_GROUND,
    )
    return text.encode("utf-8")

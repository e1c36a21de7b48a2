"""All pages of the loom as SVG, against as many primitives written with bare svgwrite; ratios.

The bare form sets the same primitives with literal attributes: no rounding, styles or groups of
ours. The sheet is made from the plan each time: layout, order of work and all.
"""

import io
from collections import Counter
from pathlib import Path
from statistics import median
from time import perf_counter

import svgwrite

from planner.data import data_dir
from planner.drawing.primitives import Circle, Poly, Rect, Text
from planner.files.plans import read_plan
from planner.services.sheets import sheet_files
from planner.sheet.page import sheet_pages
from tests.sheet.samples import findings_of

LOOM = data_dir("resources") / "demo" / "recording-rack-loom.json"
ROUNDS = 5


def seconds(work):
    start = perf_counter()
    work()
    return perf_counter() - start


def bare(pages):
    """Write each page's number of primitives of each kind."""
    for page in pages:
        drawing = svgwrite.Drawing(size=("210mm", "297mm"), debug=False)
        for place, item in enumerate(page.items):
            drawing.add(_bare(drawing, item, place))
        drawing.write(io.StringIO())


def _bare(drawing, item, place):
    if isinstance(item, Text):
        return drawing.text(item.text, insert=(place, place), font_size=344, fill="#000000")
    if isinstance(item, Rect):
        return drawing.rect((place, place), (100, 100), fill="none", stroke="#000000")
    if isinstance(item, Circle):
        return drawing.circle((place, place), 50, fill="none", stroke="#000000")
    if isinstance(item, Poly):
        return drawing.polyline([(place, y) for y in range(len(item.points))], fill="none")
    steps = [f"{letter}{' '.join(map(str, figures))}" for letter, figures in item.commands]
    return drawing.path(d="".join(steps), fill="none")


def main():
    plan = read_plan(LOOM)
    findings = findings_of(plan)
    pages = sheet_pages(plan, findings)
    count = sum(len(page.items) for page in pages)
    kinds = Counter(type(item).__name__ for page in pages for item in page.items)
    print(f"  {len(pages)} pages, {count} primitives: {dict(kinds)}")
    base = median(seconds(lambda: bare(pages)) for _ in range(ROUNDS))
    made = median(seconds(lambda: sheet_pages(plan, findings)) for _ in range(3))
    for name, options in (("SVG", {}), ("SVG, outlines", {"outlines": True}), ("PDF", {})):
        path = Path("loom.pdf" if name == "PDF" else "loom.svg")
        took = median(
            seconds(lambda p=path, o=options: sheet_files(pages, p, title="loom", **o))
            for _ in range(ROUNDS)
        )
        print(f"  {name}: written {took / base:.2f} x bare svgwrite")
    print(f"  pages laid out from the plan: {made / base:.2f} x bare svgwrite")


if __name__ == "__main__":
    main()

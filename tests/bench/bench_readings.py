"""A megabyte of readings, against the same file through Python's bare csv reader; the ratio."""

import csv
import io
from pathlib import Path
from statistics import median
from time import perf_counter

from planner.data import data_dir
from planner.files.plans import read_plan
from planner.proving.csv_table import COLUMNS
from planner.proving.expected import expected_sweep
from planner.proving.reading_csv import readings_from_text
from planner.wiring.graph import Wiring

LOOM = data_dir("resources") / "demo" / "recording-rack-loom.json"
ROUNDS = 5
LEAST_CHARACTERS = 1_000_000


def seconds(work):
    start = perf_counter()
    work()
    return perf_counter() - start


def a_megabyte(plan):
    """Return every pair of the loom as a row, over and over."""
    contacts = expected_sweep(plan, Wiring(plan)).contacts
    rows = [(*one, *other, "0.31") for one in contacts for other in contacts if one != other]
    text = io.StringIO()
    writer = csv.writer(text)
    writer.writerow(COLUMNS)
    while text.tell() < LEAST_CHARACTERS:
        writer.writerows(rows)
    return text.getvalue()


def main():
    """Print how many times longer it takes to read them than only to split them."""
    plan = read_plan(Path(LOOM))
    text = a_megabyte(plan)
    ours = median(seconds(lambda: readings_from_text(text, plan, "bench")) for _ in range(ROUNDS))
    bare = median(seconds(lambda: list(csv.reader(io.StringIO(text)))) for _ in range(ROUNDS))
    rows = text.count("\n") - 1
    size = f"{rows} readings, {len(text) / 1e6:.1f} MB"
    print(f"  {size}: {ours:.2f} s, {ours / bare:.0f} x the bare csv reader")

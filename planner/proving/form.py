"""The empty form: every reading of a probe plan as a row to fill in, as `reading_csv` reads it."""

import csv
import io
from collections.abc import Iterator

from planner.proving.csv_table import COLUMNS, PASSED_OVER
from planner.proving.meter_lines import meter_text
from planner.proving.probing import ORDER, Probe, ProbePlan
from planner.proving.reading import Meter
from planner.units import rounded

_CLIPPED = "Isolation is by clips here: what it shows is not a row of this form."


def form_text(probes: ProbePlan, meter: Meter | None = None) -> str:
    """Return the form as comma-separated values: remarks, the meter, a head, a row a reading.

    Isolation by clips has no rows: a row is between two contacts.
    """
    text = io.StringIO()
    for line in (*_remarks(probes), *meter_text(meter or Meter())):
        text.write(f"{line}\n")
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow((*COLUMNS, *PASSED_OVER))
    by_pairs = () if _is_clipped(probes) else probes.isolation.probes
    for probe in (*probes.continuity, *by_pairs):
        if probe.pair is not None:
            writer.writerow(_row(probe, probe.pair))
    return text.getvalue()


def _remarks(probes: ProbePlan) -> Iterator[str]:
    yield f"# {probes.caution}"
    yield f"# {ORDER}"
    if _is_clipped(probes):
        yield f"# {_CLIPPED}"


def _is_clipped(probes: ProbePlan) -> bool:
    return any(probe.pair is None for probe in probes.isolation.probes)


def _row(probe: Probe, pair: tuple[tuple[str, str], tuple[str, str]]) -> tuple[str | float, ...]:
    path = probe.path
    if path is None:
        return (*pair[0], *pair[1], "", "", "", "open")
    ohm = "" if path.ohm is None else rounded(path.ohm)
    remark = "estimated: a shield is in it" if path.estimated else ""
    return (*pair[0], *pair[1], "", ohm, rounded(path.limit_ohm), remark)

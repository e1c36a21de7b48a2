"""Make the golden sheets anew, after looking at them: python -m tests.sheet.make_golden."""

from pathlib import Path

from planner.services.sheets import sheet_files
from planner.sheet.page import sheet_pages
from tests.sheet.plain_plan import CAUTION, STOP, plain_plan

GOLDEN = Path(__file__).parent / "golden"
CASES = {
    "clear.svg": ((CAUTION,), "en"),
    "klar.svg": ((CAUTION,), "de"),
    "stop.svg": ((STOP, CAUTION), "en"),
}


def sheet_of(name):
    findings, language = CASES[name]
    pages = sheet_pages(plain_plan(), findings, date="1 May 2026", language=language)
    ((_, data),) = sheet_files(pages, Path(name), title="Sample", one_file=True)
    return data


def main():
    GOLDEN.mkdir(exist_ok=True)
    for name in CASES:
        (GOLDEN / name).write_bytes(sheet_of(name))


if __name__ == "__main__":
    main()

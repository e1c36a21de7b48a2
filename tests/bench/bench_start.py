"""Start of the window against a bare Qt window: the ratio of the times until the first show.

Aim 2.0, at most 2.5. Run: python -m tests.bench.bench_start
"""

import os
import subprocess
import sys
import tempfile
from statistics import median

RUNS = 9
BARE = """
import time
start = time.perf_counter()
from PySide6.QtWidgets import QApplication, QMainWindow
app = QApplication([])
window = QMainWindow()
window.resize(1440, 900)
window.show()
app.processEvents()
print(time.perf_counter() - start)
"""
OURS = """
import time
start = time.perf_counter()
from planner.app.shell import Shell
shell = Shell.start()
shell.show()
shell.app.processEvents()
print(time.perf_counter() - start)
"""


def seconds(code: str, compiled: str) -> float:
    """Return what one fresh process says that it took.

    Compiled modules are kept in a folder, as an installed program has them, for both alike.
    """
    environment = os.environ | {
        "QT_QPA_PLATFORM": os.environ.get("QT_QPA_PLATFORM", "offscreen"),
        "PYTHONPYCACHEPREFIX": compiled,
        "CUPWRIGHT_SETTINGS": compiled,
    }
    environment.pop("PYTHONDONTWRITEBYTECODE", None)
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=False, env=environment
    )
    return float(done.stdout)


def ratio(runs: int = RUNS) -> float:
    """Return the ratio of the medians, taken in turns so that load hits both alike."""
    with tempfile.TemporaryDirectory() as folder:
        pairs = [(seconds(BARE, folder), seconds(OURS, folder)) for _ in range(runs + 1)][1:]
    return median(ours for _, ours in pairs) / median(bare for bare, _ in pairs)


def main() -> None:
    """Print the ratio."""
    print(f"start: {ratio():.2f} x a bare Qt window (aim 2.0, at most 2.5)")


if __name__ == "__main__":
    main()

"""Where the shipped data lie: inside the package in a wheel, beside it in a checkout."""

from pathlib import Path


def data_dir(name: str) -> Path:
    """Return the folder `name` (`resources` or `connector_defs`); FileNotFoundError if absent."""
    package = Path(__file__).resolve().parent
    for folder in (package / name, package.parent / name):
        if folder.is_dir():
            return folder
    msg = f"the shipped folder {name!r} is missing: install Cupwright again"
    raise FileNotFoundError(msg)

"""Pages as grey pictures by renderers that are not ours, and how far two pictures differ."""

import shutil
import subprocess

import numpy as np
import pytest

needs_poppler = pytest.mark.skipif(
    not shutil.which("pdftoppm"), reason="poppler-utils is not installed"
)
_DARK = 128


def by_poppler(pdf, folder, dpi, page=1):
    """Return a page of a PDF as rows of grey."""
    (folder / "in.pdf").write_bytes(pdf)
    one = ["-f", str(page), "-l", str(page), "-singlefile"]
    command = ["pdftoppm", "-gray", "-r", str(dpi), *one, folder / "in.pdf", folder / "out"]
    subprocess.run(command, check=True)
    return grey((folder / "out.pgm").read_bytes())


def grey(picture):
    """Return a PGM file as an array."""
    kind, width, height, _, data = picture.split(maxsplit=4)
    assert kind == b"P5"
    size = int(width) * int(height)
    return np.frombuffer(data[-size:], np.uint8).reshape(int(height), int(width))


def grown(dark, reach):
    """Return where there is dark within `reach` pixels."""
    rows, columns = dark.shape
    padded = np.pad(dark, reach)
    steps = range(2 * reach + 1)
    return np.any([padded[y : y + rows, x : x + columns] for y in steps for x in steps], axis=0)


def strange(one, other, reach=1):
    """Return the share of dark pixels of two pictures that the other has nothing dark near."""
    rows, columns = (min(a, b) for a, b in zip(one.shape, other.shape, strict=True))
    first, second = (picture[:rows, :columns] < _DARK for picture in (one, other))
    lost = (first & ~grown(second, reach)).sum() + (second & ~grown(first, reach)).sum()
    return float(lost / (first.sum() + second.sum()))

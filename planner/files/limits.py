"""What a file may be before anyone looks inside: its size, its encoding, its characters."""

import re
from pathlib import Path

from planner.problem import InputError, reason_of

DEFINITION_BYTES = 1_000_000
PLAN_BYTES = 8_000_000
LINE_CHARACTERS = 8_000
DEPTH = 24

# Control characters but tab and line ends; marks that reorder text on screen; what XML forbids.
_FORBIDDEN = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u200e\u200f\u2028-\u202e\u2066-\u2069\ud800-\udfff\ufffe\uffff]"
)


def forbidden_mark(text: str) -> str:
    """Return the first character that no text may hold, as `U+0007`, or empty."""
    match = _FORBIDDEN.search(text)
    return f"U+{ord(match.group()):04X}" if match else ""


def without_forbidden(text: str) -> str:
    """Return a text that a stranger may have written with a mark for what no text may hold."""
    return _FORBIDDEN.sub("\ufffd", text)


def read_text(path: Path, limit_bytes: int) -> str:
    """Read a UTF-8 file of at most `limit_bytes`; InputError says what keeps it from being read."""
    raw = read_bytes(path, limit_bytes)
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        raise InputError.single(
            f"byte {raw[error.start]:#04x} is not text in UTF-8",
            f"{path}: line {line}",
            "Save the file again as UTF-8 text.",
        ) from None
    _check_characters(path, text)
    return text


def read_bytes(path: Path, limit_bytes: int) -> bytes:
    """Read a plain file of at most `limit_bytes`; InputError says what keeps it from being read."""
    try:
        if path.is_dir():
            raise InputError.single("it is a folder", str(path), "Name a file inside it.")
        if path.exists() and not path.is_file():
            raise InputError.single("it is no plain file", str(path), "Name a plain file.")
        with path.open("rb") as stream:
            raw = stream.read(limit_bytes + 1)
    except FileNotFoundError:
        raise InputError.single(
            "there is no such file", str(path), "Check the name and the folder."
        ) from None
    except (OSError, ValueError) as error:
        raise InputError.single(
            f"it can't be read: {reason_of(error)}",
            str(path),
            "Check the file and its permissions.",
        ) from None
    if len(raw) > limit_bytes:
        size, limit = _size(path), limit_bytes / 1e6
        raise InputError.single(
            f"the file has {size:.1f} MB, more than the {limit:.0f} MB that are read",
            str(path),
            "Check that it is the right file.",
        )
    return raw


def _size(path: Path) -> float:
    return path.stat().st_size / 1e6


def _check_characters(path: Path, text: str) -> None:
    match = _FORBIDDEN.search(text)
    if match is None:
        return
    line = text.count("\n", 0, match.start()) + 1
    column = match.start() - text.rfind("\n", 0, match.start())
    raise InputError.single(
        f"the control character {forbidden_mark(match.group())} is not allowed",
        f"{path}: line {line}, column {column}",
        "Delete that character.",
    )

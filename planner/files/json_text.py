"""Values as JSON text that is the same each time: two spaces, short groups on one line."""

import json
from typing import Any

from planner.files.side import FIGURE_DIGITS
from planner.units import rounded

LINE = 100


def json_text(values: object) -> str:
    """Return JSON in the given key order, noise-free figures, a newline at the end."""
    return _text(clean(values), 0) + "\n"


def clean(value: Any) -> Any:  # noqa: ANN401 - any JSON value
    """Round figures, whole ones without a fraction, and make lists of tuples."""
    if isinstance(value, float):
        figure = rounded(value, FIGURE_DIGITS)
        return int(figure) if figure.is_integer() else figure
    if isinstance(value, dict):
        return {key: clean(item) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [clean(item) for item in value]
    return value


def _text(value: object, depth: int) -> str:
    if not isinstance(value, dict | list):
        return json.dumps(value, ensure_ascii=False)
    short = json.dumps(value, ensure_ascii=False)
    if len(short) + 2 * depth <= LINE and not _holds_groups(value):
        return short
    inner, outer = "  " * (depth + 1), "  " * depth
    if isinstance(value, dict):
        lines = [f"{json.dumps(key)}: {_text(item, depth + 1)}" for key, item in value.items()]
        return "{\n" + ",\n".join(inner + line for line in lines) + f"\n{outer}}}"
    lines = [_text(item, depth + 1) for item in value]
    return "[\n" + ",\n".join(inner + line for line in lines) + f"\n{outer}]"


def _holds_groups(value: dict[str, Any] | list[Any]) -> bool:
    items = value.values() if isinstance(value, dict) else value
    return any(isinstance(item, dict) and item for item in items) and isinstance(value, list)

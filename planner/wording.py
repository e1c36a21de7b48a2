"""Words put together as a sentence does."""

from collections.abc import Iterable


def listed(words: Iterable[str], last: str = "and") -> str:
    """Join words: `tip, ring and sleeve`."""
    each = list(words)
    if len(each) < 2:
        return "".join(each)
    return f"{', '.join(each[:-1])} {last} {each[-1]}"

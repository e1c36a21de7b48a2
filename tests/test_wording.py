"""Words put together as a sentence does."""

import pytest

from planner.wording import listed


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ([], ""),
        (["tip"], "tip"),
        (["tip", "ring"], "tip and ring"),
        (("tip", "ring", "sleeve"), "tip, ring and sleeve"),
    ],
)
def test_words_are_joined(words, said):
    assert listed(words) == said
    assert listed(iter(words), "or") == said.replace(" and ", " or ")

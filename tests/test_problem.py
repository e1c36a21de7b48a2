from planner.problem import did_you_mean


def test_capitals_are_not_what_was_mistyped():
    assert did_you_mean("Tipp", ["tip", "ring"]) == "Did you mean 'tip'?"
    assert did_you_mean("l+", ["L+", "R+"]) == "Did you mean 'L+'?"


def test_without_anything_like_it_what_is_known_is_listed():
    assert did_you_mean("xyz", ["b", "a"]) == "Known are a, b."
    assert did_you_mean("xyz", []) == "Nothing is known here."

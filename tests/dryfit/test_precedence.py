"""Orders by need and wish, against all permutations and against networkx."""

from itertools import permutations

import networkx as nx
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.dryfit.precedence import ordered, places

NAMES = "abcdef"


@st.composite
def needing(draw, names=NAMES):
    """What each name needs: names before it in some order, so there is no ring."""
    order = draw(st.permutations(names))
    return {
        name: tuple(it for it in order[:at] if draw(st.booleans())) for at, name in enumerate(order)
    }


def allowed(order, needs):
    return all(order.index(need) < order.index(name) for name in order for need in needs[name])


def smallest_of_all(usual, needs):
    """Return the first of all permutations, the earliest names of `usual` first."""
    return next(order for order in permutations(usual) if allowed(order, needs))


@given(needing())
def test_the_usual_order_is_the_smallest_of_all_that_are_allowed(needs):
    assert ordered(NAMES, needs) == smallest_of_all(NAMES, needs)


@given(needing(), st.permutations(NAMES))
def test_a_wish_for_all_gives_the_smallest_of_all_in_its_places(needs, wish):
    assert ordered(NAMES, needs, wish) == smallest_of_all(wish, needs)


@given(needing(tuple(range(30))), st.permutations(range(30)))
def test_many_are_sorted_as_networkx_sorts_them(needs, wish):
    names = {name: f"s{name:02}" for name in range(30)}
    graph = nx.DiGraph([(need, name) for name, before in needs.items() for need in before])
    graph.add_nodes_from(range(30))
    expected = nx.lexicographical_topological_sort(graph, key=wish.index)
    told = {names[name]: tuple(names[it] for it in before) for name, before in needs.items()}
    found = ordered(tuple(told), told, tuple(names[it] for it in wish))
    assert found == tuple(names[it] for it in expected)


@given(needing(), st.permutations(NAMES), st.sampled_from(NAMES))
def test_an_allowed_wish_stays_as_it_is_when_a_step_goes_and_comes_back(needs, wish, gone):
    wish = smallest_of_all(wish, needs)
    left = tuple(name for name in NAMES if name != gone)
    without = {name: tuple(it for it in needs[name] if it != gone) for name in left}
    kept = ordered(left, without, wish)
    assert kept == tuple(name for name in wish if name != gone)
    again = ordered(NAMES, needs, kept)
    if any(allowed(_with(kept, gone, at), needs) for at in range(len(wish))):
        assert tuple(name for name in again if name != gone) == kept


def _with(order, name, at):
    return (*order[:at], name, *order[at:])


@given(needing(), st.sampled_from(NAMES))
def test_the_places_of_a_name_are_those_where_the_order_is_allowed(needs, name):
    order = ordered(NAMES, needs)
    rest = tuple(it for it in order if it != name)
    free = [at for at in range(len(order)) if allowed(_with(rest, name, at), needs)]
    assert list(places(order, needs, name)) == free


def test_what_is_not_wished_for_stands_behind_what_is_usually_before_it():
    assert ordered("abcd", {}, "da") == tuple("dabc")


def test_what_is_wished_for_and_not_there_is_passed_over():
    assert ordered("ab", {}, "xbya") == ("b", "a")


def test_a_ring_is_told():
    with pytest.raises(ValueError, match="need one another"):
        ordered("ab", {"a": "b", "b": "a"})

"""Where the nodes of a lead stand in its picture."""

from planner.edits.shapes import one_to_many, one_to_one, one_to_two
from planner.model.plan import Plan
from planner.sheet.lead_page.tree import Tree, named_span


def test_the_first_end_is_left_and_the_others_right_from_the_top():
    tree = Tree(one_to_two(title="Y"))
    spots = tree.spots(0, 100, (10, 30))
    assert spots[tree.root] == (0, 20)
    assert [spots[tip.first] for tip in tree.tips] == [(100, 10), (100, 30)]
    (split,) = tree.plan.splits
    assert spots[split.id] == (50, 20)


def test_a_lead_without_a_split_is_one_line():
    tree = Tree(one_to_one(title="I"))
    assert set(tree.spots(0, 100, (10, 30)).values()) == {(0, 10), (100, 10)}


def test_many_alike_legs_are_drawn_once():
    tree = Tree(one_to_many(8, title="loom"))
    assert [len(tip.ends) for tip in tree.tips] == [8]
    assert len(tree.joints) == 2
    assert named_span(tree.tips[0].ends) == "B1\u2013B8"


def test_a_leg_of_another_length_is_drawn_apart():
    plan = one_to_many(8, title="loom")
    longer = plan.sections[-1].evolve(length_mm=plan.sections[-1].length_mm + 100)
    tree = Tree(plan.evolve(sections=(*plan.sections[:-1], longer)))
    assert [len(tip.ends) for tip in tree.tips] == [7, 1]


def test_an_empty_plan_has_no_tips():
    tree = Tree(Plan())
    assert (tree.root, tree.tips, tree.joints) == ("", (), ())


def test_an_end_that_nothing_joins_stands_alone():
    plan = one_to_one(title="I").evolve(sections=(), conductors=())
    tree = Tree(plan)
    assert [tip.section for tip in tree.tips] == [None]
    assert len(tree.spots(0, 100, (10, 30))) == 2

"""Land by signal from the Lead menu: the whole lead, or the selected end alone."""

from planner.model.place import Place


def ends_landed(shell):
    return {landing.end for landing in shell.bench.workbench.plan.landings}


def test_one_end_alone_is_landed_as_one_undo_step(make_shell, cue_plan):
    shell = make_shell()
    shell.bench.workbench.open_plan(cue_plan.evolve(landings=()))
    act = shell.window.acts["land_end_by_signal"]
    assert not act.isEnabled()
    shell.bench.workbench.select(Place(end="A"))
    act.trigger()
    assert ends_landed(shell) == {"A"}
    shell.bench.workbench.undo_stack.undo()
    assert ends_landed(shell) == set()
    shell.window.acts["land_by_signal"].trigger()
    assert ends_landed(shell) == {"A", "L", "R"}

"""The gap that turning the plug changes, from the bodies as they stand in the cable's frame."""

import math

import numpy as np

from planner.geometry.segments import segment_distances


def moving_gap_mm(site, turn_deg):
    """Return the smallest gap of an insulated lead to hot metal of another net; inf if none."""
    scene = site.scene(turn_deg)
    core = np.flatnonzero([body.kind == "core" for body in scene.bodies])
    one, other = (it.ravel() for it in np.meshgrid(core, np.flatnonzero(scene.hot)))
    nets = site.nets_by_spot[scene.spots]
    apart = nets[one] != nets[other]
    one, other = one[apart], other[apart]
    ends = scene.start[one], scene.end[one], scene.start[other], scene.end[other]
    gaps = segment_distances(*ends) - scene.radius[one] - scene.radius[other]
    return float(gaps.min(initial=math.inf))

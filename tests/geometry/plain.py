"""Plain second ways, one pair at a time."""


def cross_in_plane(a, b, c, d):
    """Tell whether segments ab and cd cross in the plane; touching ends do not count."""

    def side(p, q, r):
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0

"""The dry fit: the physical layout of an end, computed from its definition and the cable."""

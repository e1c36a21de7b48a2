"""Views and handedness, capsules, distances, circle packing: numbers only, no records."""

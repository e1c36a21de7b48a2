"""Small widgets that the panels share."""

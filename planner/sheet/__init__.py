"""The bench sheet: what is printed and lies beside the vice, as draw lists in 0.01 mm."""

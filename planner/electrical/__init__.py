"""What the wiring does electrically: resistance, balance, crosstalk, capacitance. No Qt."""

"""What the in-hand panel says of each kind of thing: one file per kind."""

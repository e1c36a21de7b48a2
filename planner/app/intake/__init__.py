"""The owner's window: the library, and taking in connectors and pinouts."""

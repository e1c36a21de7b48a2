"""The panels round the bench: shelf, findings, in hand, landings, guide."""

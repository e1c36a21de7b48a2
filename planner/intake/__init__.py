"""Take in connectors and pinouts: drafts, helpers that place contacts, live checks, likenesses."""

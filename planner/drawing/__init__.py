"""Drawing without Qt: the draw list, looks, text metrics, and what is drawn from records."""

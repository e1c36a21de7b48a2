"""The records of the job: signals, connectors, pinouts, stock, plans; and the Document."""

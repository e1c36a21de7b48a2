"""The bench sheet as it prints: options, preview, printer, files."""

"""The collection of definitions: what ships, the user's own, and shared folders."""

"""What the scene is made of."""

"""The gestures on the canvas, one class each."""

"""Files: read, written, brought up from older versions, saved in one step, recovered."""

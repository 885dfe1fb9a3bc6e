"""What belongs together: it, those, the other side; whose price; what a correction takes back."""

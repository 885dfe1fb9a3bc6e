"""Sound, picture and captions come in."""

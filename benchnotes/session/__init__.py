"""One sitting at the bench: the only layer where the rooms meet."""

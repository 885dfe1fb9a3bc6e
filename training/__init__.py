"""What makes the learned parts, and measures them. Never imported by the program."""

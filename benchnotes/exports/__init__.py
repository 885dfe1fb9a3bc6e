"""The record as text or bytes for others. Writes no file."""

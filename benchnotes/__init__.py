"""Bench Notes: a repairer's talk becomes a job record in which every entry can be heard again."""

__version__ = "0.1.0"

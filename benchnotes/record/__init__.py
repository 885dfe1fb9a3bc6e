"""Frozen types, the fold from statements to a job record, and what is still to do. Standard library only."""

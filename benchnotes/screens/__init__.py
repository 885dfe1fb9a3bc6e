"""What is seen: shows what session tells, decides nothing."""

"""What is still to do before the machine goes back: rules from the record to items, each with its reason in words."""

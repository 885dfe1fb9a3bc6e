"""What the program points out and asks nothing for: few, sure and sourced trade checks, and numbers to listen to."""

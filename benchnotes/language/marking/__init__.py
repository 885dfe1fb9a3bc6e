"""Where statements stand in the talk: spans, attributes, and what points back at what."""

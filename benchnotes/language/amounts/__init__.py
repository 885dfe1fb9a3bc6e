"""Money, sizes, readings and quantities: read by grammar, never learned."""

"""The search for worlds that fit: sets of the model's numbers that nothing published rules out."""

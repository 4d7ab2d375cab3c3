"""Published trials and counts by which nothing of the model was set, done again with the model.

Each module is one kind of trial; most colonies begin as the publication says, not from a winter.
"""

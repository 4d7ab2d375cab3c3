"""The words of a division: by what was found, or of a nuc for sale."""

from combwright.advice.bee_acts import Divide


def divide_words(action: Divide) -> str:
    """Say how a colony is divided, and what becomes of its cells."""
    if action.way == "halves":
        return "Share eggs, brood, stores and bees with a box beside it; knock down every cell."
    if action.way == "on purpose":
        return (
            "Make a nuc for sale with the queen: put her on her frame, one of stores and two of "
            "bees into a box; give this colony a young mated queen in a cage. Not without one."
        )
    likely = "Charged cells are likely. " if action.likely else ""
    if action.may_supersede:
        likely += "One to three on the face of a comb: she is replaced, leave all alone. Many: "
    put = "put" if likely.endswith(": ") else "Put"
    nuc = f"{likely}{put} the queen on her frame, one of stores and two of bees into a nuc; "
    if action.successor == "mated queen":
        return (
            f"{nuc}knock down all cells here and give a mated queen in a cage. Without one leave "
            "one open cell, marked, and do not open from day 8 to day 26."
        )
    return f"{nuc}leave one open cell here, marked, and knock down the rest."

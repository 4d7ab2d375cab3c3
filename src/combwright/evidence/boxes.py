"""Studies that take a hive by its key: how frames fit it, what it weighs, what it loses."""

from combwright.kit import fits, spacing
from combwright.kit.catalogue import catalogue
from combwright.simulation.enclosure.loss import slab_loss
from combwright.terms.set_up import Cover, SetUp


def frames_that_fit(hive: str, pitch_mm: float, dummy_boards: int = 0) -> int:
    """Count the frames that go into one brood box of a hive at a pitch. [mm]."""
    return fits.frames_that_fit(catalogue().hive(hive), pitch_mm, dummy_boards)


def slack_mm(hive: str, frames: int, pitch_mm: float) -> float:
    """Give the width that so many frames at a pitch leave free. [mm]."""
    return spacing.slack_mm(catalogue().hive(hive), frames, pitch_mm)


def cells_in_box(hive: str) -> int:
    """Count the worker cells in a full brood box."""
    found = catalogue().hive(hive)
    return found.frames * found.frame.worker_cells


def complete_kg(hive: str, supers: int = 0) -> float:
    """Weigh a hive with a dummy board and drawn frames, without bees or stores. [kg]."""
    found = catalogue().hive(hive)
    box = found.honey_super
    over = supers * (box.box_kg + box.frames * box.frame.drawn_kg) if box else 0.0
    return found.empty_kg + catalogue().board("dummy board").kg + over


def lighter_kg(hive: str, than: str) -> float:
    """Give how much lighter one empty hive is than another. [kg]."""
    return catalogue().hive(than).empty_kg - catalogue().hive(hive).empty_kg


def full_box_w_per_k(hive: str, cover: Cover = "crown board") -> float:
    """Give what a box loses whose frames are all covered, tray shut, in calm air. [W/K]."""
    found = catalogue().hive(hive)
    set_up = SetUp(frames=found.frames, tray_open_mm=0, cover=cover)
    return slab_loss(found, set_up).w_per_k(found.frames)


def full_box_ratio(hive: str, than: str) -> float:
    """Give the loss of a full box as a share of another's."""
    return full_box_w_per_k(hive) / full_box_w_per_k(than)

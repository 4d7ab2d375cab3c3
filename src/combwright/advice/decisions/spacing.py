"""The spacing of the frames: whether they stand too wide, and the cure."""

from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions.space import TOPIC
from combwright.advice.kit_acts import Respace
from combwright.kit.fits import frames_in_fullest_box
from combwright.kit.spacing import spacing_notice


def decide(deciding: Deciding) -> Decision:
    """Say when the frames stand too wide, and the cure."""
    situation = deciding.situation
    set_up, pitch = situation.standing.set_up, situation.pitch_mm
    if pitch is None:
        return Decision(topic=TOPIC)
    frames, boards = frames_in_fullest_box(set_up), set_up.dummy_boards
    notice = spacing_notice(situation.standing.hive, frames, pitch, boards)
    if not notice:
        return Decision(topic=TOPIC)
    wide = Respace(frames=frames, dummy_boards=boards, pitch_mm=pitch, notice=notice)
    return Decision(topic=TOPIC, actions=(wide,))

"""What became of an exercise, worked out again from what a pupil typed."""

from __future__ import annotations

from collections.abc import Mapping

from sweepsheet.practice.acts import Square
from sweepsheet.practice.exercise import Exercise, answer_form, exercise_of
from sweepsheet.practice.housing import FACE_RADIUS, TIPPED, State, state_after
from sweepsheet.practice.truth import Found, found_in, offset_text
from sweepsheet.words.messages import Distance, Language, Length

HEAD = ("exercise", "found", "true", "left", "within", "stopped")


def mark(form: Mapping[str, str], language: Language) -> list[str]:
    """A text for each of ``HEAD``. Raises ``InputError`` where the form asks for no exercise."""
    exercise = exercise_of(form)
    say, hidden = language.say, exercise.hidden
    found = found_in(answer_form(exercise, form))
    per_mm = 1.0 / exercise.units.mm
    first, now = state_after(hidden, ()), state_after(hidden, exercise.acts)
    as_found = found.rounds.get(0)
    within = _is_within(exercise)
    return [
        say("practice.named", seed=hidden.seed, level=hidden.level),
        say("practice.not_swept") if as_found is None
        else offset_text(as_found.bore.center, exercise, language),
        offset_text(first.center.scaled(per_mm), exercise, language),
        _left(exercise, now, language),
        say("practice.yes" if within else "practice.no"),
        say(f"practice.stop.{_ending(exercise, found, within=within)}"),
    ]  # fmt: skip


def _left(exercise: Exercise, now: State, language: Language) -> str:
    """How far the bore really is off in the end, and the face where it was to be squared."""
    units = exercise.units
    offset = Distance(now.center.length / units.mm, units)
    if exercise.gearbox is not None:
        gap = exercise.gearbox.gaps(exercise.spacer)["tip"] / units.long_mm
        return language.say("practice.left_tip", offset=offset, gap=Length(gap, units))
    if exercise.hidden.level != TIPPED:
        return language.say("practice.left", offset=offset)
    runout = Distance(2.0 * FACE_RADIUS * now.slope.length / units.mm, units)
    return language.say("practice.left_face", offset=offset, runout=runout)


def _is_within(exercise: Exercise) -> bool:
    """Whether bore and face really are within the usual limits now."""
    units, now = exercise.units, state_after(exercise.hidden, exercise.acts)
    runout = 2.0 * FACE_RADIUS * now.slope.length
    in_place = now.center.length <= units.to_mm(units.bore_offset_limit)
    if exercise.gearbox is not None and not exercise.gearbox.fits(exercise.spacer):
        return False
    return in_place and runout <= units.to_mm(units.face_runout_limit)


def _ending(exercise: Exercise, found: Found, *, within: bool) -> str:
    """Whether it was right to stop there: his own readings must say so, and it must be so."""
    last = found.rounds.get(len(exercise.acts))
    if last is None or found.solution is None:
        return "not_swept"
    settling = found.solution.bore_settling
    if last.bore.judged.verdict == "undecided" and settling and not settling.can_settle:
        return "too_close"
    shown = _face_shown(exercise, found) and _depth_shown(exercise, found)
    if last.bore.judged.verdict != "within" or not shown:
        return "not_shown"
    return "rightly" if within else "outside"


def _depth_shown(exercise: Exercise, found: Found) -> bool:
    """Whether every gap was measured and is as needed; where lengths are the matter."""
    if exercise.gearbox is None:
        return True
    depth = found.solution.depth if found.solution is not None else None
    gaps = depth.gaps if depth is not None else ()
    shown = {gap.name for gap in gaps if gap.judged.verdict == "within"}
    return shown == exercise.gearbox.gaps(0.0).keys()


def _face_shown(exercise: Exercise, found: Found) -> bool:
    """Whether the face was swept since it was last squared, and is within; where it matters."""
    if exercise.hidden.level != TIPPED:
        return True
    since = max((n for n, act in enumerate(exercise.acts, 1) if isinstance(act, Square)), default=0)
    faces = [found.rounds[n].face for n in sorted(found.rounds) if n >= since]
    swept = [face for face in faces if face is not None]
    return bool(swept) and swept[-1].judged.verdict == "within"

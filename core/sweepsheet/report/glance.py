"""The answer at a glance: what to do with its reason, where in the job it is, what was not entered.

Nothing is said twice on the screen: a finding that is the reason of a step stands with that step,
and those that only tell what was not entered become one line. What stops the work stays in sight.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from sweepsheet.findings.advice import Step, advice_for
from sweepsheet.findings.finding import Finding
from sweepsheet.solution import Solution
from sweepsheet.words.messages import Language, Message

Stage = Literal["face", "bore", "fit", "recheck", "trim", "close"]

# The findings that are the reason of a step.
REASONS: dict[str, tuple[str, ...]] = {
    "note-return": ("closing-missing",),
    "sweep-face": ("face-not-swept",),
    "resweep-face": ("face-not-trusted",),
    "settle-face": ("face-undecided",),
    "face-at-limit": ("face-undecided",),
    "face-not-flat": ("face-warp",),
    "steady-the-dial": ("sweeps-disagree",),
    "sweep-eight": ("pair-sums",),
    "aim-for-pilot": ("pilot-outside",),
    "pilot-stays-out": ("pilot-outside",),
    "mend-part": ("companion-outside",),
    "mend-depth": ("spacer", "no-spacer", "less-between", "release-shim", "spacer-unknown"),
    "measure-depth": ("depth-undecided",),
    "no-limit": ("no-limit",),
    "settle-bore": ("undecided", "too-coarse"),
    "cannot-settle": ("undecided", "too-coarse"),
    "back-to-stock": ("dowels-differ",),
    "check-fit": ("moved-otherwise",),
    "nothing-fits": ("beyond-stock", "no-stock"),
    "get-pair": ("no-stock", "beyond-stock"),
    "get-size": ("beyond-stock", "between-sizes"),
    "open-holes": ("bolt-holes",),
    "mend-seat": ("seat-scatters",),
}
# Steps whose reason is the same in every job: ``why.CODE``.
ALWAYS = (
    "clean-joint", "check-sense", "start-anew", "leave", "tighten-and-sweep", "move", "reseat",
    "fit-dowels", "trim", "recheck",
)  # fmt: skip
# What was not entered: the findings that say no more, and the name of what is missing.
BLANKS = {
    "face-not-swept": "what.face",
    "limit-source": "name.limits.source",
    "droop-unmeasured": "name.indicator.sag",
    "pilot-distance-wanted": "name.housing.pilot_distance",
    "depth-wanted": "name.housing.depth",
    "bolts-wanted": "name.housing.bolts",
    "holes-wanted": "name.housing.dowel_holes",
}
# The steps of each stage; those that are not named here measure the bore, or measure it again.
STAGES: dict[str, Stage] = {
    **dict.fromkeys(
        ("sweep-face", "resweep-face", "settle-face", "face-at-limit", "face-not-flat",
         "clean-joint", "sweep-face-twice", "find-tilt-cause", "check-sense", "square-front",
         "square-rear", "start-anew"),
        "face",
    ),
    **dict.fromkeys(
        ("move", "reseat", "fit-dowels", "fit-unlike", "standard-dowels", "back-to-stock",
         "get-pair", "get-size", "open-holes", "nothing-fits", "beyond-dowels", "check-fit",
         "dowels-do-not-hold"),
        "fit",
    ),
    **dict.fromkeys(("leave", "tighten-and-sweep", "done"), "close"),
    "trim": "trim",
}  # fmt: skip
# The lists of what is done by hand, and the steps that bring them up.
LISTS = {
    "fit": ("fit-dowels", "fit-unlike", "standard-dowels"),
    "trim": ("trim",),
    "closing_up": ("leave", "done"),
}


@dataclass(frozen=True, slots=True)
class Action:
    """One step in words, and why it is to be done; ``why`` is empty where the step says it all.

    ``measure`` is what a step that measures again asks for, such as ``sag``.
    """

    code: str
    text: str
    why: str
    measure: str


@dataclass(frozen=True, slots=True)
class Glance:
    """What is seen first: the steps, the stage of the job, its lists, what was not entered.

    ``reasons`` are the codes of the findings that stand with a step.
    """

    actions: tuple[Action, ...]
    stage: Stage
    lists: tuple[str, ...]
    not_entered: str
    reasons: frozenset[str]

    def place_of(self, remark: str, level: str) -> str:
        """Where a remark stands: ``reason``, ``not_entered`` or, in sight, ``""``."""
        if level == "stop":
            return ""
        if remark in self.reasons:
            return "reason"
        return "not_entered" if level == "note" and remark in BLANKS else ""


def glance_of(solution: Solution, findings: tuple[Finding, ...], language: Language) -> Glance:
    """What is seen first of a solution and its findings."""
    steps = advice_for(solution, findings)
    told = [_reasons(each, findings) for each in steps]
    blank = dict.fromkeys(
        BLANKS[each.code] for each in findings if each.level == "note" and each.code in BLANKS
    )
    names = tuple(Message(key) for key in blank)
    return Glance(
        actions=tuple(
            Action(
                each.code,
                language.text(each.message),
                _why(each, reasons, language),
                str(each.numbers.get("measure") or ""),
            )
            for each, reasons in zip(steps, told, strict=True)
        ),
        stage=_stage(solution, steps),
        lists=tuple(
            name for name, codes in LISTS.items() if any(each.code in codes for each in steps)
        ),
        not_entered=language.say("glance.not_entered", names=names) if blank else "",
        reasons=frozenset(each.code for reasons in told for each in reasons),
    )


def _reasons(step: Step, findings: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """The findings that are the reason of a step; what stops the work stays in sight instead."""
    codes = REASONS.get(step.code, ())
    return tuple(each for each in findings if each.code in codes and each.level != "stop")


def _why(step: Step, reasons: tuple[Finding, ...], language: Language) -> str:
    if step.code in ALWAYS:
        return language.say(f"why.{step.code}")
    return " ".join(language.text(each.message) for each in reasons)


def _stage(solution: Solution, steps: tuple[Step, ...]) -> Stage:
    """Where in the job it is: by the first step that belongs to one stage alone."""
    measuring: Stage = "recheck" if len(solution.job.rounds) > 1 else "bore"
    return next((STAGES[each.code] for each in steps if each.code in STAGES), measuring)

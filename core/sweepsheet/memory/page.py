"""What other jobs tell of such a housing: texts and a picture for the page."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from sweepsheet.form.to_job import job_of
from sweepsheet.job.read import read_job
from sweepsheet.maths.clock import direction_of
from sweepsheet.maths.median import median
from sweepsheet.maths.normal import offset_half_width
from sweepsheet.maths.units import UnitSystem
from sweepsheet.memory.together import together
from sweepsheet.memory.usual import LEAST_MOVES, LEAST_PLACES, Usual, case_of, usual_of
from sweepsheet.memory.view import memory_view
from sweepsheet.solution import Solution, work_out
from sweepsheet.words.faults import InputError
from sweepsheet.words.messages import Angle, BareDistance, Direction, Distance, Language

Form = Mapping[str, str]

# As many of the latest jobs are worked out.
MOST_CASES = 200
# A doubt that shrinks by less is not spoken of.
WORTH_TELLING = 0.9


def memory(asked: Mapping[str, Any], language: Language) -> dict[str, Any]:
    """What the jobs ``others`` tell of the housing of the job ``here``, each as texts of a form.

    Jobs of another kind of housing or assembly, or that can't be read yet, don't count. ``lines``
    is what is to be said, ``picture`` an SVG or empty, ``same`` how many jobs counted.

    >>> from sweepsheet.words.en.core import ENGLISH
    >>> memory({"here": {"about.housing": "cast"}, "others": []}, ENGLISH)["lines"]
    ['No other job names this housing.']
    """
    here, kind = _solved(asked["here"]), kind_of_form(asked["here"])
    if not kind:
        return {"lines": [language.say("memory.unnamed")], "picture": "", "same": 0}
    on_what = asked["here"].get("housing.assembly", "")
    alike = [f for f in asked["others"] if f.get("housing.assembly", "") == on_what]
    same = [form for form in alike if kind_of_form(form) == kind][:MOST_CASES]
    solved = [each for form in same if (each := _solved(form)) is not None]
    if not solved:
        return {"lines": [language.say("memory.none")], "picture": "", "same": 0}
    units, limit = (here or solved[0]).job.units, None
    usual = usual_of([case_of(each) for each in solved])
    place = None if here is None else case_of(here).place
    if here is not None and here.job.limits.bore_offset is not None:
        limit = units.to_mm(here.job.limits.bore_offset)
    lines = [language.say("memory.count", n=len(solved)), *_places(usual, units, language)]
    if here is not None and place is not None and usual.region is not None:
        usual_here = usual.region.holds(place)
        lines.append(language.say("memory.alike" if usual_here else "memory.unlike"))
        if usual_here:
            lines += _together(usual, here, language)
    lines += [*_face(usual, units, language), *_dowels(usual, language)]
    picture = memory_view(usual, place, limit, units, language)
    return {"lines": lines, "picture": picture, "same": len(solved)}


def kind_of_form(form: Form) -> str:
    """The kind of housing that a form names.

    >>> kind_of_form({"about.housing": " Cast  Iron"})
    'cast iron'
    """
    return " ".join(form.get("about.housing", "").casefold().split())


def _solved(form: Form) -> Solution | None:
    """A job worked out; ``None`` where it can't be read yet."""
    try:
        return work_out(read_job(job_of(form).job))
    except InputError:
        return None  # half typed, and so no evidence


def _places(usual: Usual, units: UnitSystem, language: Language) -> Iterator[str]:
    n = len(usual.places)
    if n == 0:
        return
    sizes = [place.length / units.mm for place in usual.places]
    middle, most = Distance(median(sizes), units), Distance(max(sizes), units)
    yield language.say("memory.offset", median=middle, most=most)
    if usual.region is None:
        yield language.say("memory.few", n=n, wanted=LEAST_PLACES)
        return
    yield language.say("memory.region")
    yield language.say("memory.held", held=usual.held, n=n)


def _together(usual: Usual, here: Solution, language: Language) -> Iterator[str]:
    """What the others add to the sweep of this one, for whoever wants it."""
    units, bore = here.job.units, here.measured[0].bore
    places = [place.scaled(1.0 / units.mm) for place in usual.places]
    both = together(places, bore.center, bore.noise, bore.covariance + bore.noise.scaled(-1.0))
    if both is None:
        return
    own, pm = (
        offset_half_width(*each)
        for each in (
            (bore.center, bore.covariance),
            (both.place, both.covariance),
        )
    )
    if pm > WORTH_TELLING * own:
        yield language.say("memory.no_gain")
        return
    yield language.say(
        "memory.together",
        offset=Distance(both.place.length, units),
        pm=BareDistance(pm, units),
        direction=Direction(direction_of(both.place)),
        own=Distance(bore.offset, units),
        own_pm=BareDistance(own, units),
    )


def _face(usual: Usual, units: UnitSystem, language: Language) -> Iterator[str]:
    if usual.runouts:
        middle, most = (Angle(x, units) for x in (median(usual.runouts), usual.runouts[-1]))
        yield language.say("memory.face", median=middle, most=most, n=len(usual.runouts))


def _dowels(usual: Usual, language: Language) -> Iterator[str]:
    n = len(usual.gains)
    if n < LEAST_MOVES:
        return
    lag = median(usual.lags_deg)
    yield language.say(
        "memory.dowels",
        n=n,
        gain=f"{100.0 * median(usual.gains):.0f}",
        least=f"{100.0 * min(usual.gains):.0f}",
        most=f"{100.0 * max(usual.gains):.0f}",
        lag=f"{abs(lag):.0f}",
        way=language.say(f"way.{'clockwise' if lag >= 0 else 'anticlockwise'}"),
    )

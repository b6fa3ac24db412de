"""A job on its way to the one who pays: made into a link, and worked out again from it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from sweepsheet.drawing.housing import drawing_of, reach_of
from sweepsheet.findings.job import findings_for
from sweepsheet.form.from_job import form_of
from sweepsheet.job.assembly import assembly_in
from sweepsheet.job.read import read_job
from sweepsheet.link.codec import FIRST_VERSION, OLDER_VERSIONS, fragment_of, read_link
from sweepsheet.link.figures import figures_of
from sweepsheet.report.order import order_of
from sweepsheet.report.paper import paper_of
from sweepsheet.solution import Solution, work_out
from sweepsheet.words.assemblies import worded
from sweepsheet.words.en.core import ENGLISH
from sweepsheet.words.faults import InputError
from sweepsheet.words.messages import Language

Data = dict[str, Any]


def share_of(data: Mapping[str, Any], solution: Solution, language: Language) -> Data:
    """The link for a job file's data, and its sheet on paper.

    ``fragment`` is empty where no link can be made; ``trouble`` then says why.
    """
    findings = findings_for(solution)
    shared: Data = {
        "state": "share",
        "paper": paper_of(solution, findings, language),
        "order": order_of(solution, findings, language),
    }
    try:
        fragment = fragment_of(data, figures_of(solution, findings))
    except InputError as error:
        return shared | {"fragment": "", "trouble": error.faults[0].text(language)}
    return shared | {"fragment": fragment, "trouble": ""}


def open_link(fragment: str, language: Language) -> Data:
    """What a link comes to when it is worked out again from its readings.

    ``agrees`` tells whether that gives the figures that the link claims; ``older`` that it does
    not, and that an older release made the link, which worked out doubt in another way. ``before``
    and ``after`` are the drawings of the first and the latest round on one scale, ``after`` empty
    where there is one alone; it can show the way from where the bore was found.
    """
    try:
        linked = read_link(fragment)
    except InputError as error:
        return {"state": "refused", "text": error.faults[0].text(language)}
    language = worded(language, assembly_in(linked.data))
    try:
        job = read_job(linked.data)
    except InputError as error:
        why = error.faults[0].text(language)
        return {"state": "refused", "text": language.say("link.job", why=why)}
    solution = work_out(job)
    findings = findings_for(solution)
    figures = figures_of(solution, findings)
    wanted = figures
    if linked.version == FIRST_VERSION:
        wanted = figures_of(solution, findings, ENGLISH)
    if len(linked.figures) != len(figures):
        return {"state": "refused", "text": language.say("link.figures")}
    several = len(job.rounds) > 1
    first = work_out(replace(job, rounds=job.rounds[:1])) if several else solution
    reach = max(reach_of(first), reach_of(solution))
    found = first.latest.bore.center
    paper = paper_of(solution, findings, language)
    # The lengths along the crank axis were measured, too.
    depth = [section for section in paper["sections"] if section["name"] == "depth"]
    return {
        "state": "link",
        "agrees": linked.figures == wanted,
        "older": linked.figures != wanted and linked.version in OLDER_VERSIONS,
        "claimed": list(linked.figures),
        "figures": list(figures),
        "before": drawing_of(first, language, reach=reach),
        "after": drawing_of(solution, language, reach=reach, came_from=found) if several else "",
        "texts": {
            "name": job.name,
            "about": job.about,
            "source": job.limits.source,
            # What was typed: the usual name of a round is no word of the shop's.
            "recheck": linked.data["rounds"][-1].get("name", "") if several else "",
        },
        "taken": paper["dial"],
        "readings": [
            *paper["readings"],
            *({key: each[key] for key in ("title", "head", "rows")} for each in depth),
        ],
        "photos": paper["photos"],
        "remarks": paper["remarks"],
        "form": form_of(linked.data),
    }

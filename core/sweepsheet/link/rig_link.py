"""A rig on its way to another phone: as a file, and in the fragment of a link.

A fragment is ``rig-``, and then base64url without padding of a zlib stream of the rig's file, as in
a link of a job (``codec``). Whoever opens it is offered the rig; nothing is taken silently.
"""

from __future__ import annotations

import zlib
from collections.abc import Mapping

from sweepsheet.files.rig_file import load_rig, read_rig, rig_data, rig_file_name, rig_text
from sweepsheet.link.codec import LONGEST_LINK, packed, unpacked
from sweepsheet.report.paper import dial_lines
from sweepsheet.words.faults import InputError, refused
from sweepsheet.words.messages import Language

PREFIX = "rig-"

Data = dict[str, object]


def hand_on(form: Mapping[str, str], language: Language) -> Data:
    """The rig in a form as a file and as the fragment of a link; or why it can't be handed on."""
    try:
        data = rig_data(form)
    except InputError as error:
        return _refused(error, language)
    text = rig_text(data)
    return {
        "state": "file",
        "name": rig_file_name(data),
        "text": text,
        "told": language.say("rig.file_saved"),
        "fragment": PREFIX + packed(text),
    }


def open_rig(text: str, language: Language) -> Data:
    """The rig in the text of a file, or in a fragment: its name, its fields, and what it is."""
    try:
        job, fields = read_rig(load_rig(_text_in(text)))
    except InputError as error:
        return _refused(error, language)
    name = job.indicator.rig
    return {
        "state": "rig",
        "name": name,
        "fields": fields,
        "text": language.say("rig.offered", name=name),
        "lines": list(dial_lines(job, language)),
    }


def _text_in(text: str) -> str:
    """The text of a rig's file, out of a fragment where it is one."""
    if not text.startswith(PREFIX):
        return text
    if len(text) > LONGEST_LINK:
        raise refused("rig.cut")
    try:
        return unpacked(text.removeprefix(PREFIX))
    except (ValueError, zlib.error):
        raise refused("rig.cut") from None


def _refused(error: InputError, language: Language) -> Data:
    """Why, with the place of the first fault."""
    fault = error.faults[0]
    place = f"{fault.field}: " if fault.field else ""
    return {"state": "refused", "text": place + fault.text(language)}

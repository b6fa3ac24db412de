"""Draws the fields of the form from what the core says of each setting (``job/settings.py``).

The label is the sentence ``field.PATH``, the choices are ``field.PATH.CHOICE`` and, where none may
be made, ``field.PATH.none``; ``field.PATH.help`` stands below and ``field.PATH.example`` within a
blank field, where there is such a sentence.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from web.build.core import core
from web.build.template import Verbs
from web.build.trouble import TroubleError


def verbs_of(sentences: Mapping[str, str]) -> Verbs:
    """What draws fields, in any language: the sentences tell only which of them there are."""
    return {
        "field": lambda path, ident="": field(path, ident, sentences),
        "control": lambda path, ident="", help_at="": control(path, ident, help_at, sentences),
        "checklist": checklist,
        "most": most,
        "measures": measures,
    }


def measures(of: str) -> str:
    """The picture of where to measure depths on the engine or the gearbox."""
    key = f"depth.measures_{of}"
    drawn: str = getattr(core("drawing.depth_measures"), f"{of}_measures")(f"{{{{say {key}}}}}")
    return f'<div class="measures">{drawn}</div>'


def field(path: str, ident: str, sentences: Mapping[str, str]) -> str:
    """Label, control and help of a setting."""
    key = f"field.{path}.help"
    if key not in sentences:
        return f'<div class="field">\n{control(path, ident, "", sentences)}\n</div>'
    help_at = f"{ident or ident_of(path)}-help"
    told = f'<p class="help" id="{help_at}">{{{{say {key}}}}}</p>'
    return f'<div class="field">\n{control(path, ident, help_at, sentences)}\n{told}\n</div>'


def control(path: str, ident: str, help_at: str, sentences: Mapping[str, str]) -> str:
    """Label and control of a setting: a list to choose from, or a line to type in."""
    setting = core("job.model").SETTINGS.get(path)
    if setting is None:
        raise TroubleError(f"A template names the field {path}, and there is no such setting.")
    ident = ident or ident_of(path)
    head = f'<label class="name" for="{ident}">{{{{say field.{path}}}}}</label>\n'
    names = f'id="{ident}" name="{path}"'
    told = f' aria-describedby="{help_at}"' if help_at else ""
    if setting.kind == "choice":
        return f"{head}<select {names}{told}>\n{options(path, setting)}\n</select>"
    kind = {
        "number": ' inputmode="decimal"',
        "sizes": ' inputmode="text"',
        "text": f' maxlength="{most("text")}"',
    }[setting.kind]
    example = f"field.{path}.example"
    shown = f' placeholder="{{{{say {example}}}}}"' if example in sentences else ""
    return f"{head}<input {names}{kind}{usual(setting)}{shown}{told}>"


def ident_of(path: str) -> str:
    """The id of a field, by the last word of its place."""
    return path.rpartition(".")[2].removesuffix("_deg").replace("_", "-")


def usual(setting: Any) -> str:
    """What stands in the field at first, in each unit."""
    units = core("maths.units").SYSTEMS
    inch, metric = (in_field(setting.usual_in(units[name])) for name in ("inch", "metric"))
    return f' data-inch="{inch}" data-metric="{metric}" value="{inch}"' if inch else ""


def in_field(value: Any) -> str:
    """A usual value as the form holds it: a number, or sizes with blanks between."""
    number_text = core("form.from_job").number_text
    texts = [number_text(each) for each in value] if isinstance(value, tuple) else None
    return str(number_text(value)) if texts is None else " ".join(texts)


def options(path: str, setting: Any) -> str:
    """What there is to choose from; what older files may have is hidden."""
    blank = [f'<option value="">{{{{say field.{path}.none}}}}</option>']
    lines = blank if setting.nullable else []
    for choice in setting.choices:
        state = " data-old hidden disabled" if choice in setting.retired else ""
        lines.append(f'<option value="{choice}"{state}>{{{{say field.{path}.{choice}}}}}</option>')
    return "\n".join(lines)


def checklist(group: str) -> str:
    """A box to tick for each thing that is looked at."""
    boxes = (
        f'<label><input type="checkbox" name="checklist.{code}" value="yes">'
        f" {{{{say checklist.{code}}}}}</label>"
        for code in core("job.checklist").GROUPS[group]
    )
    return "\n".join(boxes)


def most(name: str) -> str:
    """How many characters a text may have: that of a ``text``, or the job's ``name``."""
    return str(
        {"text": core("job.fields").LONGEST_TEXT, "name": core("job.read").LONGEST_NAME}[name]
    )

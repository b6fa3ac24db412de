"""``python -m sweepsheet JOB.json [--text]``: the result of a job file, or its sheet in words.

Bad input prints every fault, one a line with its field, on standard error, with exit code 2.
"""

from __future__ import annotations

import argparse
import io
import json
import sys
from pathlib import Path

from sweepsheet.api import sheet, solve
from sweepsheet.files.exchange import LONGEST_FILE
from sweepsheet.job.strict_json import LONGEST_JOB, load_json
from sweepsheet.words.faults import InputError


def main(arguments: list[str] | None = None) -> int:
    """Read the job named on the command line and print what comes of it."""
    parser = argparse.ArgumentParser(prog="python -m sweepsheet", description=__doc__)
    parser.add_argument("job", metavar="JOB.json", help="the job file, or - for standard input")
    parser.add_argument("--text", action="store_true", help="print the sheet in words")
    options = parser.parse_args(arguments)
    for stream in (sys.stdout, sys.stderr):
        # A terminal that lacks a sign gets a question mark, not a traceback.
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")
    try:
        if options.job == "-":
            text = sys.stdin.buffer.read().decode("utf-8")
        else:
            text = Path(options.job).read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as error:
        print(f"{options.job}: {error}", file=sys.stderr)
        return 2
    try:
        job = load_json(text, LONGEST_FILE if '"pictures"' in text else LONGEST_JOB)
        output = sheet(job) if options.text else json.dumps(solve(job), indent=1, allow_nan=False)
    except InputError as error:
        print(error, file=sys.stderr)
        return 2
    print(output.rstrip("\n"))
    return 0


if __name__ == "__main__":
    sys.exit(main())

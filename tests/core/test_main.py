"""The command line: results on standard output, faults on standard error, exit code 2."""

from __future__ import annotations

import io
import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

import sweepsheet
from sweepsheet import sheet, solve
from sweepsheet.__main__ import main
from tests.cases.jobs import Data, make_job, readings_of

JOB = make_job(readings_of(3.0, -6.0))


@pytest.fixture
def job_file(tmp_path: Path) -> Path:
    path = tmp_path / "job.json"
    path.write_text(json.dumps(JOB), encoding="utf-8")
    return path


def run(
    *arguments: str, stdin: bytes = b"", **environment: str
) -> subprocess.CompletedProcess[bytes]:
    """The command as a shell would start it."""
    paths = os.pathsep.join([str(Path(sweepsheet.__file__).parents[1])])
    return subprocess.run(
        [sys.executable, "-m", "sweepsheet", *arguments],
        input=stdin,
        capture_output=True,
        check=False,
        env={**os.environ, "PYTHONPATH": paths, **environment},
    )


def faults(capsys: pytest.CaptureFixture[str]) -> list[str]:
    """The lines on standard error; nothing must have gone to standard output."""
    out, err = capsys.readouterr()
    assert out == ""
    return err.splitlines()


def test_the_result_is_printed(job_file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main([str(job_file)]) == 0
    out, err = capsys.readouterr()
    assert json.loads(out) == solve(JOB)
    assert err == ""


def test_the_sheet_is_printed(job_file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main([str(job_file), "--text"]) == 0
    assert capsys.readouterr().out == sheet(JOB)


def test_a_dash_is_standard_input(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    typed = io.TextIOWrapper(io.BytesIO(json.dumps(JOB).encode()), encoding="ascii")
    monkeypatch.setattr(sys, "stdin", typed)
    assert main(["-"]) == 0
    assert json.loads(capsys.readouterr().out) == solve(JOB)


def test_it_runs_from_a_shell() -> None:
    done = run("-", stdin=json.dumps(JOB).encode())
    assert (done.returncode, done.stderr) == (0, b"")
    assert json.loads(done.stdout) == solve(JOB)


def test_the_sheet_is_printed_on_a_terminal_that_lacks_its_signs() -> None:
    """Plus-minus and the long minus are not in every code page; a traceback is no answer."""
    done = run("--text", "-", stdin=json.dumps(JOB).encode(), PYTHONIOENCODING="ascii")
    assert b"Traceback" not in done.stderr
    assert done.returncode == 0
    assert b"6.7 thou off" in done.stdout


def test_every_fault_is_one_line_with_its_field(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    bad: Data = {
        **make_job((0.0, "o", 2.0, 1.0)),  # type: ignore[arg-type]  # wrong on purpose
        "limits": {"bore_offset": -1, "bore_limit": 5},
        "units": "furlong",
    }
    path = tmp_path / "bad.json"
    path.write_text(json.dumps(bad), encoding="utf-8")
    assert main([str(path)]) == 2
    found = faults(capsys)
    assert [line.partition(": ")[0] for line in found] == [
        "units", "limits.bore_limit", "limits.bore_offset", "rounds.0.bore.sweeps.0.1",
    ]  # fmt: skip
    assert found[-1].endswith("3 o'clock reading: enter a number, not 'o'")


@pytest.mark.parametrize(
    "bad",
    [
        {**JOB, "a\nb": 1},
        {**JOB, "units": "in\nch"},
        {**JOB, "limits": {"x\r\ny": 1}},
        {**JOB, "crank": {"axis": "a\u2028b"}},
    ],
)
def test_a_fault_stays_on_its_line_whatever_was_typed(
    bad: Data, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "bad.json"
    path.write_text(json.dumps(bad), encoding="utf-8")
    assert main([str(path)]) == 2
    assert len(faults(capsys)) == 1


@pytest.mark.parametrize(
    ("content", "phrase"),
    [
        (b"", "This is not a job file"),
        (b"{", "This is not a job file"),
        (b"\xff\xfe{}", "utf-8"),
        (b'{"format": NaN}', "NaN is not a number"),
        (b"[Infinity]", "Infinity is not a number"),
        (b"[" * 100_000, "nested more deeply"),
        (b" " * 300_000, "larger than any job"),
        (b"9" * 10_000, "This is not a job file"),
        (b"[]", "the job: enter a group of fields, not a list"),
    ],
    ids=["empty", "torn", "not utf-8", "nan", "infinity", "deep", "huge", "long number", "list"],
)
def test_a_file_that_is_no_job_failure(
    content: bytes, phrase: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "bad.json"
    path.write_bytes(content)
    assert main([str(path)]) == 2
    assert phrase in faults(capsys)[0]


def test_a_number_beyond_all_numbers_failure(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """1e400 is JSON, and infinity to Python."""
    path = tmp_path / "bad.json"
    path.write_text(json.dumps(JOB).replace("-6.0", "1e400"), encoding="utf-8")
    path.write_text('{"format": "sweepsheet-job", "version": 1, "rounds": [{"bore": {"sweeps": '
                    "[[0, 1e400, -1e400, 5]]}}]}", encoding="utf-8")  # fmt: skip
    assert main([str(path)]) == 2
    assert [line.partition(": ")[0] for line in faults(capsys)] == [
        "rounds.0.bore.sweeps.0.1", "rounds.0.bore.sweeps.0.2",
    ]  # fmt: skip


def test_an_unreadable_file_failure(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for path in (tmp_path / "missing.json", tmp_path):
        assert main([str(path)]) == 2
        (line,) = faults(capsys)
        assert line.startswith(f"{path}: ")


def test_standard_input_that_is_not_utf_8_failure() -> None:
    done = run("-", stdin=b"\xff\xfe", PYTHONUTF8="1")
    assert done.returncode == 2
    assert b"Traceback" not in done.stderr
    assert len(done.stderr.splitlines()) == 1


def test_no_job_named_failure(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as caught:
        main([])
    assert caught.value.code == 2
    assert "JOB.json" in capsys.readouterr().err

#!/usr/bin/env python3
"""The packs of the shipped example as another program reads them: what `qpdf --check` says, and what is attached.

Uses qpdf's own library as the Python package `pikepdf` brings it (PyPI, pinned), so that no system package is needed.

    python3 tests/pdf_check.py              # uses target/debug/hopwright, building it if need be

Ends with 0 if every pack is sound, or if Python's venv or the package index cannot be had (said so); with 1 if one is not.
"""

import json
import subprocess
import sys
import tempfile
from pathlib import Path

from scratch import ROOT, environment

LIBRARY = "pikepdf==10.18.0"
KINDS = ("design", "install", "acceptance")


def faults(path):
    """What is wrong with a PDF, a line each."""
    import pikepdf

    with pikepdf.open(path) as pdf:
        found = list(pdf.check_pdf_syntax())
        names = set(pdf.attachments)
        if not any(name.endswith(".yaml") for name in names):
            found.append("no source is attached")
        sheets = [name for name in names if name.endswith(".json")]
        for name in sheets:
            json.loads(pdf.attachments[name].get_file().read_bytes())
        if not sheets:
            found.append("no sheet is attached")
        with pdf.open_metadata() as metadata:
            if (metadata.get("pdfaid:part"), metadata.get("pdfaid:conformance"), metadata.get("pdfuaid:part")) != ("3", "A", "1"):
                found.append("no claim of PDF/A-3a and PDF/UA-1")
    return found


def inside(folder):
    packs = sorted(Path(folder).glob("*.pdf"))
    sound = bool(packs)
    for path in packs:
        for fault in faults(path):
            sound = False
            print(f"{path.name}: {fault}")
    print(f"qpdf: {len(packs)} packs read, {'all sound' if sound else 'not all sound'}")
    return 0 if sound else 1


def main():
    if sys.argv[1:2] == ["--inside"]:
        return inside(sys.argv[2])
    python, why = environment(ROOT / "target" / "pdf-check", LIBRARY)
    if python is None:
        print(f"check of the PDFs skipped, {LIBRARY} cannot be installed: {why}")
        return 0
    subprocess.run(["cargo", "test", "--no-run", "--locked", "--quiet"], cwd=ROOT, check=True)
    program = ROOT / "target" / "debug" / "hopwright"
    with tempfile.TemporaryDirectory() as folder:
        for kind in KINDS:
            command = [program, "pack", kind, "--network", ROOT / "examples" / "varneck", "--out", folder]
            subprocess.run(command, stdout=subprocess.DEVNULL, check=True)
        return subprocess.run([python, __file__, "--inside", folder], check=False).returncode


if __name__ == "__main__":
    sys.exit(main())

"""A scratch environment of Python under `target/`, with one pinned package, kept there for the next run."""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent


def environment(scratch, package):
    """The interpreter of the scratch environment, or why there is none."""
    folder = scratch / package.replace("==", "-")
    python = folder / "bin" / "python"
    ready = folder / "ready"
    if ready.exists():
        return python, None
    for step in ([sys.executable, "-m", "venv", folder], [python, "-m", "pip", "install", "--quiet", package]):
        try:
            done = subprocess.run(step, capture_output=True, text=True, check=False)
        except OSError as error:
            return None, str(error)
        if done.returncode != 0:
            said = (done.stderr or done.stdout).strip().splitlines()
            return None, said[-1] if said else "no reason given"
    ready.touch()
    return python, None

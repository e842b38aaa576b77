"""What every test stands on: no screen, a folder of its own for what is kept, seeded examples.

The environment is set before any test file is read, so that no Qt room can start on a real screen
or find a person's own settings.
"""

import os
import tempfile
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
os.environ["BEEWORKBOOK_HOME"] = tempfile.gettempdir() + "/beeworkbook-tests-must-ask-for-a-home"

settings.register_profile(
    "house",
    derandomize=True,  # the same examples everywhere: a red test is red for everyone
    deadline=None,  # a busy machine is no failure
    max_examples=40,
    suppress_health_check=[HealthCheck.too_slow],
)
settings.register_profile(
    "thorough", parent=settings.get_profile("house"), derandomize=False, max_examples=1000
)
settings.load_profile(os.environ.get("BEEWORKBOOK_HYPOTHESIS", "house"))


@pytest.fixture(autouse=True)
def home(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty user data folder, for this test alone."""
    folder = tmp_path_factory.mktemp("home")
    monkeypatch.setenv("BEEWORKBOOK_HOME", str(folder))
    return folder

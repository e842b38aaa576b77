"""The steps from a bare checkout to one that can be opened or tested, in order, each safe to repeat."""

from beeworkbook.setup.environment import Environment, SetupError
from beeworkbook.setup.installing import install, make_environment
from beeworkbook.setup.system_libraries import missing_libraries, provide
from beeworkbook.setup.turn import turn
from beeworkbook.words import say


def set_up(environment: Environment, name: str) -> None:
    """Make the environment hold all that the lock lists. One process at a time; others wait here.

    Errors: SetupError, a sentence for the person.
    """
    lock = environment.lock(name)
    if not lock.is_file():
        raise SetupError(say("Only a checkout can be set up: {path} is not here.", path=lock))
    try:
        with turn(environment.turn, _tell_waiting) as held:
            if not environment.is_ready(name):  # the one we waited for may have done it
                make_environment(environment)
                install(environment, lock, held)
                for covered in ("run", "test") if name == "test" else (name,):
                    environment.mark_ready(covered)  # the lock of the tests holds the program's (test_locks)
    except OSError as error:
        raise SetupError(say("The checkout could not be set up: {reason}.", reason=error)) from error


def _tell_waiting() -> None:
    print(say("Another start is setting this checkout up; waiting for it."), flush=True)


def see_to_libraries(environment: Environment) -> None:
    """Check the system's libraries at each start until all were there once."""
    missing = missing_libraries()
    if not missing or (provide(missing, environment.log) and not missing_libraries()):
        environment.mark_libraries()

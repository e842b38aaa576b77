"""How Alembic walks the revisions here: on the connection it is handed, a transaction a revision.

The number of the form is written into the file's header in the same transaction, so that a revision
and the record of it are kept together or not at all.
"""

from typing import Any

from alembic import context


def _number_the_file(ctx: Any, step: Any, heads: Any, run_args: Any) -> None:  # noqa: ARG001 - Alembic names them
    number = int(step.up_revision_id)
    ctx.connection.exec_driver_sql(f"PRAGMA user_version = {number}")


context.configure(
    connection=context.config.attributes["connection"],
    transaction_per_migration=True,
    on_version_apply=_number_the_file,
)
context.run_migrations()

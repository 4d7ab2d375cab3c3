"""Alembic without its ini file: the migrations travel inside the package."""

from pathlib import Path
from typing import Any

import sqlalchemy as sa
from alembic.config import Config
from alembic.runtime.environment import EnvironmentContext
from alembic.runtime.migration import MigrationContext, RevisionStep
from alembic.script import ScriptDirectory

from combwright.records.store.tables import CURRENT, tables, version


def revisions() -> list[str]:
    """Name the states that a book's tables have had, in order."""
    return [each.revision for each in reversed(list(_scripts(Config()).walk_revisions()))]


def upgrade(db: sa.Connection, to: str = CURRENT) -> None:
    """Bring a book to a version, inside the transaction that is already open on ``db``."""
    config = Config()
    scripts = _scripts(config)

    def steps(found: Any, _context: MigrationContext) -> list[RevisionStep]:  # noqa: ANN401
        return scripts._upgrade_revs(to, found)  # noqa: SLF001  (as Alembic's own command does)

    with EnvironmentContext(config, scripts, fn=steps, destination_rev=to) as environment:
        environment.configure(
            connection=db,
            target_metadata=tables,
            version_table=version.name,
            transactional_ddl=True,
            render_as_batch=True,
        )
        environment.run_migrations()


def _scripts(config: Config) -> ScriptDirectory:
    config.set_main_option("script_location", str(Path(__file__).parent).replace("%", "%%"))
    return ScriptDirectory.from_config(config)

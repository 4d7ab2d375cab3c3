"""Triggers by which the database itself refuses to change or delete rows."""

from alembic import op

IN_SQLITE = """
CREATE TRIGGER {table}_is_never_{done} BEFORE {event} ON {table}
BEGIN SELECT RAISE(ABORT, '{said}'); END
"""
REFUSING = """
CREATE OR REPLACE FUNCTION refuse() RETURNS trigger LANGUAGE plpgsql AS
$$ BEGIN RAISE EXCEPTION USING MESSAGE = TG_ARGV[0], ERRCODE = 'integrity_constraint_violation';
END $$
"""
IN_POSTGRESQL = """
CREATE TRIGGER {table}_is_never_{done} BEFORE {event} ON {table} EXECUTE FUNCTION refuse('{said}')
"""
EVENTS = {
    "sqlite": {"changed": "UPDATE", "deleted": "DELETE"},
    "postgresql": {"changed": "UPDATE", "deleted": "DELETE OR TRUNCATE"},
}


def guard(table: str, *, changed: str, deleted: str) -> None:
    """Refuse from now on, with a sentence, to change or delete what stands in a table."""
    database = op.get_bind().dialect.name
    if database == "postgresql":
        op.execute(REFUSING)
    made = IN_SQLITE if database == "sqlite" else IN_POSTGRESQL
    for done, said in (("changed", changed), ("deleted", deleted)):
        event = EVENTS[database][done]
        op.execute(made.format(table=table, done=done, event=event, said=said))


def unguard(table: str) -> None:
    """Let a migration write a table anew; it is guarded again before it is done."""
    of_table = f" ON {table}" if op.get_bind().dialect.name == "postgresql" else ""
    for done in ("changed", "deleted"):
        op.execute(f"DROP TRIGGER {table}_is_never_{done}{of_table}")

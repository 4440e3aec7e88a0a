/**
 * The steps from an empty file to the records of this version. Each runs once, in one transaction with its
 * number; a step that has landed is never edited, only followed by another.
 *
 * The log has no row id of its own: its key is the order of the events (bench, boot, sequence), and by nothing
 * else are they read. `log_end` holds how many rows there are and the last hash, written with each append, so
 * that rows missing at the end show as well as rows missing in the middle.
 */
export const migrations: readonly string[] = [
  `
  CREATE TABLE bench (
    one INTEGER NOT NULL PRIMARY KEY CHECK (one = 1),
    bench_id TEXT NOT NULL,
    made_wall_ms INTEGER NOT NULL
  ) STRICT;

  CREATE TABLE log (
    bench_id TEXT NOT NULL,
    boot INTEGER NOT NULL CHECK (boot >= 1),
    sequence INTEGER NOT NULL CHECK (sequence >= 0),
    attempt_id TEXT,
    type TEXT NOT NULL,
    bytes BLOB NOT NULL,
    previous_hash BLOB NOT NULL CHECK (length(previous_hash) = 32),
    hash BLOB NOT NULL CHECK (length(hash) = 32),
    monotonic_ms INTEGER NOT NULL,
    wall_ms INTEGER NOT NULL,
    clock_state TEXT NOT NULL CHECK (clock_state IN ('synced', 'battery', 'unsynced')),
    PRIMARY KEY (bench_id, boot, sequence)
  ) STRICT, WITHOUT ROWID;
  CREATE INDEX log_of_attempt ON log (attempt_id, bench_id, boot, sequence) WHERE attempt_id IS NOT NULL;

  CREATE TABLE log_end (
    bench_id TEXT NOT NULL PRIMARY KEY,
    row_count INTEGER NOT NULL,
    hash BLOB NOT NULL CHECK (length(hash) = 32)
  ) STRICT, WITHOUT ROWID;

  CREATE TABLE document (
    hash BLOB NOT NULL PRIMARY KEY CHECK (length(hash) = 32),
    kind TEXT NOT NULL,
    bytes BLOB NOT NULL
  ) STRICT, WITHOUT ROWID;

  CREATE TRIGGER log_is_not_changed BEFORE UPDATE ON log
    BEGIN SELECT RAISE(ABORT, 'the log is append-only'); END;
  CREATE TRIGGER log_is_not_shortened BEFORE DELETE ON log
    BEGIN SELECT RAISE(ABORT, 'the log is append-only'); END;
  -- REPLACE takes the old row away without asking the trigger before a delete.
  CREATE TRIGGER log_is_not_replaced BEFORE INSERT ON log
    WHEN EXISTS (SELECT 1 FROM log WHERE bench_id = NEW.bench_id AND boot = NEW.boot AND sequence = NEW.sequence)
    BEGIN SELECT RAISE(ABORT, 'the log is append-only'); END;
  CREATE TRIGGER document_is_not_replaced BEFORE INSERT ON document
    WHEN EXISTS (SELECT 1 FROM document WHERE hash = NEW.hash)
    BEGIN SELECT RAISE(IGNORE); END;
  CREATE TRIGGER document_is_not_changed BEFORE UPDATE ON document
    BEGIN SELECT RAISE(ABORT, 'documents are append-only'); END;
  CREATE TRIGGER document_is_not_removed BEFORE DELETE ON document
    BEGIN SELECT RAISE(ABORT, 'documents are append-only'); END;

  CREATE TABLE learner (
    learner_id TEXT NOT NULL PRIMARY KEY,
    name TEXT NOT NULL,
    centre_number TEXT NOT NULL,
    badge_hash BLOB UNIQUE CHECK (badge_hash IS NULL OR length(badge_hash) = 32)
  ) STRICT, WITHOUT ROWID;

  CREATE TABLE bench_memory (
    key TEXT NOT NULL PRIMARY KEY,
    json TEXT NOT NULL
  ) STRICT, WITHOUT ROWID;
  `,
];

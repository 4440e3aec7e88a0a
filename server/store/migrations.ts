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
  `
  -- What the log tells of each attempt, kept in step with it; made anew from it at any time.
  CREATE TABLE attempt (
    bench_id TEXT NOT NULL,
    start_boot INTEGER NOT NULL,
    start_sequence INTEGER NOT NULL,
    attempt_id TEXT NOT NULL UNIQUE,
    learner TEXT,
    scenario TEXT NOT NULL,
    mode TEXT NOT NULL,
    kind TEXT NOT NULL,
    status TEXT NOT NULL CHECK (status IN ('open', 'ready', 'handed-in', 'left')),
    started_wall_ms INTEGER NOT NULL,
    last_wall_ms INTEGER NOT NULL,
    ready_wall_ms INTEGER,
    handed_in_wall_ms INTEGER,
    event_count INTEGER NOT NULL,
    try_count INTEGER NOT NULL,
    hint_count INTEGER NOT NULL,
    danger_count INTEGER,
    fix_count INTEGER,
    query_count INTEGER,
    note_count INTEGER,
    proposal TEXT,
    decision TEXT,
    decided_by TEXT,
    decided_wall_ms INTEGER,
    PRIMARY KEY (bench_id, start_boot, start_sequence)
  ) STRICT, WITHOUT ROWID;
  CREATE INDEX attempt_of_status ON attempt (status, bench_id, start_boot, start_sequence);
  CREATE INDEX attempt_of_learner ON attempt (learner, bench_id, start_boot, start_sequence);

  -- Which attempt was started last on a bench, and whether it is still there.
  CREATE TABLE bench_work (
    bench_id TEXT NOT NULL PRIMARY KEY,
    attempt_id TEXT NOT NULL,
    is_on_bench INTEGER NOT NULL CHECK (is_on_bench IN (0, 1))
  ) STRICT, WITHOUT ROWID;

  -- By which version of the program a table was made that is told by the log alone.
  CREATE TABLE projection (
    name TEXT NOT NULL PRIMARY KEY,
    version INTEGER NOT NULL
  ) STRICT, WITHOUT ROWID;
  `,
  `
  -- People apart from the log, which knows their ids alone. The table learner of before holds nobody any more.
  CREATE TABLE person (
    person_id TEXT NOT NULL PRIMARY KEY,
    role TEXT NOT NULL CHECK (role IN ('learner', 'trainer', 'assessor', 'verifier', 'technician')),
    -- Name and centre number under a key of this person alone, which lies in a file of its own; null once erased.
    sealed BLOB,
    badge_mark BLOB UNIQUE CHECK (badge_mark IS NULL OR length(badge_mark) = 32),
    pin_hash TEXT,
    added_wall_ms INTEGER NOT NULL,
    -- Kept past the end of its time, for a dispute or by law, since then.
    held_wall_ms INTEGER,
    erased_wall_ms INTEGER
  ) STRICT, WITHOUT ROWID;
  `,
  `
  -- What people decided on attempts, told by the log as the rest of the table is.
  ALTER TABLE attempt ADD COLUMN override_count INTEGER;
  ALTER TABLE attempt ADD COLUMN next_kind TEXT;
  ALTER TABLE attempt ADD COLUMN declared_wall_ms INTEGER;
  ALTER TABLE attempt ADD COLUMN sealed_wall_ms INTEGER;
  ALTER TABLE attempt ADD COLUMN released_wall_ms INTEGER;
  ALTER TABLE attempt ADD COLUMN review TEXT;
  ALTER TABLE attempt ADD COLUMN reviewed_wall_ms INTEGER;
  -- All that a list may be narrowed by, in the order of the list: a page is found without reading whole rows.
  CREATE INDEX attempt_listed ON attempt (bench_id, start_boot, start_sequence, learner, scenario, mode, status,
    proposal, decision, decided_by, released_wall_ms, started_wall_ms);
  `,
  `
  -- What belongs to no attempt is found by its type, and who was shown a decision by its attempt, without going through
  -- the log for it.
  CREATE INDEX log_apart ON log (type, bench_id, boot, sequence) WHERE attempt_id IS NULL;
  CREATE INDEX log_shown ON log (attempt_id, bench_id, boot, sequence) WHERE type = 'decision-shown';
  `,
];

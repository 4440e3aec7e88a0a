/**
 * The steps from an empty database to the store of this version. Each runs once, in one transaction with its number; a
 * step that has landed is never edited, only followed by another.
 *
 * Rows lie in partitions by centre and month (of the bench's wall clock), which are made when a row first needs them.
 * Copies for reading are the engine's, by streaming replication; sharding is by tenant, a centre in one store (DEVELOPERS).
 */
export const centreMigrations: readonly string[] = [
  `
  CREATE TABLE centre (
    id text PRIMARY KEY CHECK (id ~ '^[a-z0-9-]{1,40}$'),
    number integer GENERATED ALWAYS AS IDENTITY UNIQUE,
    name text NOT NULL,
    made_at timestamptz NOT NULL DEFAULT now()
  );

  CREATE TABLE bench (
    bench_id text PRIMARY KEY,
    centre text NOT NULL REFERENCES centre,
    public_key text NOT NULL,
    row_count bigint NOT NULL DEFAULT 0,
    head_boot integer,
    head_sequence integer,
    head_hash bytea,
    made_at timestamptz NOT NULL DEFAULT now(),
    CHECK ((head_boot IS NULL) = (row_count = 0))
  );

  CREATE TABLE log_row (
    centre text NOT NULL,
    month date NOT NULL,
    bench_id text NOT NULL,
    boot integer NOT NULL CHECK (boot >= 1),
    sequence integer NOT NULL CHECK (sequence >= 0),
    attempt_id text,
    type text NOT NULL,
    bytes bytea NOT NULL,
    previous_hash bytea NOT NULL CHECK (length(previous_hash) = 32),
    hash bytea NOT NULL CHECK (length(hash) = 32),
    monotonic_ms bigint NOT NULL,
    wall_ms bigint NOT NULL,
    clock_state text NOT NULL CHECK (clock_state IN ('synced', 'battery', 'unsynced')),
    taken_at timestamptz NOT NULL DEFAULT now(),
    PRIMARY KEY (centre, month, bench_id, boot, sequence)
  ) PARTITION BY LIST (centre);
  CREATE INDEX log_row_order ON log_row (bench_id, boot, sequence);
  CREATE INDEX log_row_attempt ON log_row (attempt_id, bench_id, boot, sequence) WHERE attempt_id IS NOT NULL;

  CREATE TABLE row_set_aside (
    bench_id text NOT NULL REFERENCES bench,
    boot integer NOT NULL,
    sequence integer NOT NULL,
    hash bytea NOT NULL,
    packed text NOT NULL,
    taken_at timestamptz NOT NULL DEFAULT now(),
    PRIMARY KEY (bench_id, boot, sequence, hash)
  );

  CREATE TABLE document (
    hash bytea PRIMARY KEY CHECK (length(hash) = 32),
    bytes bytea NOT NULL,
    taken_at timestamptz NOT NULL DEFAULT now()
  );
  `,
  `
  -- Whom a bench has on its list, sealed there for the centre's key (RFC 7516), which is not in this store: who has the
  -- store reads no name. Beside the rows, so that a person can be taken out of it and the logs stay whole.
  CREATE TABLE person (
    bench_id text NOT NULL REFERENCES bench,
    person_id text NOT NULL,
    centre text NOT NULL REFERENCES centre,
    role text NOT NULL,
    row_hash bytea NOT NULL CHECK (length(row_hash) = 32),
    key text NOT NULL,
    sealed text NOT NULL,
    taken_at timestamptz NOT NULL DEFAULT now(),
    PRIMARY KEY (bench_id, person_id)
  );
  CREATE INDEX person_of_centre ON person (centre, person_id);

  -- Who was erased at the centre: no bench brings them back.
  CREATE TABLE person_erased (
    centre text NOT NULL REFERENCES centre,
    person_id text NOT NULL,
    erased_at timestamptz NOT NULL DEFAULT now(),
    PRIMARY KEY (centre, person_id)
  );

  -- How long the log of the bench was when its list of people was last taken.
  ALTER TABLE bench ADD COLUMN people_boot integer;
  ALTER TABLE bench ADD COLUMN people_sequence integer;
  `,
];

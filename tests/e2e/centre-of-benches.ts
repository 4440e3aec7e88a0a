import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import type { Pool } from "pg";
import { CentreStore } from "../../server/centre/centre-store.ts";
import { logFile } from "../../server/folders.ts";
import { openRecords } from "../../server/open-records.ts";
import { LogReader } from "../../server/store/log-reader.ts";
import { openForReading } from "../../server/store/open-database.ts";
import { type PrivatePostgres, postgresPrograms } from "../server/centre/private-postgres.ts";
import { storeOfItsOwn } from "../server/centre/store-of-its-own.ts";

/** The engine's programs; undefined where it is not installed, which is said, and no excuse in CI. */
export function centrePrograms(): string | undefined {
  const programs = postgresPrograms();
  if (programs === undefined && process.env["CI"] !== undefined)
    throw new Error("PostgreSQL's programs are not installed");
  if (programs === undefined)
    console.warn("PostgreSQL's programs are not installed: the centre is not tried here.");
  return programs;
}

const program = "server/commands/run.mjs";

/** Runs `npm run centre` with a store; gives the process and what it says. */
function centreCommand(uri: string, words: string[]): { child: ChildProcess; said: () => string } {
  const child = spawn(process.execPath, [program, "centre", uri, ...words], {
    stdio: ["ignore", "pipe", "inherit"],
    env: { ...process.env, SPURWISE_CENTRE_PORT: "0" },
  });
  let text = "";
  child.stdout.on("data", (piece: Buffer) => (text += piece.toString()));
  return { child, said: () => text };
}

/** `npm run centre` in a process of its own on a PostgreSQL of its own, with benches that are on its list. */
export class CentreOfBenches {
  readonly address: string;
  readonly #postgres: PrivatePostgres;
  readonly #serving: ChildProcess;
  readonly #pool: Pool;
  readonly #store: CentreStore;
  readonly #ids: ReadonlyMap<string, string>;

  private constructor(
    address: string,
    postgres: PrivatePostgres,
    serving: ChildProcess,
    pool: Pool,
    ids: ReadonlyMap<string, string>,
  ) {
    this.address = address;
    this.#postgres = postgres;
    this.#serving = serving;
    this.#pool = pool;
    this.#store = new CentreStore(pool);
    this.#ids = ids;
  }

  /** Opens one that knows the benches of these data folders, none of which runs yet. */
  static async open(programs: string, dataFolders: readonly string[]): Promise<CentreOfBenches> {
    const { postgres, pool, store } = await storeOfItsOwn(programs);
    const ids = new Map<string, string>();
    for (const folder of dataFolders) {
      const { records, reading, writing } = openRecords(logFile(folder), () => undefined);
      const { benchId, publicKey = "" } = records.log;
      records.log.checkpoint();
      reading.close();
      writing.close();
      ids.set(folder, benchId);
      await store.keepBench({ centre: "north-hall", benchId, publicKey });
    }
    const { child, said } = centreCommand(postgres.uri, []);
    while (!said().includes("Spurwise centre: ")) {
      if (child.exitCode !== null) throw new Error(`the centre did not start: ${said()}`);
      await new Promise((later) => setTimeout(later, 50));
    }
    const [, address = ""] = /Spurwise centre: (\S+)/.exec(said()) ?? [];
    return new CentreOfBenches(address, postgres, child, pool, ids);
  }

  idOf(dataFolder: string): string {
    return this.#ids.get(dataFolder) ?? "";
  }

  /** Waits until the head of a bench is here the one that its own log has, while it runs. */
  async hasAll(dataFolder: string): Promise<void> {
    const benchId = this.idOf(dataFolder);
    const database = openForReading(logFile(dataFolder));
    try {
      for (let tried = 0; tried < 200; tried += 1) {
        const last = [...new LogReader(database).rows()].at(-1);
        const head = (await this.#store.heads()).find((one) => one.benchId === benchId)?.head;
        if (last && head && Buffer.from(last.hash).toString("hex") === head.hash) return;
        await new Promise((later) => setTimeout(later, 100));
      }
    } finally {
      database.close();
    }
    throw new Error(`the log of ${benchId} is not whole at the centre`);
  }

  async rowCountOf(attemptId: string): Promise<number> {
    const { rows } = await this.#pool.query<{ count: string }>(
      "SELECT count(*) FROM log_row WHERE attempt_id = $1",
      [attemptId],
    );
    return Number(rows[0]?.count);
  }

  /** Somebody changes one row of a piece of work in the store. */
  async changeRowOf(attemptId: string): Promise<void> {
    await this.#pool.query(
      `UPDATE log_row SET wall_ms = wall_ms + 1 WHERE (bench_id, boot, sequence) =
       (SELECT bench_id, boot, sequence FROM log_row WHERE attempt_id = $1 ORDER BY boot, sequence LIMIT 1)`,
      [attemptId],
    );
  }

  /** What `npm run centre -- <connection> verify` ends with and says. */
  async verify(): Promise<{ code: number; said: string }> {
    const { child, said } = centreCommand(this.#postgres.uri, ["verify"]);
    const [code] = (await once(child, "close")) as [number];
    return { code, said: said() };
  }

  async close(): Promise<void> {
    const over = once(this.#serving, "exit");
    this.#serving.kill("SIGTERM");
    await over;
    await this.#pool.end();
    await this.#postgres.remove();
  }
}

import { type ChildProcess, execFileSync, spawn } from "node:child_process";
import { chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { once } from "node:events";
import { Pool, type PoolConfig } from "pg";
import { fastFolder } from "../../fast-folder.ts";

const debianFolder = "/usr/lib/postgresql";

/** Where the engine's programs are, the newest of them; undefined where there is none. */
export function postgresPrograms(): string | undefined {
  const versions = existsSync(debianFolder) ? readdirSync(debianFolder) : [];
  return versions
    .sort((a, b) => Number(b) - Number(a))
    .map((version) => join(debianFolder, version, "bin"))
    .find((folder) => existsSync(join(folder, "initdb")));
}

/** An ordinary user: the engine refuses to run as root. */
const nobody = 65_534;
const asOrdinary = process.getuid?.() === 0 ? { uid: nobody, gid: nobody } : {};

/** A PostgreSQL of one check's own: in a folder of its own, reached by a socket in it and by no port. */
export class PrivatePostgres {
  readonly #programs: string;
  readonly #folder: string;
  readonly #isOnDisk: boolean;
  #server: ChildProcess | undefined;

  /** In memory, as checks have it; `onDisk`: as a store really lies, each answer waiting for the disk. */
  constructor(programs: string, { onDisk = false } = {}) {
    this.#programs = programs;
    this.#isOnDisk = onDisk;
    this.#folder = mkdtempSync(join(onDisk ? tmpdir() : fastFolder(), "spurwise-pg-"));
    if (asOrdinary.uid !== undefined) chownSync(this.#folder, nobody, nobody);
    const data = join(this.#folder, "data");
    execFileSync(
      join(programs, "initdb"),
      ["-D", data, "-U", "spurwise", "--auth=trust", "--encoding=UTF8", "--no-locale", "--no-sync"],
      { ...asOrdinary, stdio: "ignore", cwd: this.#folder },
    );
  }

  get config(): PoolConfig {
    return { host: this.#folder, port: 5432, user: "spurwise", database: "postgres", max: 4 };
  }

  /** Starts it and waits until it answers. */
  async start(): Promise<void> {
    // Nothing has to outlive the machine in a check; what a power cut leaves is the engine's own affair.
    const options = [
      "listen_addresses=",
      "max_connections=20",
      ...(this.#isOnDisk ? ["shared_buffers=128MB"] : ["fsync=off", "shared_buffers=16MB"]),
    ];
    this.#server = spawn(
      join(this.#programs, "postgres"),
      ["-D", join(this.#folder, "data"), "-k", this.#folder, ...options.flatMap((one) => ["-c", one])],
      { ...asOrdinary, stdio: ["ignore", "ignore", "pipe"], cwd: this.#folder },
    );
    const said = this.#server.stderr!;
    await new Promise<void>((ready, failed) => {
      let text = "";
      said.on("data", (piece: Buffer) => {
        text += piece.toString();
        if (text.includes("ready to accept connections")) ready();
      });
      this.#server?.once("exit", () => failed(new Error(`PostgreSQL did not start:\n${text}`)));
    });
  }

  /** Ends it at once, as a kill would: what was answered is in its own log. */
  async kill(): Promise<void> {
    const server = this.#server;
    if (!server || server.exitCode !== null) return;
    const over = once(server, "exit");
    server.kill("SIGQUIT");
    await over;
  }

  /** How a program is told of it. */
  get uri(): string {
    return `postgresql://spurwise@localhost/postgres?host=${encodeURIComponent(this.#folder)}`;
  }

  pool(): Pool {
    const pool = new Pool(this.config);
    // A connection that waits and is lost is made anew.
    pool.on("error", () => undefined);
    return pool;
  }

  async remove(): Promise<void> {
    await this.kill();
    rmSync(this.#folder, { recursive: true, force: true });
  }
}

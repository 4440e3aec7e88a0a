import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { join, resolve } from "node:path";
import { fastFolder } from "../fast-folder.ts";

const program = resolve("dist/server/main.js");

export interface BenchProcess {
  address: string;
  pid: number;
  dataFolder: string;
  /** The process that reads the board, as long as there is one. */
  scannerPid: () => number | undefined;
  /** Ends the server as a power cut would, and waits until it is gone. */
  cutPower: () => Promise<void>;
  /** Ends the server as the service does. */
  stop: () => Promise<void>;
}

export interface BenchOptions {
  board?: string;
  lines?: "simulated" | "spinning" | "gpio";
  spinUs?: number;
  /** What is broken on the simulated board, as `SPURWISE_FAULTS` says it. */
  faults?: string;
  port?: number;
  /** The show goes so many times as fast. */
  showSpeed?: number;
  /** Where it listens to the network, on this machine alone; where the network was let in. */
  networkPort?: number;
  /** The file of the key of who publishes updates. */
  updateKeyFile?: string;
  /** Where benches that it leads call it. */
  leadPort?: number;
  /** The address of the centre's store that its log goes to. */
  centre?: string;
  /** Left out: a new folder. */
  dataFolder?: string;
}

const ended = (child: ChildProcess): Promise<void> =>
  new Promise((done) => {
    if (child.exitCode !== null || child.signalCode !== null) done();
    else child.once("exit", () => done());
  });

/** Waits for the one line with the address; fails with what the server said instead. */
const addressOf = (child: ChildProcess): Promise<string> =>
  new Promise((done, fail) => {
    let said = "";
    const listen = (chunk: Buffer) => {
      said += chunk.toString();
      const address = /http:\/\/\S+/.exec(said)?.[0];
      if (address) done(address);
    };
    child.stdout?.on("data", listen);
    child.stderr?.on("data", listen);
    child.once("exit", (code) => fail(new Error(`the bench ended with ${code} before it listened: ${said}`)));
  });

/** The first process started by another whose command line names a program. */
const childRunning = (parent: number, name: string): number | undefined =>
  readFileSync(`/proc/${parent}/task/${parent}/children`, "utf8")
    .split(" ")
    .filter((pid) => pid !== "")
    .map(Number)
    .find((pid) => readFileSync(`/proc/${pid}/cmdline`, "utf8").includes(name));

/** A new data folder for a bench of its own. */
export const newDataFolder = (): string => mkdtempSync(join(fastFolder(), "spurwise-"));

/**
 * Starts the built bench in a process of its own, on a port of its own.
 *
 * @throws when it was not built or ends before it listens.
 */
export const startBench = async (options: BenchOptions = {}): Promise<BenchProcess> => {
  if (!existsSync(program)) throw new Error("dist/server/main.js is not built: run the checks with npm test");
  const dataFolder = options.dataFolder ?? newDataFolder();
  const child = spawn(
    process.execPath,
    ["--max-semi-space-size=1", "--heap-growing-percent=20", "--v8-pool-size=1", program],
    {
      stdio: ["ignore", "pipe", "pipe"],
      env: {
        ...process.env,
        NODE_ENV: "production",
        SPURWISE_DATA: dataFolder,
        SPURWISE_BOARD: options.board ?? "small",
        SPURWISE_LINES: options.lines ?? "simulated",
        SPURWISE_SPIN_US: String(options.spinUs ?? 0),
        SPURWISE_FAULTS: options.faults ?? "",
        SPURWISE_PORT: String(options.port ?? 0),
        SPURWISE_SHOW_SPEED: String(options.showSpeed ?? 1),
        SPURWISE_UPDATE_KEY: options.updateKeyFile ?? "",
        ...(options.leadPort === undefined ? {} : { SPURWISE_LEAD_PORT: String(options.leadPort) }),
        ...(options.centre === undefined ? {} : { SPURWISE_CENTRE: options.centre }),
        ...(options.networkPort === undefined
          ? {}
          : { SPURWISE_HOST: "127.0.0.1", SPURWISE_NETWORK_PORT: String(options.networkPort) }),
      },
    },
  );
  const end = async (signal: NodeJS.Signals) => {
    child.kill(signal);
    await ended(child);
  };
  return {
    address: await addressOf(child),
    pid: child.pid ?? 0,
    dataFolder,
    scannerPid: () => childRunning(child.pid ?? 0, "scanner-child"),
    cutPower: () => end("SIGKILL"),
    stop: async () => {
      await end("SIGTERM");
      if (options.dataFolder === undefined) rmSync(dataFolder, { recursive: true, force: true });
    },
  };
};

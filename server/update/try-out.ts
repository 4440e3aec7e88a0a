import { type ChildProcess, spawn } from "node:child_process";
import { rmSync } from "node:fs";
import { join } from "node:path";
import { UpdateError } from "./update-error.ts";

export interface TryOutParts {
  /** The folder of the program that is tried. */
  program: string;
  version: string;
  /** A copy of the data; it may be changed. */
  data: string;
  environment: Record<string, string | undefined>;
  /** How long it may take to be healthy. */
  mostMs: number;
}

const lookEveryMs = 250;

/**
 * Starts a program on a copy of the data, with a simulated board and on loopback alone, and waits until it says that it is
 * healthy: its board ready, its records proved, its version the one that was promised.
 *
 * @throws UpdateError `not-healthy` with what was wrong.
 */
export async function tryOut({ program, version, data, environment, mostMs }: TryOutParts): Promise<void> {
  const child = spawn(process.execPath, [join(program, "dist/server/main.js")], {
    stdio: ["ignore", "pipe", "pipe"],
    env: {
      ...environment,
      SPURWISE_DATA: data,
      SPURWISE_LINES: "simulated",
      SPURWISE_FAULTS: "",
      SPURWISE_HOST: "127.0.0.1",
      SPURWISE_PORT: "0",
      SPURWISE_NETWORK_PORT: "0",
      SPURWISE_BACKUP: "",
      SPURWISE_ANCHOR: "",
      SPURWISE_CENTRE: "",
      NOTIFY_SOCKET: "",
    },
  });
  const end = (): void => void child.kill("SIGKILL");
  // However this process ends, the one that is tried does not go on.
  const leave = (): never => process.exit(1);
  process.once("exit", end);
  process.once("SIGTERM", leave);
  try {
    await healthy(child, version, Date.now() + mostMs);
  } finally {
    process.off("exit", end);
    process.off("SIGTERM", leave);
    end();
    rmSync(data, { recursive: true, force: true });
  }
}

async function healthy(child: ChildProcess, version: string, untilMs: number): Promise<void> {
  let said = "";
  for (const stream of [child.stdout, child.stderr])
    stream?.on("data", (chunk: Buffer) => (said = (said + chunk.toString("utf8")).slice(-2000)));
  let isGone = false;
  child.once("close", () => (isGone = true));
  child.once("error", () => (isGone = true));
  let last = "it does not listen";
  while (!isGone && Date.now() < untilMs) {
    const [address] = /http:\/\/127\.0\.0\.1:\d+/.exec(said) ?? [];
    const fault = address === undefined ? last : await faultAt(address, version);
    if (fault === undefined) return;
    last = fault;
    if (fault.startsWith("damaged") || fault.startsWith("version")) break;
    await new Promise((resolve) => setTimeout(resolve, lookEveryMs));
  }
  const lines = said.trim().split("\n");
  throw new UpdateError("not-healthy", isGone ? `it ended: ${lines.at(-1) ?? ""}` : last);
}

/** What is wrong with the health that a program tells; undefined where nothing is. */
async function faultAt(address: string, version: string): Promise<string | undefined> {
  try {
    const answer = await fetch(`${address}/health`);
    return faultOf(await answer.json(), version);
  } catch {
    return "it does not answer";
  }
}

/** What is wrong with what a program says of its health. */
export function faultOf(told: unknown, version: string): string | undefined {
  const health = told as { isReady?: unknown; log?: { state?: unknown }; softwareVersion?: unknown } | null;
  if (health?.softwareVersion !== version) return `version ${String(health?.softwareVersion)}`;
  if (health.log?.state === "damaged") return "damaged records";
  if (health.log?.state !== "sound") return "the records are not proved";
  return health.isReady === true ? undefined : "the board is not ready";
}

import type { SpeedLine } from "./speed-line.ts";

type Load = () => Promise<{ lines: (seed: number) => Promise<SpeedLine[]> }>;

/** The parts of the table. Each is loaded when its turn comes, so that none weighs on the memory of another. */
const parts: [name: string, load: Load][] = [
  ["scan", () => import("./scan-speed.ts")],
  ["contact", () => import("./contact-speed.ts")],
  ["judge", () => import("./judge-speed.ts")],
  ["least", () => import("./least-change-speed.ts")],
  ["electrical", () => import("./electrical-speed.ts")],
  ["log", () => import("./log-speed.ts")],
  ["attempts", () => import("./attempts-speed.ts")],
  ["server", () => import("./server-speed.ts")],
  ["bench", () => import("./bench-speed.ts")],
  ["view", () => import("./view-speed.ts")],
  ["lead", () => import("./lead-speed.ts")],
  ["centre", () => import("./centre-speed.ts")],
  ["centre-desk", () => import("./centre-desk-speed.ts")],
];

/** The lines of a part. One that breaks off is a line that is missed, and the table goes on. */
const linesOf = async (name: string, load: Load, seed: number): Promise<SpeedLine[]> => {
  try {
    return await (await load()).lines(seed);
  } catch (error) {
    const reached = error instanceof Error ? error.message : String(error);
    return [{ what: `${name} broke off`, reached, target: "all its lines", ok: false }];
  }
};

const inTable = ({ what, reached, target, ok }: SpeedLine): string =>
  `${ok ? "reached" : "MISSED "}  ${what.padEnd(62)} ${reached.padStart(16)}   to reach: ${target}\n`;

/**
 * Prints the speed table, each line reached or missed, on inputs seeded afresh. `npm run speed -- scan judge`
 * measures only those parts. Exit code 1 on a miss, 2 on an unknown part.
 */
export async function run(args: string[]): Promise<number> {
  const unknown = args.filter((arg) => !parts.some(([name]) => name === arg));
  if (unknown.length > 0) {
    process.stderr.write(
      `There is no part "${unknown[0]}". There are: ${parts.map(([name]) => name).join(", ")}.\n`,
    );
    return 2;
  }
  const seed = Date.now() % 1_000_000;
  process.stdout.write(`Speed, seed ${seed}\n`);
  let missed = 0;
  for (const [name, load] of parts) {
    if (args.length > 0 && !args.includes(name)) continue;
    for (const line of await linesOf(name, load, seed)) {
      if (!line.ok) missed += 1;
      process.stdout.write(inTable(line));
    }
  }
  process.stdout.write(missed === 0 ? "All reached.\n" : `${missed} missed.\n`);
  return missed === 0 ? 0 : 1;
}

import type { SpeedLine } from "./speed-line.ts";

/** The parts of the table. Each is loaded when its turn comes, so that none weighs on the memory of another. */
const parts: [name: string, load: () => Promise<{ lines: (seed: number) => Promise<SpeedLine[]> }>][] = [
  ["scan", () => import("./scan-speed.ts")],
  ["contact", () => import("./contact-speed.ts")],
  ["judge", () => import("./judge-speed.ts")],
  ["electrical", () => import("./electrical-speed.ts")],
  ["log", () => import("./log-speed.ts")],
  ["attempts", () => import("./attempts-speed.ts")],
  ["server", () => import("./server-speed.ts")],
  ["bench", () => import("./bench-speed.ts")],
  ["view", () => import("./view-speed.ts")],
];

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
    for (const { what, reached, target, ok } of await (await load()).lines(seed)) {
      if (!ok) missed += 1;
      process.stdout.write(
        `${ok ? "reached" : "MISSED "}  ${what.padEnd(62)} ${reached.padStart(16)}   to reach: ${target}\n`,
      );
    }
  }
  process.stdout.write(missed === 0 ? "All reached.\n" : `${missed} missed.\n`);
  return missed === 0 ? 0 : 1;
}

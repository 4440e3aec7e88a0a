import { readFileSync, rmSync } from "node:fs";
import { setTimeout as pause } from "node:timers/promises";
import { type BenchProcess, newDataFolder, startBench } from "../e2e/bench-process.ts";
import { usedS } from "./process-time.ts";
import { ms, quantile, type SpeedLine } from "./speed-line.ts";

const starts = 7;
const restS = 65;
const watchedS = 10;

const residentMb = (pid: number): number =>
  Number(/VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, "utf8"))?.[1] ?? Number.NaN) / 1024;

const childrenOf = (pid: number): number[] =>
  readFileSync(`/proc/${pid}/task/${pid}/children`, "utf8").trim().split(" ").filter(Boolean).map(Number);

/** Bytes a process has had written to the disk. */
const writtenBytes = (pid: number): number =>
  Number(/^write_bytes: (\d+)/m.exec(readFileSync(`/proc/${pid}/io`, "utf8"))?.[1] ?? Number.NaN);

const idle = async ({ pid }: BenchProcess): Promise<SpeedLine[]> => {
  const all = [pid, ...childrenOf(pid)];
  const sum = (of: (pid: number) => number) => all.reduce((total, each) => total + of(each), 0);
  await pause(restS * 1000);
  const before = { cpuS: sum(usedS), bytes: sum(writtenBytes) };
  await pause(watchedS * 1000);
  const share = (sum(usedS) - before.cpuS) / watchedS;
  const bytes = sum(writtenBytes) - before.bytes;
  return [
    {
      what: "idle bench, simulated board: share of a core",
      reached: `${(share * 100).toFixed(1)} %`,
      target: "under 3 %",
      ok: share < 0.03,
    },
    {
      what: `idle bench: disk writes in ${watchedS} s`,
      reached: `${bytes} bytes`,
      target: "none",
      ok: bytes === 0,
    },
  ];
};

/** Milliseconds until the bench listens, on an empty disk where no folder is given. */
const startMs = async (dataFolder?: string): Promise<number> => {
  const start = performance.now();
  const bench = await startBench({ board: "workshop", ...(dataFolder === undefined ? {} : { dataFolder }) });
  const tookMs = performance.now() - start;
  await bench.stop();
  return tookMs;
};

/** A bench starts on an empty disk once, and has its records made then; every other start finds them. */
const startLines = async (): Promise<SpeedLine[]> => {
  const dataFolder = newDataFolder();
  try {
    await startMs(dataFolder);
    const usualMs: number[] = [];
    const firstMs: number[] = [];
    for (let turn = 0; turn < starts; turn += 1) {
      usualMs.push(await startMs(dataFolder));
      firstMs.push(await startMs());
    }
    const median = quantile(usualMs, 0.5);
    return [
      {
        what: "server ready after node starts: median",
        reached: ms(median),
        target: "under 400 ms",
        ok: median < 400,
      },
      {
        what: "server ready at the first start of all, its records made: median",
        reached: ms(quantile(firstMs, 0.5)),
        target: "said, no target",
        ok: true,
      },
    ];
  } finally {
    rmSync(dataFolder, { recursive: true, force: true });
  }
};

/** How soon the built server listens, what it and its scanner hold, and what an idle bench costs. */
export const lines = async (): Promise<SpeedLine[]> => {
  const ready = await startLines();
  const bench = await startBench({ board: "workshop" });
  try {
    await pause(2000);
    const serverMb = residentMb(bench.pid);
    const scannerMb = childrenOf(bench.pid).reduce((total, pid) => total + residentMb(pid), 0);
    return [
      ...ready,
      {
        what: "server memory",
        reached: `${serverMb.toFixed(0)} MB`,
        target: "under 90 MB",
        ok: serverMb < 90,
      },
      {
        what: "scanner memory",
        reached: `${scannerMb.toFixed(0)} MB`,
        target: "under 50 MB",
        ok: scannerMb < 50,
      },
      ...(await idle(bench)),
    ];
  } finally {
    await bench.stop();
  }
};

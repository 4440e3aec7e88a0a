import { readFileSync } from "node:fs";

const ticksPerS = 100;

/** Processor time a process has used, in seconds. */
export const usedS = (pid: number): number => {
  const fields = readFileSync(`/proc/${pid}/stat`, "utf8").split(") ")[1]?.split(" ") ?? [];
  return (Number(fields[11]) + Number(fields[12])) / ticksPerS;
};

import { readFileSync } from "node:fs";

/** Megabytes of memory a process holds now (`VmRSS`, proc(5)). */
export const residentMb = (pid: number): number => megabytes(pid, "VmRSS");

/** The most it held until now (`VmHWM`). */
export const mostResidentMb = (pid: number): number => megabytes(pid, "VmHWM");

const megabytes = (pid: number, field: string): number =>
  Number(
    new RegExp(`${field}:\\s+(\\d+) kB`).exec(readFileSync(`/proc/${pid}/status`, "utf8"))?.[1] ?? Number.NaN,
  ) / 1024;

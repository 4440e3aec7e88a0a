import { readdirSync, readFileSync } from "node:fs";

/** The processes started by this one that run a program. */
export const processesOf = (program: string): number[] =>
  readdirSync("/proc")
    .filter((name) => /^\d+$/.test(name))
    .map(Number)
    .filter((pid) => {
      try {
        const parent = / \S+ (\d+) /.exec(
          readFileSync(`/proc/${pid}/stat`, "utf8").split(")").at(-1) ?? "",
        )?.[1];
        return (
          Number(parent) === process.pid && readFileSync(`/proc/${pid}/cmdline`, "utf8").includes(program)
        );
      } catch {
        return false;
      }
    });

import { readdirSync, readFileSync } from "node:fs";
import { judge } from "../../../../shared/rules/judge.ts";
import type { Undetermined, Verdict } from "../../../../shared/rules/verdict.ts";
import { type Wiring, wiringSchema } from "../../../../shared/wiring/wiring.schema.ts";

const folder = new URL("../cases/", import.meta.url);

/** Every wiring of the case files with its verdict. */
export const judged: { file: string; wiring: Wiring; verdict: Verdict }[] = readdirSync(folder)
  .filter((file) => file.endsWith(".json"))
  .sort()
  .map((file) => {
    const { wiring: json } = JSON.parse(readFileSync(new URL(file, folder), "utf8")) as { wiring: unknown };
    const wiring = wiringSchema.parse(json);
    return { file, wiring, verdict: judge(wiring) };
  });

/** Every finding of the case files, suppressed ones too. */
export const findings = judged.flatMap(({ file, wiring, verdict }) =>
  [...verdict.findings, ...verdict.suppressed].map((finding) => ({ file, wiring, finding })),
);

/** Everything the case files leave undetermined. */
export const undetermined: { wiring: Wiring; item: Undetermined }[] = judged.flatMap(({ wiring, verdict }) =>
  verdict.undetermined.map((item) => ({ wiring, item })),
);

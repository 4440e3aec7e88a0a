import type { Read } from "../reading/problem.ts";
import { readWith } from "../reading/read-json.schema.ts";
import { wiringProblems } from "./wiring-problems.ts";
import { type Wiring, wiringSchema } from "./wiring.schema.ts";

/** Reads a wiring file, text or parsed; gives the wiring or every problem with file, field and remedy. */
export const readWiring = (input: unknown, fileName: string): Read<Wiring> =>
  readWith(wiringSchema, input, fileName, wiringProblems);

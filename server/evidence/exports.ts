import { appealsPack } from "./appeals-pack.ts";
import { archive } from "./archive.ts";
import { attemptJson } from "./attempt-json.ts";
import { attemptsCsv } from "./attempts-csv.ts";
import type { Export } from "./export.ts";
import { recordPdf } from "./record/record-pdf.ts";
import { xapiExports } from "./xapi.ts";

/** Every file that evidence goes out in. The addresses are made from this list, and the tests walk it. */
export const allExports: readonly Export[] = [
  attemptsCsv,
  ...xapiExports,
  archive,
  attemptJson,
  recordPdf,
  appealsPack,
];

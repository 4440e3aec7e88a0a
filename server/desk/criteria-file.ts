import { join } from "node:path";
import type { CriteriaView, FileFault } from "../../shared/protocol/keep-view.ts";
import { jsonFault } from "../../shared/reading/json-fault.ts";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { lineOf } from "../files/line-of.ts";
import { type Criteria, criteriaSchema } from "./criteria.ts";

export const largestCriteriaBytes = 256 * 1024;

/** Where a centre's criteria lie in the data folder. */
export const criteriaPath = (data: string): string => join(data, "criteria.json");

/** Reads a centre's criteria; or what is wrong with them, line by line. */
export function criteriaOf(bytes: Uint8Array): { criteria: Criteria } | { faults: FileFault[] } {
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return { faults: [{ line: 1, message: "the file is not UTF-8 text" }] };
  }
  const broken = jsonFault(text);
  if (broken) return { faults: [{ line: broken.line, message: `${broken.message}. ${broken.remedy}` }] };
  const parsed = parseSafely(criteriaSchema, JSON.parse(text));
  if (parsed.success) return { criteria: parsed.data };
  return {
    faults: parsed.issues.map(({ path, message }) => ({
      line: lineOf(text, path),
      message: `${path.join(".")}: ${message}`,
    })),
  };
}

/** Criteria as the desk shows them. */
export const criteriaView = ({ title, criteria }: Criteria): CriteriaView => ({
  title,
  criteria,
  faults: [],
});

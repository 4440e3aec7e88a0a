import { findNodeAtLocation, parseTree } from "jsonc-parser";
import { join } from "node:path";
import type { CriteriaView, FileFault } from "../../shared/protocol/keep-view.ts";
import { jsonFault } from "../../shared/reading/json-fault.ts";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { type Criteria, criteriaSchema } from "./criteria.ts";

export const largestCriteriaBytes = 256 * 1024;

/** Where a centre's criteria lie in the data folder. */
export const criteriaPath = (data: string): string => join(data, "criteria.json");

/** The line, counted from 1, on which a part of a JSON text begins; of what it is missing in, where it is not there. */
function lineOf(text: string, path: readonly PropertyKey[]): number {
  const root = parseTree(text);
  const segments = path.map((step) => (typeof step === "number" ? step : String(step)));
  for (let count = segments.length; root && count >= 0; count -= 1) {
    const node = findNodeAtLocation(root, segments.slice(0, count));
    if (node) return text.slice(0, node.offset).split("\n").length;
  }
  return 1;
}

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

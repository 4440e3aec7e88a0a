import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { demoCriteria } from "../demo/criteria.ts";
import { type Criteria, criteriaSchema } from "./criteria.ts";

/** Where a centre puts its criteria in the data folder. */
const criteriaFile = (data: string): string => join(data, "criteria.json");

/** The centre's criteria; the invented ones where it has put none there or they cannot be used, which is noted. */
export function readCriteria(data: string, note: (sentence: string) => void): Criteria {
  const path = criteriaFile(data);
  if (!existsSync(path)) return demoCriteria;
  let told: unknown;
  try {
    told = JSON.parse(readFileSync(path, "utf8"));
  } catch (error) {
    note(`${path}: it is no JSON (${error instanceof Error ? error.message : String(error)})`);
    return demoCriteria;
  }
  const parsed = parseSafely(criteriaSchema, told);
  if (parsed.success) return parsed.data;
  const [issue] = parsed.issues;
  note(`${path}: ${issue?.path.join(".") ?? ""}: ${issue?.message ?? ""}`);
  return demoCriteria;
}

import { existsSync, readFileSync } from "node:fs";
import { demoCriteria } from "../demo/criteria.ts";
import type { Criteria } from "./criteria.ts";
import { criteriaOf, criteriaPath } from "./criteria-file.ts";

/** The centre's criteria; the invented ones where it has put none there or they cannot be used, which is noted. */
export function readCriteria(data: string, note: (sentence: string) => void): Criteria {
  const path = criteriaPath(data);
  if (!existsSync(path)) return demoCriteria;
  const read = criteriaOf(readFileSync(path));
  if ("criteria" in read) return read.criteria;
  const [fault] = read.faults;
  note(`${path}: line ${fault?.line ?? 1}: ${fault?.message ?? ""}`);
  return demoCriteria;
}

import type { CableId } from "../../board/ids.ts";
import { endsOfCable, stationOf } from "../../board/ids.ts";
import type { Finding, Verdict } from "../verdict.ts";
import { wordings } from "./languages.ts";

/** Findings of one cause, in the order of the verdict. */
export type FindingGroup = [Finding, ...Finding[]];

/**
 * The findings of a verdict as notes: what one rule says in the same words of several places behind one device or fuse is one
 * note with its places. The verdict itself keeps them apart, each with its own numbers.
 */
export function groupFindings(verdict: Pick<Verdict, "findings" | "figures">): FindingGroup[] {
  const groups = new Map<string, FindingGroup>();
  for (const finding of verdict.findings) {
    const { rule, variant, id } = finding;
    const variants: Readonly<Record<string, { several?: unknown }>> = wordings.en.catalogue[rule].variants;
    const isGrouped = Object.hasOwn(variants, variant) && variants[variant]?.several !== undefined;
    const key = isGrouped ? `${rule} ${variant} ${deviceBefore(finding, verdict) ?? ""}` : id;
    const known = groups.get(key);
    if (known) known.push(finding);
    else groups.set(key, [finding]);
  }
  return [...groups.values()];
}

/** The device or fuse before the place a finding is about. */
function deviceBefore({ causes }: Finding, { figures }: Pick<Verdict, "figures">): string | undefined {
  const [cause] = causes;
  if (!cause) return undefined;
  const own = figures.cables[cause.id as CableId];
  if (own) return own.deviceAt;
  return Object.entries(figures.cables).find(([id]) =>
    endsOfCable(id as CableId).some((end) => stationOf(end) === cause.id),
  )?.[1].deviceAt;
}

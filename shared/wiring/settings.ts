import { byId, type CableId, type StationId } from "../board/ids.ts";
import type { StationSettings } from "../board/station-settings.schema.ts";

/** Who said it. */
export const settingAuthors = ["sensed", "learner", "trainer", "scenario"] as const;
export type SettingAuthor = (typeof settingAuthors)[number];

export type SettingValue = string | number | boolean;

/** One thing said of a station or a cable, such as the size of a cable or the rating of a device. */
export interface Setting {
  subject: StationId | CableId;
  key: keyof StationSettings | "csaMm2";
  value: SettingValue;
  by: SettingAuthor;
}

/** Two said different things of the same: which one counts, and which does not. */
export interface SettingClash {
  subject: StationId | CableId;
  key: Setting["key"];
  used: Pick<Setting, "value" | "by">;
  unused: Pick<Setting, "value" | "by">[];
}

export interface ResolvedSettings {
  /** What counts, by subject and key. */
  values: Map<StationId | CableId, Map<Setting["key"], Pick<Setting, "value" | "by">>>;
  /** Sorted by subject, then by key. */
  clashes: SettingClash[];
}

/** Heaviest first. A trainer who corrects a learner and a learner who corrects himself both declare. */
const rankOf: Record<SettingAuthor, number> = { sensed: 0, learner: 1, trainer: 1, scenario: 2 };

/**
 * What counts of all that was said, in the order it was said: a sensed code beats a declaration, a declaration
 * beats the scenario, and of equals the later one counts. Where authors differ in what they said last there is a
 * clash; to change one's own mind is none.
 */
export function resolveSettings(said: readonly Setting[]): ResolvedSettings {
  const last = new Map<string, Map<SettingAuthor, Setting>>();
  for (const setting of said) {
    const key = `${setting.subject} ${setting.key}`;
    const byAuthor = last.get(key) ?? new Map<SettingAuthor, Setting>();
    // Taken out first, so that the authors stand in the order in which they spoke last.
    byAuthor.delete(setting.by);
    last.set(key, byAuthor.set(setting.by, setting));
  }
  const resolved: ResolvedSettings = { values: new Map(), clashes: [] };
  for (const byAuthor of last.values()) {
    const [used, ...others] = [...byAuthor.values()].toReversed().sort((a, b) => rankOf[a.by] - rankOf[b.by]);
    if (!used) continue;
    const { subject, key, value, by } = used;
    const ofSubject =
      resolved.values.get(subject) ?? new Map<Setting["key"], Pick<Setting, "value" | "by">>();
    resolved.values.set(subject, ofSubject.set(key, { value, by }));
    const unused = others.filter((other) => other.value !== value).map((o) => ({ value: o.value, by: o.by }));
    if (unused.length > 0) resolved.clashes.push({ subject, key, used: { value, by }, unused });
  }
  resolved.clashes.sort((a, b) => byId(a.subject, b.subject) || byId(a.key, b.key));
  return resolved;
}

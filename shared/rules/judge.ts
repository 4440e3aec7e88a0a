import {
  byId,
  type ContactId,
  endsOfCable,
  roleClass,
  roleOf,
  type StationId,
  stationOf,
} from "../board/ids.ts";
import { buildModel } from "../circuit/build-model.ts";
import type { CircuitModel } from "../circuit/model.ts";
import type { Wiring } from "../wiring/wiring.schema.ts";
import { at } from "./evidence.ts";
import { figuresOf } from "./figures.ts";
import { rules } from "./index.ts";
import { packVersion } from "./pack-version.ts";
import { requirementResults } from "./requirement-results.ts";
import { type Evidence, type Place, type Rule, type RuleId, type Weight, weights } from "./rule.ts";
import { rankOf } from "./rank-of.ts";
import { suppress } from "./suppress.ts";
import type { Finding, RequirementResult, Undetermined, Verdict } from "./verdict.ts";

/**
 * The verdict on a wiring: all findings, what explains them, what cannot be told, figures, requirements and a
 * proposal. Pure and deterministic: the same wiring and rules give the same bytes. With a contact that the board
 * cannot read, only what would hold whatever is plugged there is kept as a finding.
 */
export const judge = (wiring: Wiring, pack: readonly Rule[] = rules): Verdict => {
  const model = buildModel(wiring);
  const ordered = inOrder(pack);
  const looked = look(model, ordered);
  const { findings, suppressed, undetermined } = looked;
  const requirements = requirementResults(model, looked, (other) => look(buildModel(other), ordered));
  return {
    packVersion,
    rulesRun: ordered.map(({ id }) => id),
    findings,
    suppressed,
    undetermined,
    figures: figuresOf(model),
    requirements,
    proposal: proposalOf(findings, undetermined, requirements, model.unknown.size > 0),
  };
};

const orders = new WeakMap<readonly Rule[], readonly Rule[]>();

/** The rules of a pack in the order of causes, put in order once. */
function inOrder(pack: readonly Rule[]): readonly Rule[] {
  const known = orders.get(pack);
  if (known) return known;
  const ordered = [...pack].sort((a, b) => rankOf(a.id) - rankOf(b.id));
  orders.set(pack, ordered);
  return ordered;
}

/** What the rules, in their order, say of a wiring: findings, what explains others, and what cannot be told. */
function look(
  model: CircuitModel,
  ordered: readonly Rule[],
): Pick<Verdict, "findings" | "suppressed" | "undetermined"> {
  const inUse = model.unknown.size > 0 ? stationsInUse(model) : new Set<StationId>();
  const seen: Finding[] = [];
  const undetermined: Undetermined[] = [];
  for (const rule of ordered) {
    const isBlurred = model.unknown.size > 0 && rule.standsWithUnknown !== true;
    let isDropped = false;
    for (const result of rule.check(model)) {
      if (result.kind === "missing") {
        const { place, field, cause } = result;
        // A contact of a station that nobody uses is nobody's concern, whatever a rule makes of it.
        const isIdle = cause === "board" && !stationsIn(place.id).some((station) => inUse.has(station));
        if (!isIdle) undetermined.push({ rule: rule.id, place, field, cause });
      } else if (isBlurred || touchesUnknown(result, model)) isDropped = true;
      else seen.push(findingOf(rule, result));
    }
    undetermined.push(...unreadable(rule.id, model, inUse, isDropped));
  }
  const { findings, suppressed } = suppress(told(seen), ordered);
  return {
    findings: findings.sort(byWeight),
    suppressed: suppressed.sort(byWeight),
    undetermined: distinct(undetermined),
  };
}

function findingOf(rule: Rule, { variant, causes, places, facts }: Evidence): Finding {
  const weight = rule.variants[variant];
  if (!weight) throw new UnknownVariantError(rule.id, variant);
  return {
    id: `${rule.id}/${variant}/${causes[0].id}`,
    rule: rule.id,
    variant,
    weight,
    causes,
    places: places.length > 0 ? places : causes,
    facts,
  };
}

/** A rule gave a variant that it does not list: a mistake in the rule, never in a wiring. */
export class UnknownVariantError extends Error {
  readonly code = "unknown-variant";

  constructor(rule: RuleId, variant: string) {
    super(`rule ${rule} has no variant ${variant}`);
  }
}

/**
 * Gives every finding an id of its own: rule, variant and first cause, or all causes where that is not enough. What
 * has the same causes is one finding with all its places.
 */
function told(findings: readonly Finding[]): Finding[] {
  const count = new Map<string, number>();
  for (const { id } of findings) count.set(id, (count.get(id) ?? 0) + 1);
  const byKey = new Map<string, Finding>();
  for (const finding of findings) {
    if (count.get(finding.id) === 1) {
      byKey.set(finding.id, finding);
      continue;
    }
    const id = longId(finding);
    const known = byKey.get(id);
    if (!known) byKey.set(id, { ...finding, id, places: [...finding.places] });
    else
      known.places.push(
        ...finding.places.filter((place) => !known.places.some((other) => isSame(place, other))),
      );
  }
  return [...byKey.values()];
}

const longId = ({ rule, variant, causes }: Finding): string =>
  `${rule}/${variant}/${causes.map(({ id }) => id).join("+")}`;

const isSame = (a: Place, b: Place): boolean => a.kind === b.kind && a.id === b.id;

/** Evidence about an entry with a contact that cannot be read: what it rests on may not be so. */
function touchesUnknown({ causes, places }: Evidence, { unknown }: CircuitModel): boolean {
  if (unknown.size === 0) return false;
  const doubtful = new Set([...unknown].map(stationOf));
  return [...causes, ...places].some(({ id }) => stationsIn(id).some((station) => doubtful.has(station)));
}

const stationsIn = (id: string): StationId[] =>
  id.split("~").map((end) => (end.includes(".") ? stationOf(end as ContactId) : (end as StationId)));

/** What each class of contact decides, said even where nothing was seen: not to know is never a pass. */
const decidedBy: Record<ReturnType<typeof roleClass>, readonly RuleId[]> = {
  live: ["short", "polarity", "conductor-missing"],
  neutral: ["short", "polarity", "conductor-missing"],
  earth: ["neutral-earth", "polarity", "cpc-missing"],
};

function unreadable(
  rule: RuleId,
  model: CircuitModel,
  inUse: ReadonlySet<StationId>,
  isDropped: boolean,
): Undetermined[] {
  if (model.unknown.size === 0) return [];
  return [...model.unknown].sort(byId).flatMap((contact) => {
    const isDecided = decidedBy[roleClass(roleOf(contact))].includes(rule) && inUse.has(stationOf(contact));
    if (!isDropped && !isDecided) return [];
    return [{ rule, place: at("contact", contact), field: "contact", cause: "board" as const }];
  });
}

/** Stations a cable goes to or the task wants served, leads at unknown contacts included. */
function stationsInUse({ wiring }: CircuitModel): Set<StationId> {
  const stations = new Set<StationId>();
  for (const { from, to } of wiring.cables) for (const end of [from, to]) stations.add(stationOf(end));
  for (const want of wiring.wants ?? []) {
    if ("stations" in want) for (const id of want.stations) stations.add(id);
    if (want.kind === "kept")
      for (const cable of want.cables) for (const end of endsOfCable(cable)) stations.add(stationOf(end));
  }
  return stations;
}

function distinct(undetermined: readonly Undetermined[]): Undetermined[] {
  const byKey = new Map(
    undetermined.map((item) => [
      `${item.rule} ${item.place.kind} ${item.place.id} ${item.field} ${item.cause}`,
      item,
    ]),
  );
  return [...byKey.values()].sort(
    (a, b) => rankOf(a.rule) - rankOf(b.rule) || byId(a.place.id, b.place.id) || byId(a.field, b.field),
  );
}

const byWeight = (a: Finding, b: Finding): number =>
  weights.indexOf(a.weight) - weights.indexOf(b.weight) ||
  rankOf(a.rule) - rankOf(b.rule) ||
  byId(a.id, b.id);

const mustBeMended: readonly Weight[] = ["danger", "fix"];

/** What the board hides is never held against a learner: only a finding or a requirement surely missed is. */
function proposalOf(
  findings: readonly Finding[],
  undetermined: readonly Undetermined[],
  requirements: readonly RequirementResult[],
  isPartHidden: boolean,
): Verdict["proposal"] {
  if (undetermined.some(({ cause }) => cause === "board")) return "cannot-say";
  const isWrong =
    requirements.some(({ answer }) => answer === "not-yet") ||
    findings.some(({ weight }) => mustBeMended.includes(weight));
  const isUnsure = undetermined.length > 0 || requirements.some(({ answer }) => answer !== "met");
  if (isPartHidden && isUnsure && !isWrong) return "cannot-say";
  return isWrong || isUnsure ? "not-yet" : "met";
}

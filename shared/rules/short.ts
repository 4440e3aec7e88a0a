import { byId, type RoleClass, roleClass, roleOf } from "../board/ids.ts";
import { DisjointSets } from "../wiring/disjoint-sets.ts";
import type { ConductorModel } from "../circuit/conductor-model.ts";
import type { CircuitModel } from "../circuit/model.ts";
import { allAt, evidence } from "./evidence.ts";
import type { Evidence, Rule } from "./rule.ts";

/** The class of conductor a crossed lead brings together with line; undefined where it has no line end. */
const lineMeets = ({ from, to }: ConductorModel): "neutral" | "earth" | undefined => {
  const [a, b] = [roleClass(roleOf(from)), roleClass(roleOf(to))];
  const other: RoleClass = a === "live" ? b : a;
  return (a === "live" || b === "live") && other !== "live" ? other : undefined;
};

const isFed = (model: CircuitModel, node: ConductorModel["fromNode"]): boolean =>
  model.reachOf(node).sometimes.length > 0;

/** Crossed leads with line at one end and a fed neutral or earth at the other. */
const direct = (model: CircuitModel): ConductorModel[] =>
  model.crossed.filter(
    (conductor) => lineMeets(conductor) && isFed(model, conductor.fromNode) && isFed(model, conductor.toNode),
  );

/** Crossed leads of line that meet neutral or earth only by way of other crossed leads. */
function chained(model: CircuitModel, shorted: readonly ConductorModel[]): ConductorModel[] {
  const isShorted = new Set(shorted);
  const crossed = model.crossed.filter((conductor) => !isShorted.has(conductor));
  // With a contact that cannot be read, a chain may be a plain short or none at all.
  if (crossed.length < 2 || model.unknown.size > 0) return [];
  const groups = new Map<number, number>();
  const index = (node: ConductorModel["fromNode"]): number => {
    const group = model.groupOf(node);
    const made = groups.get(group) ?? groups.size;
    groups.set(group, made);
    return made;
  };
  const ends = crossed.map(({ fromNode, toNode }) => [index(fromNode), index(toNode)] as const);
  const sets = new DisjointSets(groups.size);
  for (const [a, b] of ends) sets.join(a, b);
  const fed = new Map<number, Set<RoleClass>>();
  crossed.forEach(({ from, to, fromNode, toNode }, at) => {
    for (const [contact, node, end] of [
      [from, fromNode, ends[at]?.[0] ?? 0],
      [to, toNode, ends[at]?.[1] ?? 0],
    ] as const) {
      if (!isFed(model, node)) continue;
      const root = sets.find(end);
      fed.set(root, (fed.get(root) ?? new Set()).add(roleClass(roleOf(contact))));
    }
  });
  return crossed.filter((conductor, at) => {
    const root = sets.find(ends[at]?.[0] ?? 0);
    const classes = fed.get(root);
    if (!classes?.has("live") || classes.size < 2) return false;
    return (
      lineMeets(conductor) !== undefined &&
      [conductor.fromNode, conductor.toNode].some((node) => isFed(model, node))
    );
  });
}

/**
 * Leads of one cable that bring line to the same class: those found, and what else is crossed with them, such as the
 * core of a switch cable that takes earth to the lamp while its other end joins line to earth.
 */
function byCable({ crossed }: CircuitModel, found: readonly ConductorModel[]): ConductorModel[][] {
  const keyOf = (conductor: ConductorModel): string => `${conductor.cable} ${lineMeets(conductor) ?? ""}`;
  return [...new Set(found.map(keyOf))].map((key) => crossed.filter((one) => keyOf(one) === key));
}

/** Line meets neutral or earth: one finding a cable, which names the leads that join them. */
export const short: Rule = {
  id: "short",
  variants: { "line-neutral": "danger", "line-earth": "danger" },
  source: {
    kind: "regulation",
    document: "BS 7671:2018",
    clause: "134.1.1 and 433 to 434",
    checked: "from memory",
  },
  standsWithUnknown: true,
  check: (model) => {
    const joining = direct(model);
    const plain = byCable(model, joining);
    const named = new Set(plain.flat());
    const further = chained(model, joining).filter((conductor) => !named.has(conductor));
    return [...plain, ...byCable(model, further)].flatMap((list): Evidence[] => {
      const [first] = list;
      const variant = first && lineMeets(first) === "earth" ? "line-earth" : "line-neutral";
      return evidence(variant, allAt("conductor", list.map(({ id }) => id).sort(byId)));
    });
  },
};

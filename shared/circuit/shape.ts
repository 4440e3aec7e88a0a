import { byId, type EntryId, type RoleClass, roleClasses, type StationId, stationOf } from "../board/ids.ts";
import { blocksOf } from "./blocks.ts";
import type { NodeId } from "../wiring/buses.ts";
import { DisjointSets } from "../wiring/disjoint-sets.ts";
import type { Branch, CableModel, Ring, Run, Shape, Zone } from "./model.ts";

/** A cable of the shape with the line buses it joins, at its `from` and its `to`, and the classes that go straight through. */
export interface RunEnds {
  cable: CableModel;
  a: NodeId;
  b: NodeId;
  classes: ReadonlySet<RoleClass>;
}

interface Link extends Run {
  nodeA: number;
  nodeB: number;
}

/**
 * Rings, loops and branches of a zone. A single conductor on its own counts as a run, so a neutral that closes
 * where line and earth do not is seen; single leads between one pair of stations that complete each other are one
 * run. Deterministic in ids and the same whichever way a ring is walked.
 */
export const shapeOf = (
  zone: Pick<Zone, "isFused">,
  heads: ReadonlySet<NodeId>,
  pointNodes: ReadonlySet<NodeId>,
  ends: readonly RunEnds[],
): Shape => {
  const shape: Shape = { rings: [], loops: [], branches: [] };
  if (ends.length === 0) return shape;
  const nodes = new Map<NodeId, number>();
  const stationAt: StationId[] = [stationOfNode([...heads].sort(byId)[0])];
  const pointAt: boolean[] = [false];
  const local = (node: NodeId, station: StationId): number => {
    if (heads.has(node)) return 0;
    const known = nodes.get(node);
    if (known !== undefined) return known;
    nodes.set(node, stationAt.length);
    pointAt.push(pointNodes.has(node));
    return stationAt.push(station) - 1;
  };
  const links = runsOf(ends, local);
  const blocks = blocksOf(
    stationAt.length,
    links.map(({ nodeA, nodeB }) => ({ a: nodeA, b: nodeB })),
  );
  const inBlock = new Array<boolean>(links.length).fill(false);
  const isMain = stationAt.map((_, index) => index === 0);
  // A loop is one place for what is beyond it: which way round its runs are walked must not matter.
  const loops = new DisjointSets(stationAt.length);
  for (const block of blocks) {
    const runs = block.flatMap((edge) => links[edge] ?? []);
    const isThroughHead = runs.some(({ nodeA, nodeB }) => nodeA === 0 || nodeB === 0);
    const isRing = !zone.isFused && isThroughHead;
    for (const edge of block) inBlock[edge] = true;
    for (const { nodeA, nodeB } of runs) {
      if (isRing) isMain[nodeA] = isMain[nodeB] = true;
      else loops.join(nodeA, nodeB);
    }
    // Two fuses that feed one part close no loop of cable.
    if (zone.isFused && heads.size > 1 && isThroughHead) continue;
    (isRing ? shape.rings : shape.loops).push(ringOf(runs, stationAt));
  }
  shape.branches = branchesOf({ links, inBlock, isMain, stationAt, pointAt, loops });
  return shape;
};

const stationOfNode = (node: NodeId | undefined): StationId =>
  (node ?? "").slice(0, (node ?? "").indexOf("/")) as StationId;

/** The number of a node in the shape. */
type Local = (node: NodeId, station: StationId) => number;

/** One run a cable, or one for the single leads of a pair of stations that complete each other. */
function runsOf(ends: readonly RunEnds[], local: Local): Link[] {
  const partial = new Map<string, RunEnds[]>();
  const groups: RunEnds[][] = [];
  for (const end of ends) {
    if (end.classes.size === roleClasses.length) {
      groups.push([end]);
      continue;
    }
    const { a, b, cable } = end;
    const key = [local(a, cable.fromStation), local(b, cable.toStation)].sort((x, y) => x - y).join();
    const known = partial.get(key);
    if (known) known.push(end);
    else partial.set(key, [end]);
  }
  for (const list of partial.values()) {
    const total = list.reduce((sum, { classes: carried }) => sum + carried.size, 0);
    const union = new Set(list.flatMap(({ classes: carried }) => [...carried]));
    const complete = list.every(({ classes: carried }) => carried.size > 0) && union.size === total;
    if (complete) groups.push(list);
    else for (const end of list) groups.push([end]);
  }
  return groups
    .map((group) => linkOf(group, local))
    .sort((x, y) => byId(x.cables[0]?.id ?? "", y.cables[0]?.id ?? ""));
}

function linkOf(group: readonly RunEnds[], local: Local): Link {
  const [first] = group as [RunEnds];
  const isOne = group.length === 1;
  const carried = isOne ? first.classes : new Set(group.flatMap((end) => [...end.classes]));
  const { missing, fromStation, toStation } = first.cable;
  const link: Link = {
    cables: group.map(({ cable }) => cable),
    a: fromStation,
    b: toStation,
    classes: carried,
    missing: missing.length === 0 ? missing : missing.filter((core) => !carried.has(core.class)),
    nodeA: local(first.a, fromStation),
    nodeB: local(first.b, toStation),
  };
  const ratingA = isOne ? first.cable.ratingA : leastRatingA(link.cables);
  if (ratingA !== undefined) link.ratingA = ratingA;
  return link;
}

/** The least of the cables' ratings; undefined where one is not known. */
function leastRatingA(cables: readonly CableModel[]): number | undefined {
  const stated = cables.flatMap(({ ratingA }) => ratingA ?? []);
  return stated.length === cables.length ? Math.min(...stated) : undefined;
}

function ringOf(links: readonly Link[], stationAt: readonly StationId[]): Ring {
  const nodes = new Set(links.flatMap(({ nodeA, nodeB }) => [nodeA, nodeB]));
  const isBridged = links.length > nodes.size;
  const walk = isBridged ? [...links] : walked(links, stationAt);
  const closes = Object.fromEntries(
    roleClasses.map((conductor) => [conductor, links.every((link) => link.classes.has(conductor))]),
  ) as Record<RoleClass, boolean>;
  return {
    runs: walk,
    cables: walk.flatMap(({ cables }) => cables),
    stations: isBridged
      ? [...nodes].map((node) => stationAt[node] as StationId).sort(byId)
      : stationsRound(walk, stationAt),
    isBridged,
    closes,
  };
}

/** The runs of a simple cycle in order: from the way (or the least id) towards the neighbour with the lesser id. */
function walked(links: readonly Link[], stationAt: readonly StationId[]): Link[] {
  const touching = new Map<number, Link[]>();
  for (const link of links)
    for (const node of [link.nodeA, link.nodeB]) touching.set(node, [...(touching.get(node) ?? []), link]);
  const name = (node: number): StationId => stationAt[node] as StationId;
  const start =
    [...touching.keys()].sort((a, b) => (a === 0 ? -1 : b === 0 ? 1 : byId(name(a), name(b))))[0] ?? 0;
  const away = (link: Link, node: number): number => (link.nodeA === node ? link.nodeB : link.nodeA);
  const [one, two] = touching.get(start) ?? [];
  if (!one || !two) return [...links];
  const first = byId(name(away(one, start)), name(away(two, start))) <= 0 ? one : two;
  const order: Link[] = [first];
  for (let node = away(first, start), last = first; node !== start;) {
    const next = (touching.get(node) ?? []).find((link) => link !== last);
    if (!next || order.length >= links.length) break;
    order.push(next);
    node = away(next, node);
    last = next;
  }
  return order;
}

function stationsRound(walk: readonly Link[], stationAt: readonly StationId[]): StationId[] {
  const [first, second] = walk;
  if (!first || !second) return [];
  const shared = (node: number): boolean => second.nodeA === node || second.nodeB === node;
  let node = shared(first.nodeB) ? first.nodeA : first.nodeB;
  // Two runs between the same two: begin at the way.
  if (walk.length === 2) node = Math.min(first.nodeA, first.nodeB);
  return walk.map((link) => {
    const here = node;
    node = link.nodeA === here ? link.nodeB : link.nodeA;
    return stationAt[here] as StationId;
  });
}

interface Forest {
  links: readonly Link[];
  inBlock: readonly boolean[];
  isMain: readonly boolean[];
  stationAt: readonly StationId[];
  pointAt: readonly boolean[];
  /** Nodes of one loop are one. */
  loops: DisjointSets;
}

/** The runs outside rings and loops, outwards from the way and the rings, each before what is beyond it. */
function branchesOf({ links, inBlock, isMain, stationAt, pointAt, loops }: Forest): Branch[] {
  const touching: number[][] = stationAt.map(() => []);
  const points: StationId[][] = stationAt.map(() => []);
  const visited = stationAt.map(() => false);
  const inLoop = stationAt.map(() => false);
  stationAt.forEach((station, node) => {
    const root = loops.find(node);
    if (pointAt[node] && station !== undefined) points[root]?.push(station);
    if (isMain[node]) visited[root] = true;
    if (root !== node) inLoop[root] = true;
  });
  links.forEach(({ nodeA, nodeB }, edge) => {
    if (inBlock[edge]) return;
    touching[loops.find(nodeA)]?.push(edge);
    touching[loops.find(nodeB)]?.push(edge);
  });
  const branches: Branch[] = [];
  const stack: { root: number; cursor: number; branch?: Branch }[] = visited.flatMap((isStart, root) =>
    isStart ? [{ root, cursor: 0 }] : [],
  );
  while (stack.length > 0) {
    const top = stack[stack.length - 1];
    if (!top) break;
    const edge = touching[top.root]?.[top.cursor++];
    if (edge === undefined) {
      stack.pop();
      if (!top.branch) continue;
      top.branch.end = branches.length;
      const parent = top.branch.parent === undefined ? undefined : branches[top.branch.parent];
      if (parent) parent.pointCount += top.branch.pointCount;
      continue;
    }
    const link = links[edge];
    if (!link) continue;
    const node = loops.find(link.nodeA) === top.root ? link.nodeB : link.nodeA;
    const root = loops.find(node);
    if (visited[root]) continue;
    visited[root] = true;
    const branch = branchOf(link, node, stationAt, branches.length, top.branch);
    branch.isPoint = pointAt[node] ?? false;
    branch.points = points[root] ?? [];
    branch.pointCount = branch.points.length;
    branch.hasLoop = (inLoop[root] ?? false) || (inLoop[top.root] ?? false);
    branches.push(branch);
    stack.push({ root, cursor: 0, branch });
  }
  spreadLoops(branches);
  return branches;
}

function branchOf(
  link: Link,
  farNode: number,
  stationAt: readonly StationId[],
  index: number,
  parent: Branch | undefined,
): Branch {
  const far = stationAt[farNode] as StationId;
  const cable = link.cables[0];
  const isFar = (entry: EntryId | undefined): boolean => entry !== undefined && stationOf(entry) === far;
  const [nearEntry, farEntry] = isFar(cable?.to) ? [cable?.from, cable?.to] : [cable?.to, cable?.from];
  return {
    index,
    run: link,
    near: farNode === link.nodeA ? link.b : link.a,
    far,
    nearEntry: nearEntry as EntryId,
    farEntry: farEntry as EntryId,
    ...(parent ? { parent: parent.index } : {}),
    depth: (parent?.depth ?? 0) + 1,
    end: index + 1,
    isPoint: false,
    points: [],
    pointCount: 0,
    hasLoop: false,
  };
}

/** A loop anywhere in what leaves the ring or the way marks all of it. */
function spreadLoops(branches: readonly Branch[]): void {
  for (const branch of branches) {
    if (branch.depth !== 1) continue;
    const all = branches.slice(branch.index, branch.end);
    if (all.some(({ hasLoop }) => hasLoop)) for (const each of all) each.hasLoop = true;
  }
}

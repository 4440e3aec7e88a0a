import type { CurrentSource, Link, Network, Resistor } from "../../shared/electrical/network.ts";
import { seeded } from "../seeded.ts";

/**
 * Any network at all: trees, rings, bridges, parallel leads, shorts of 1 milliohm, links in chains, islands,
 * loads whose current has no way back. Links never close a loop of their own: ngspice refuses those.
 */
export function randomNetwork(seed: number): { network: Network; sources: CurrentSource[] } {
  const random = seeded(seed);
  const whole = (limit: number): number => Math.floor(random() * limit);
  const nodeCount = 3 + whole(60);
  const heldCount = 1 + whole(3);
  const resistors: Resistor[] = [];
  const links: Link[] = [];
  const root = Array.from({ length: nodeCount }, (_, node) => node);
  const find = (node: number): number => (root[node] === node ? node : find(root[node]!));
  const held = Array.from({ length: Math.min(heldCount, nodeCount - 1) }, (_, node) => ({
    node,
    voltageV: node === 0 ? 230 : node === 1 ? 0 : -5,
  }));
  const isHeld = (node: number): boolean => held.some((each) => find(each.node) === find(node));
  const resistance = (): number =>
    random() < 0.1 ? 0.001 : random() < 0.1 ? 20 + 2000 * random() : 0.001 + random();
  for (let node = 1; node < nodeCount; node++) {
    if (random() < 0.06) continue;
    const other = random() < 0.7 ? node - 1 : whole(node);
    if (random() < 0.15 && find(node) !== find(other) && !(isHeld(node) && isHeld(other))) {
      links.push({ a: other, b: node });
      root[find(node)] = find(other);
    } else resistors.push({ a: other, b: node, resistanceOhm: resistance() });
  }
  const extra = whole(1 + nodeCount / 3);
  for (let index = 0; index < extra; index++) {
    const a = whole(nodeCount);
    const b = whole(nodeCount);
    if (a !== b) resistors.push({ a, b, resistanceOhm: resistance() });
  }
  const sources = Array.from({ length: whole(8) }, () => ({
    from: whole(nodeCount),
    to: whole(nodeCount),
    currentA: 32 * random(),
  }));
  return { network: { nodeCount, resistors, links, held }, sources };
}

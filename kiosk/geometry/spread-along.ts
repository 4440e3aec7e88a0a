/** One thing of a row stands at least so far after another, centre to centre. */
export interface Apart {
  before: number;
  after: number;
  by: number;
}

export interface Bounds {
  least: number;
  most: number;
}

export type Spread = { centres: number[] } | { tooTight: Apart[] };

const sweeps = 60;

/**
 * Moves things along one axis so that each keeps its bounds and its distance from those before it, the sum of the
 * squared moves as small as can be (projection on each demand in turn with what it moved before given back, after
 * Dykstra; then once through the row so that every demand is met exactly). The demands must have no circle. Where
 * they cannot all be met it gives the chain of demands that is too long for the room.
 */
export const spreadAlong = (
  wanted: readonly number[],
  bounds: readonly Bounds[],
  apart: readonly Apart[],
): Spread => {
  const count = wanted.length;
  const earliest = bounds.map(({ least }) => least);
  const latest = bounds.map(({ most }) => most);
  const pushedBy = new Map<number, Apart>();
  const heldBy = new Map<number, Apart>();
  for (let turn = 0; turn < count; turn += 1)
    for (const one of apart) {
      const from = (earliest[one.before] ?? 0) + one.by;
      if (from > (earliest[one.after] ?? 0)) {
        earliest[one.after] = from;
        pushedBy.set(one.after, one);
      }
      const to = (latest[one.after] ?? 0) - one.by;
      if (to < (latest[one.before] ?? 0)) {
        latest[one.before] = to;
        heldBy.set(one.before, one);
      }
    }
  const stuck = earliest.findIndex((from, i) => from > (latest[i] ?? 0) + 1e-6);
  if (stuck >= 0) return { tooTight: chainThrough(stuck, pushedBy, heldBy) };

  const centres = wanted.map((at, i) => Math.min(Math.max(at, earliest[i] ?? 0), latest[i] ?? 0));
  const given = apart.map(() => 0);
  for (let sweep = 0; sweep < sweeps; sweep += 1) {
    for (const [i, { before, after, by }] of apart.entries()) {
      const back = given[i] ?? 0;
      const a = (centres[before] ?? 0) + back;
      const b = (centres[after] ?? 0) - back;
      const push = Math.max(0, (a + by - b) / 2);
      centres[before] = a - push;
      centres[after] = b + push;
      given[i] = push;
    }
    for (const [i, at] of centres.entries())
      centres[i] = Math.min(Math.max(at, bounds[i]?.least ?? at), bounds[i]?.most ?? at);
  }
  return { centres: settled(centres, earliest, latest, apart) };
};

/** From the first of the row to the last, each as near as can be to where it is wanted. */
const settled = (
  wanted: readonly number[],
  earliest: readonly number[],
  latest: readonly number[],
  apart: readonly Apart[],
): number[] => {
  const from = [...earliest];
  const set: number[] = [];
  const order = wanted.map((_, i) => i).sort((a, b) => (earliest[a] ?? 0) - (earliest[b] ?? 0) || a - b);
  for (const i of order) {
    const at = Math.max(Math.min(wanted[i] ?? 0, latest[i] ?? 0), from[i] ?? 0);
    set[i] = at;
    for (const { before, after, by } of apart)
      if (before === i) from[after] = Math.max(from[after] ?? 0, at + by);
  }
  return set;
};

const chainThrough = (
  stuck: number,
  pushedBy: ReadonlyMap<number, Apart>,
  heldBy: ReadonlyMap<number, Apart>,
): Apart[] => {
  const chain: Apart[] = [];
  for (let one = pushedBy.get(stuck); one; one = pushedBy.get(one.before)) chain.push(one);
  for (let one = heldBy.get(stuck); one; one = heldBy.get(one.after)) chain.push(one);
  return chain;
};

/** Draws from numbers that come one after the other; the same numbers draw the same. */
export interface Draw {
  /** A whole number from the first to the last, both included. */
  between: (least: number, most: number) => number;
  from: <Item>(items: readonly [Item, ...Item[]]) => Item;
  /** Some of a list, each once, in an order that is drawn. */
  some: <Item>(items: readonly Item[], count: number) => Item[];
}

/** Repeatable numbers in [0, 1) from a seed of 32 bits: mulberry32, public domain, from memory. */
export function numbersOf(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** Draws by a seed: the same on every machine. */
export function drawBy(seed: number): Draw {
  const next = numbersOf(seed);
  const between: Draw["between"] = (least, most) => least + Math.floor(next() * (most - least + 1));
  return {
    between,
    from: (items) => items[between(0, items.length - 1)] ?? items[0],
    some: (items, count) => {
      const left = [...items];
      return Array.from({ length: Math.min(count, left.length) }, () =>
        left.splice(between(0, left.length - 1), 1),
      ).flat();
    },
  };
}

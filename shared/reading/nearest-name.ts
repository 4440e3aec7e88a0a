/** Least number of letters put in, left out, replaced or swapped with their neighbour that turns `a` into `b`. */
export function letterDistance(a: string, b: string): number {
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= b.length; column += 1) {
      const same = a[row - 1] === b[column - 1];
      const isSwap = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      current.push(
        Math.min(
          (above[column] ?? 0) + 1,
          (current[column - 1] ?? 0) + 1,
          (above[column - 1] ?? 0) + (same ? 0 : 1),
          isSwap ? (before[column - 2] ?? 0) + 1 : Infinity,
        ),
      );
    }
    before = above;
    above = current;
  }
  return above[b.length] ?? 0;
}

/** Among more names than this nobody is offered one: a file with so many wrong ones must be refused soon as well. */
const comparedCount = 200;

/**
 * The known name somebody most likely meant, or undefined where none is near. A name written without its unit
 * (`length` for `lengthM`) is near however many letters the unit has.
 */
export function nearestName(written: string, names: readonly string[]): string | undefined {
  const lower = written.toLowerCase();
  const unitLeftOut = names.find((name) => lower.length >= 3 && name.toLowerCase().startsWith(lower));
  if (unitLeftOut !== undefined) return unitLeftOut;
  const furthest = Math.min(3, Math.floor(written.length / 3));
  let best: { name: string; distance: number } | undefined;
  for (const name of names.slice(0, comparedCount)) {
    if (Math.abs(name.length - written.length) > furthest) continue;
    const distance = letterDistance(lower, name.toLowerCase());
    if (distance <= furthest && (!best || distance < best.distance)) best = { name, distance };
  }
  return best?.name;
}

/**
 * A total shared out in equal parts among takers of which each has a most: what one cannot take goes to the others in
 * equal parts. In the order of the takers; what nobody can take is left over.
 */
export function equalParts(total: number, most: readonly number[]): number[] {
  const parts = most.map(() => 0);
  const order = most.map((_, index) => index).sort((a, b) => (most[a] ?? 0) - (most[b] ?? 0));
  let left = total;
  order.forEach((index, rank) => {
    const part = Math.min(most[index] ?? 0, left / (order.length - rank));
    parts[index] = part;
    left -= part;
  });
  return parts;
}

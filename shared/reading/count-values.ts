/** True where a parsed JSON value is made of more values than `most`, those inside it counted; stops there. */
export function isMoreThan(most: number, root: unknown): boolean {
  const waiting: unknown[] = [root];
  let count = 0;
  while (waiting.length > 0) {
    const value = waiting.pop();
    count += 1;
    if (count + waiting.length > most) return true;
    if (typeof value === "object" && value !== null)
      for (const inner of Object.values(value)) waiting.push(inner);
  }
  return false;
}

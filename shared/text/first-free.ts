/** A name that nothing has yet: itself, or with the first count from 2 that is free behind it. */
export function firstFree(name: string, isTaken: (name: string) => boolean, between = "-"): string {
  let free = name;
  for (let count = 2; isTaken(free); count += 1) free = `${name}${between}${count}`;
  return free;
}

import type { Source } from "./source.ts";

/** Single values of one topic: each name gives its number, `sources` says where each one comes from. */
export type Sourced<Name extends string> = { readonly [K in Name]: number } & {
  readonly sources: { readonly [K in Name]: Source };
};

/**
 * Makes a table of single values from `name: [number, source]`. The unit ends the name. Writing them as pairs
 * keeps a number from being added without its source.
 */
export function sourced<Name extends string>(pairs: Record<Name, readonly [number, Source]>): Sourced<Name> {
  const names = Object.keys(pairs) as Name[];
  const pick = <T>(read: (name: Name) => T) =>
    Object.fromEntries(names.map((name) => [name, read(name)])) as Record<Name, T>;
  return { ...pick((name) => pairs[name][0]), sources: pick((name) => pairs[name][1]) };
}

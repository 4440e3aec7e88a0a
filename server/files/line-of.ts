import { findNodeAtLocation, parseTree } from "jsonc-parser";

/** The line, counted from 1, on which a part of a JSON text begins; of what it is missing in, where it is not there. */
export function lineOf(text: string, path: readonly PropertyKey[]): number {
  const root = parseTree(text);
  const segments = path.map((step) => (typeof step === "number" ? step : String(step)));
  for (let count = segments.length; root && count >= 0; count -= 1) {
    const node = findNodeAtLocation(root, segments.slice(0, count));
    if (node) return text.slice(0, node.offset).split("\n").length;
  }
  return 1;
}

/** The line of a field named as in `a.b[2].c`. */
export const lineOfField = (text: string, field: string): number =>
  lineOf(
    text,
    [...field.matchAll(/[^.[\]]+/g)].map(([part]) => (/^\d+$/.test(part) ? Number(part) : part)),
  );

import type { Source } from "./source.ts";

/** Whether a value was only remembered: seen neither in its document nor in a copy of it. */
export function isFromMemory(source: Source): boolean {
  return source.kind === "from memory" || ("checked" in source && source.checked === "from memory");
}

/** A text with its `{gaps}` filled; one that `say` has nothing for stays as it is written. */
export const fillGaps = (text: string, say: (name: string) => string | undefined): string =>
  text.replace(/\{(\w+)\}/g, (gap, name: string) => say(name) ?? gap);

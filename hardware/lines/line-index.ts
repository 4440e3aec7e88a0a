declare const kind: unique symbol;

/** Which output and input of the chain, or which pin of a direct board. Never leaves hardware/. */
export type LineIndex = number & { readonly [kind]: "line" };

export const lineIndex = (index: number): LineIndex => index as LineIndex;

/** All lines of a board, in order. */
export const allLines = (lineCount: number): LineIndex[] =>
  Array.from({ length: lineCount }, (_, index) => lineIndex(index));

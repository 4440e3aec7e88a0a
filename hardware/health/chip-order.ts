import type { LineIndex } from "../lines/line-index.ts";

const chipLines = 8;
/** More chips than this are not named one by one. */
const mostNamed = 4;

interface Place {
  chip: number;
  isTurned: boolean;
}

/**
 * Where inputs and outputs of a chain stand in different orders, from who answered each line of an empty board that
 * was pulled alone: chips that changed places, all chips the other way along, a chip whose eight wires are the other
 * way round. The word that goes round both chains cannot tell it: their lengths are right.
 *
 * @param heardBy for every line, the lines that answered it
 * @returns such as `3 → 7, 7 → 3` or `3: A → H` (output chip, and the input chip that answers it); undefined where the
 * orders agree, or where what answers is no order of chips
 */
export function chipOrder(heardBy: readonly (readonly LineIndex[])[]): string | undefined {
  const chipCount = Math.ceil(heardBy.length / chipLines);
  const places = Array.from({ length: chipCount }, (_, chip) => placeOf(chip, heardBy));
  if (places.some((place) => place === undefined)) return undefined;
  const misplaced = places.flatMap((place, chip): string[] => {
    if (place === undefined || (place.chip === chip && !place.isTurned)) return [];
    return [
      place.chip === chip ? `${chip}: A → H` : `${chip} → ${place.chip}${place.isTurned ? " (A → H)" : ""}`,
    ];
  });
  if (misplaced.length === 0) return undefined;
  const named = misplaced.slice(0, mostNamed);
  return [...named, ...(misplaced.length > mostNamed ? [`… (${misplaced.length})`] : [])].join(", ");
}

/** The one chip that answers all lines of a chip that are answered at all, in the same order or the opposite one. */
function placeOf(chip: number, heardBy: readonly (readonly LineIndex[])[]): Place | undefined {
  const answers = heardBy
    .slice(chip * chipLines, (chip + 1) * chipLines)
    .flatMap((heard, bit) => (heard.length === 0 ? [] : [{ bit, heard }]));
  const [first] = answers;
  if (first === undefined) return undefined;
  const answering = Math.floor(first.heard[0]! / chipLines);
  const isAll = (at: (bit: number) => number): boolean =>
    answers.every(({ bit, heard }) => heard.length === 1 && heard[0] === answering * chipLines + at(bit));
  if (isAll((bit) => bit)) return { chip: answering, isTurned: false };
  if (isAll((bit) => chipLines - 1 - bit)) return { chip: answering, isTurned: true };
  return undefined;
}

/** A point of the paper, from its top left. */
export interface Point {
  x: number;
  y: number;
}

type Piece = { isLevel: boolean; at: number; from: number; to: number };
const piecesOf = (line: readonly Point[]): Piece[] =>
  line.slice(1).map((b, i) => {
    const a = line[i] ?? b;
    const isLevel = Math.abs(a.y - b.y) < Math.abs(a.x - b.x);
    const ends = isLevel ? [a.x, b.x] : [a.y, b.y];
    return { isLevel, at: isLevel ? a.y : a.x, from: Math.min(...ends), to: Math.max(...ends) };
  });
const runTogether = (a: readonly Piece[], b: readonly Piece[]): boolean =>
  a.some((one) =>
    b.some(
      (other) =>
        one.isLevel === other.isLevel &&
        Math.abs(one.at - other.at) < 1 &&
        Math.min(one.to, other.to) - Math.max(one.from, other.from) > 1,
    ),
  );

/** A line moved sideways: down where it runs level, to the right where it runs upright, so that lanes never cross. */
export function moved(line: readonly Point[], byPt: number): Point[] {
  const pieces = piecesOf(line);
  return line.map(({ x, y }, i) => {
    const beside = [pieces[i - 1], pieces[i]].filter((piece) => piece !== undefined);
    return {
      x: x + (beside.some(({ isLevel }) => !isLevel) ? byPt : 0),
      y: y + (beside.some(({ isLevel }) => isLevel) ? byPt : 0),
    };
  });
}

/** The middle of the longest piece of a line. */
export function middleOf(line: readonly Point[]): Point {
  let [best, longest] = [line[0] ?? { x: 0, y: 0 }, -1];
  line.slice(1).forEach((b, i) => {
    const a = line[i] ?? b;
    const length = Math.hypot(a.x - b.x, a.y - b.y);
    if (length > longest) [best, longest] = [{ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, length];
  });
  return best;
}

/** How far each cable lies beside the way it takes: those that run together lie side by side. */
export function lanesOf(lines: readonly Point[][], pitchPt: number): number[] {
  const lanes: number[] = [];
  const pieces = lines.map(piecesOf);
  for (const mine of pieces) {
    const taken = new Set(lanes.filter((_, j) => runTogether(mine, pieces[j] ?? [])));
    let lane = 0;
    while (taken.has(lane)) lane = lane > 0 ? -lane : 1 - lane;
    lanes.push(lane);
  }
  return lanes.map((lane) => lane * pitchPt);
}

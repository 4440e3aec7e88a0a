import { type BoardDescription, boardSchema } from "../../shared/board/board.schema.ts";
import { readBoard } from "../../shared/board/read-board.ts";

const stations = [
  { id: "way-1", kind: "way", letters: "ab", label: "1" },
  { id: "socket-1", kind: "socket-outlet", letters: "abc", label: "1" },
  { id: "socket-2", kind: "socket-outlet", letters: "ab", label: "2" },
  { id: "socket-3", kind: "socket-outlet", letters: "a", label: "3" },
] as const;

/** A board of 24 lines for checks of the server: one way and three socket outlets, without codes unless asked. */
export function smallBoard(codes?: BoardDescription["codes"]): {
  board: BoardDescription;
  bytes: Uint8Array;
} {
  let lineCount = 0;
  const line = (): number => lineCount++;
  let codeCount = 0;
  const description = {
    version: 1,
    id: "test-small",
    name: "Small board for checks",
    wiring: codes
      ? {
          kind: "chain",
          pins: { shiftClock: 11, dataOut: 10, latch: 8, load: 7, dataIn: 9, codeIn: 25 },
          lineCount: 24,
          codeCount: 16,
        }
      : { kind: "direct", pins: Array.from({ length: 24 }, (_, index) => index + 2) },
    ...(codes ? { codes } : {}),
    stations: stations.map(({ id, kind, letters, label }, index) => ({
      id,
      kind,
      label,
      face: { x: index / 4, y: 0, width: 0.2, height: 1 },
      ...(kind === "socket-outlet" ? { settings: { gangs: 2 } } : {}),
      entries: [...letters].map((letter) => ({
        letter,
        side: "feed",
        lines: { L: line(), N: line(), E: line() },
        ...(codes ? { codeContacts: [codeCount++, codeCount++] } : {}),
      })),
    })),
  };
  const bytes = Buffer.from(JSON.stringify(description));
  const read = readBoard(bytes.toString("utf8"), "test-small.json");
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return { board: read.value, bytes };
}

/** The same with two probe leads on it and, where asked, a test face at every socket outlet. */
export function boardWithProbes({ hasFronts = false } = {}): BoardDescription {
  const { board } = smallBoard();
  let lineCount = 26;
  const withFront = (station: BoardDescription["stations"][number]) =>
    hasFronts && station.kind === "socket-outlet"
      ? { ...station, front: { L: lineCount++, N: lineCount++, E: lineCount++ } }
      : station;
  const stations = board.stations.map(withFront);
  const pins = { shiftClock: 11, dataOut: 10, latch: 8, load: 7, dataIn: 9 };
  return boardSchema.parse({
    ...board,
    stations,
    wiring:
      lineCount > 26
        ? { kind: "chain", pins, lineCount }
        : { kind: "direct", pins: Array.from({ length: lineCount }, (_, index) => index + 2) },
    probes: { red: 24, black: 25 },
  });
}

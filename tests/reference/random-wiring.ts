import { type Wiring, wiringSchema } from "../../shared/wiring/wiring.schema.ts";
import { seeded } from "../seeded.ts";

const kinds = {
  way: "way",
  socket: "socket-outlet",
  box: "junction-box",
  fcu: "fcu",
  rose: "ceiling-rose",
  switch: "plate-switch",
  light: "luminaire",
  appliance: "appliance",
} as const;
const letters: Record<string, string[]> = {
  way: ["a", "b", "c", "d"],
  socket: ["a", "b", "c", "d"],
  box: ["a", "b", "c", "d"],
  fcu: ["a", "b", "c", "d"],
  rose: ["a", "b", "s", "t"],
  switch: ["s", "a", "t"],
  light: ["a", "b"],
  appliance: ["a"],
};

/** Any wiring a board could hold: rings, spurs, FCUs, lights, and now and then crossed, missing or shorted cores. */
export function randomWiring(seed: number, stationCount?: number): Wiring {
  const random = seeded(seed);
  const whole = (limit: number): number => Math.floor(random() * limit);
  const pick = <T>(list: readonly T[]): T => list[whole(list.length)]!;
  const count = stationCount ?? 4 + whole(20);
  const words = ["way", "way", ...Array.from({ length: count }, () => pick(Object.keys(kinds)))];
  const stations = words.map((word, index) => ({
    id: `${word}-${index}`,
    kind: kinds[word as keyof typeof kinds],
    ...(word === "switch" && random() < 0.4 ? { settings: { switching: "two-way" } } : {}),
  }));
  const entry = (index: number): string => `${stations[index]!.id}.${pick(letters[words[index]!]!)}`;
  const cables = new Map<string, Record<string, unknown>>();
  const cable = (from: string, to: string): void => {
    if (from === to) return;
    const oddity = random();
    cables.set([from, to].sort().join("~"), {
      from,
      to,
      csaMm2: pick([1, 1.5, 2.5, 4]),
      lengthM: Math.round(1 + 300 * random()) / 10,
      ...(oddity < 0.05
        ? {
            conductors: [
              ["L", "N"],
              ["N", "L"],
              ["E", "E"],
            ],
          }
        : {}),
      ...(oddity > 0.92
        ? {
            conductors: [
              ["L", "L"],
              ["N", "N"],
            ],
          }
        : {}),
      ...(oddity > 0.98
        ? {
            conductors: [
              ["L", "L"],
              ["N", "E"],
            ],
          }
        : {}),
    });
  };
  for (let index = 1; index < stations.length; index++) {
    if (random() < 0.9) cable(entry(index), entry(random() < 0.6 ? index - 1 : whole(index)));
  }
  for (let extra = whole(1 + count / 2); extra > 0; extra--)
    cable(entry(whole(stations.length)), entry(whole(stations.length)));
  return wiringSchema.parse({
    version: 1,
    stations,
    cables: [...cables.values()],
    loads: stations
      .filter(() => random() < 0.5)
      .map(({ id }) => ({ station: id, powerW: 10 + Math.round(3000 * random()) })),
  });
}

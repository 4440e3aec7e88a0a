import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readCases } from "../../../server/cases/wiring-case.ts";
import { jsonFilesIn } from "../../../server/files/read-file-with.ts";
import { entryId, type StationId, stationId } from "../../../shared/board/ids.ts";
import { buildModel } from "../../../shared/circuit/build-model.ts";
import type { CircuitModel } from "../../../shared/circuit/model.ts";
import { judge } from "../../../shared/rules/judge.ts";
import type { Verdict } from "../../../shared/rules/verdict.ts";
import { withCoresStated } from "../../../shared/wiring/same-wiring.ts";
import type { CableSpec, Wiring } from "../../../shared/wiring/wiring.schema.ts";
import { randomShare } from "../../breadth.ts";
import { holds } from "../../holds.ts";
import { anyStatedWiring, anyWiring, board, boardContacts, renamed } from "./any-wiring.ts";

const runs = { numRuns: 300 * randomShare };
const bytes = (wiring: Wiring): string => JSON.stringify(judge(wiring));

/** What a verdict says with all ids mapped, in an order that does not hang on them. */
const said = (
  { findings, suppressed, undetermined, proposal, requirements }: Verdict,
  map: (id: string) => string,
) => {
  const ids = (places: readonly { id: string }[]): string[] => places.map(({ id }) => mapId(id, map)).sort();
  const line = (parts: unknown[]): string => JSON.stringify(parts);
  return {
    findings: findings
      .map(({ rule, variant, weight, causes, places }) =>
        line([rule, variant, weight, ids(causes), ids(places)]),
      )
      .sort(),
    suppressed: suppressed.map(({ rule, variant, causes }) => line([rule, variant, ids(causes)])).sort(),
    undetermined: undetermined
      .map(({ rule, place, field }) => line([rule, mapId(place.id, map), field]))
      .sort(),
    proposal,
    answers: requirements.map(({ answer }) => answer),
  };
};

/** Maps a station, entry, contact, cable or conductor id by its entries; pairs are sorted again. */
const mapId = (id: string, map: (id: string) => string): string =>
  id
    .split("~")
    .map((end) => map(end))
    .sort()
    .join("~");

const plain = (id: string): string => id;

describe("a verdict", () => {
  it("comes for anything that can be plugged, the same bytes each time, each finding with an id of its own", () => {
    holds(
      fc.property(fc.oneof(anyWiring, anyStatedWiring), (wiring) => {
        const first = bytes(wiring);
        expect(bytes(structuredClone(wiring))).toBe(first);
        const { findings, suppressed } = JSON.parse(first) as Verdict;
        const ids = [...findings, ...suppressed].map(({ id }) => id);
        expect(new Set(ids).size).toBe(ids.length);
      }),
      runs,
    );
  });

  it("does not hang on the order of cables, stations and cores, nor on which end of a cable is named first", () => {
    const turned = ({ from, to, conductors, ...rest }: CableSpec): CableSpec => ({
      ...rest,
      from: to,
      to: from,
      ...(conductors
        ? { conductors: conductors.map(([a, b]): [typeof b, typeof a] => [b, a]).reverse() }
        : {}),
    });
    holds(
      fc.property(anyWiring, (wiring) => {
        const other = {
          ...wiring,
          stations: [...wiring.stations].reverse(),
          cables: wiring.cables.map(turned).reverse(),
        };
        expect(bytes(other)).toBe(bytes(wiring));
      }),
      runs,
    );
  });

  it("does not hang on whether a cable states its cores or leaves them straight", () => {
    holds(
      fc.property(anyWiring, (wiring) => {
        expect(bytes(withCoresStated(wiring))).toBe(bytes(wiring));
      }),
      runs,
    );
    for (const { name, wiring } of readCases(jsonFilesIn("tests/shared/rules/cases")))
      expect(bytes(withCoresStated(wiring)), name).toBe(bytes(wiring));
  });

  it("does not hang on what stations are called, and so not on which way round a ring is walked", () => {
    // Names in the opposite order of the alphabet: what came first comes last.
    const rename = (station: string): string => {
      const at = board.findIndex(({ id }) => id === station);
      return at < 0 ? station : `${"zyxwvutsrqponmlkjihgfedcba"[at] ?? "a"}-${station}`;
    };
    const back = (id: string): string => id.replace(/^[a-z]-/, "");
    holds(
      fc.property(anyWiring, (wiring) => {
        expect(said(judge(renamed(wiring, rename)), back)).toEqual(said(judge(wiring), plain));
      }),
      runs,
    );
  });

  it("does not hang on which of two entries of one side a cable is in", () => {
    const swapped: Record<string, string> = {
      "way-1.a": "way-1.c",
      "socket-1.a": "socket-1.d",
      "socket-2.b": "socket-2.c",
      "box-1.a": "box-1.b",
      "fcu-1.a": "fcu-1.b",
      "fcu-1.c": "fcu-1.d",
      "rose-1.a": "rose-1.b",
      "lamp-1.a": "lamp-1.b",
    };
    const pairs = new Map([
      ...Object.entries(swapped),
      ...Object.entries(swapped).map(([a, b]) => [b, a] as const),
    ]);
    const swap = (id: string): string => {
      const [station, letter, role] = id.split(".");
      const other = pairs.get(`${station ?? ""}.${letter ?? ""}`);
      return other ? [other, role].filter((word) => word !== undefined).join(".") : id;
    };
    holds(
      fc.property(anyWiring, (wiring) => {
        const other = {
          ...wiring,
          cables: wiring.cables.map((cable) => ({
            ...cable,
            from: swap(cable.from) as CableSpec["from"],
            to: swap(cable.to) as CableSpec["to"],
          })),
        };
        expect(said(judge(other), swap)).toEqual(said(judge(wiring), plain));
      }),
      runs,
    );
  });
});

describe("a connection unit without load", () => {
  /** Circuits with nothing to mend, and the places a fused spur may leave: on the ring, the way, or full-rating cable. */
  const sound = readCases(jsonFilesIn("tests/shared/rules/cases"))
    .filter(({ wiring }) => !wiring.readings && !wiring.taskStations)
    .map(({ wiring }) => ({ wiring, verdict: judge(wiring), model: buildModel(wiring) }))
    .filter(({ verdict }) => verdict.findings.length === 0 && verdict.undetermined.length === 0);

  const mainStations = (model: CircuitModel): StationId[] => {
    const inSpurs = new Set(
      model.zones.flatMap(({ spurs }) =>
        spurs.spurs.flatMap(({ branches }) => branches.map(({ far }) => far)),
      ),
    );
    const kinds = ["way", "socket-outlet", "junction-box"];
    return model.zones
      .filter(({ isFused, spurs }) => !isFused && spurs.legs.length === 0)
      .flatMap(({ stations }) => stations)
      .filter((id) => !inSpurs.has(id) && kinds.includes(model.stations.get(id)?.kind ?? ""));
  };

  it("never makes a sound circuit worse, wherever on its main cables it is put", () => {
    expect(sound.length).toBeGreaterThan(30);
    for (const { wiring, model } of sound)
      for (const station of mainStations(model)) {
        const used = new Set(wiring.cables.flatMap(({ from, to }) => [from, to]));
        const free = [..."abcdef"]
          .map((letter) => entryId(station, letter))
          .find((entry) => !used.has(entry));
        if (!free || model.stations.get(station)?.settings === undefined) continue;
        const fcu = stationId("fcu-9");
        // Cable as good as the best there, so that it is the unit that is judged and not its cable.
        const csaMm2 = Math.max(...wiring.cables.map((cable) => cable.csaMm2 ?? 0));
        const more: Wiring = {
          ...wiring,
          stations: [
            ...wiring.stations,
            { id: fcu, kind: "fcu", settings: { fuseRatingA: 3, switched: true } },
          ],
          cables: [...wiring.cables, { from: free, to: entryId(fcu, "a"), csaMm2, lengthM: 1 }],
        };
        const { findings } = judge(more);
        expect(findings.map(({ id }) => `${wiring.title ?? ""} ${station}: ${id}`)).toEqual([]);
      }
  });
});

describe("a contact that the board cannot read", () => {
  const unplugged = (wiring: Wiring, contacts: readonly string[]): Wiring => ({
    ...wiring,
    cables: wiring.cables.map((cable) => ({
      ...cable,
      ...(cable.conductors
        ? {
            conductors: cable.conductors.filter(
              ([a, b]) => !contacts.includes(`${cable.from}.${a}`) && !contacts.includes(`${cable.to}.${b}`),
            ),
          }
        : {}),
    })),
  });

  it("never adds a finding, whether the lead there is still named or not", () => {
    const someContacts = fc.shuffledSubarray(boardContacts, { minLength: 1, maxLength: 2 });
    holds(
      fc.property(fc.oneof(anyWiring, anyStatedWiring), someContacts, (wiring, unknown) => {
        const ids = new Set(judge(wiring).findings.map(({ id }) => id));
        for (const sensed of [wiring, unplugged(wiring, unknown)]) {
          const { findings } = judge({ ...sensed, unknown });
          expect(findings.map(({ id }) => id).filter((id) => !ids.has(id))).toEqual([]);
        }
      }),
      runs,
    );
  });

  /** A board without a lead has no contact in use that could be unreadable. */
  const somethingPlugged = anyWiring.filter(({ cables }) => cables.length > 0);

  it("is said to be undetermined, by the board's fault, and the proposal is that nothing can be said", () => {
    holds(
      fc.property(somethingPlugged, fc.nat(), (wiring, pick) => {
        const plugged = wiring.cables.flatMap(({ from, to }) => [from, to]);
        const entry = plugged[pick % plugged.length]!;
        const unknown = boardContacts.find((id) => id.startsWith(`${entry}.`))!;
        const { undetermined, proposal } = judge({ ...wiring, unknown: [unknown] });
        expect(
          undetermined.filter(({ cause, place }) => cause === "board" && place.id === unknown),
        ).not.toEqual([]);
        expect(proposal).toBe("cannot-say");
      }),
      runs,
    );
  });
});

import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { requirementOf } from "../../../kiosk/desk/author/ask-kinds.ts";
import {
  slugOf,
  withAnswer,
  withHint,
  withoutHints,
  withLoad,
  withoutStation,
  withParts,
  withSetting,
  withStation,
} from "../../../kiosk/desk/author/draft.ts";
import { withPlace } from "../../../kiosk/desk/author/draft-plan.ts";
import { entryId, stationId } from "../../../shared/board/ids.ts";
import type { BoardStationView } from "../../../shared/protocol/author-view.ts";
import type { Built, Scenario } from "../../../shared/scenario/scenario.schema.ts";
import { readDraft } from "../../../shared/scenario/read-draft.ts";
import { none } from "./empty-draft.ts";

const [way, first, second, fcu] = [
  stationId("way-1"),
  stationId("socket-1"),
  stationId("socket-2"),
  stationId("fcu-1"),
];
const onBoard = (id: typeof way, kind: BoardStationView["kind"], settings = {}): BoardStationView => ({
  id,
  kind,
  label: "1",
  entries: { feed: 2 },
  settings,
});
const stations = [
  onBoard(way, "way"),
  onBoard(first, "socket-outlet", { gangs: 2 }),
  onBoard(second, "socket-outlet", { gangs: 1 }),
  onBoard(fcu, "fcu"),
];
const house = stations.reduce(
  (draft, station) => withPlace(withStation(draft, station), station.id, { x: 0, y: 0 }),
  none,
);
const built: Built = { cables: [{ from: entryId(way, "a"), to: entryId(first, "a"), csaMm2: 2.5 }] };

describe("a draft", () => {
  it("takes a station with what the board has there and what is usually fitted", () => {
    expect(house.stations.map(({ settings }) => settings)).toEqual([
      { deviceStandard: "BS EN 60898", deviceCurve: "B", deviceRatingA: 32, rcdMa: 30 },
      { gangs: 2 },
      { gangs: 1 },
      { fuseRatingA: 13, switched: true },
    ]);
  });

  it("leaves a setting to the learner, or fixes it, and never both", () => {
    const chosen = withSetting(house, fcu, "fuseRatingA", "chosen");
    expect(chosen.stations[3]).toMatchObject({ settings: { switched: true }, chosen: ["fuseRatingA"] });
    const fixed = withSetting(chosen, fcu, "fuseRatingA", 3);
    expect(fixed.stations[3]).toEqual({ ...house.stations[3], settings: { switched: true, fuseRatingA: 3 } });
    expect(withParts(withParts(house, { fuseRatingA: [3, 13] }), { fuseRatingA: [] }).parts).toEqual(
      house.parts,
    );
  });

  it("forgets all that was said of a station that is taken out, and nothing else", () => {
    const asked: Scenario = [
      requirementOf({ ...choice, kind: "served", stations: [first, second] }, house),
      requirementOf({ ...choice, kind: "in-ring", stations: [first] }, house),
      requirementOf({ ...choice, kind: "through-fcu", stations: [second], fcu }, house),
    ].reduce(
      (draft, one) => ({ ...draft, requirements: [...draft.requirements, ...(one ? [one] : [])] }),
      withLoad(house, first, 2000),
    );
    const answered = withAnswer(withAnswer(asked, "model", built, ""), "wrong", { cables: [] }, "nothing");
    const without = withoutStation(answered, first);
    expect(without.requirements).toEqual([
      { kind: "served", stations: [second] },
      { kind: "through-fcu", stations: [second], fcu },
    ]);
    expect(without.loads).toEqual([]);
    expect(without.plan.places.map(({ station }) => station)).not.toContain(first);
    expect(without.modelAnswers).toEqual([]);
    expect(without.wrongAnswers).toHaveLength(1);
    expect(withoutStation(answered, fcu).requirements.map(({ kind }) => kind)).toEqual(["served", "in-ring"]);
  });

  it("says of each wrong answer once what it is called, and of what was found that there is a circuit", () => {
    const twice = withAnswer(withAnswer(house, "wrong", built, "open"), "wrong", built, "open");
    expect(twice.wrongAnswers.map(({ name }) => name)).toEqual(["open", "open 2"]);
    expect(withAnswer(house, "asFound", built, "").isExistingCircuit).toBe(true);
  });

  it("has its id from its title", () => {
    expect(slugOf("  The two rooms! ")).toBe("the-two-rooms");
    expect(slugOf("Łącznik i żyła")).toBe("lacznik-i-zyla");
    expect(slugOf("!?")).toBe("");
  });
});

const choice = { stations: [], way: undefined, fcu: undefined, by: undefined, mostA: 13, ratingA: [] };

describe("what is asked", () => {
  it.each([
    ["served", {}],
    ["ring", {}],
    ["device", { way }],
    ["kept", {}],
  ] as const)("is not whole for %s while something of it is not chosen", (kind, said) => {
    expect(requirementOf({ ...choice, ...said, kind }, house)).toBeUndefined();
  });

  it.each([
    [{ kind: "radial", way } as const, { kind: "shape", of: way, shape: "radial" }],
    [
      { kind: "own-switch", stations: [first], by: fcu } as const,
      { kind: "own-switch", stations: [first], by: fcu },
    ],
    [{ kind: "fuse", stations: [first], mostA: 3 } as const, { kind: "fuse", stations: [first], mostA: 3 }],
    [{ kind: "thrift" } as const, { kind: "thrift", csaMm2: [1.5, 2.5] }],
    [{ kind: "device", way, ratingA: [20] } as const, { kind: "device", way, ratingA: [20] }],
  ])("is a requirement as it stands in a scenario: %j", (said, expected) => {
    expect(requirementOf({ ...choice, ...said }, house)).toEqual(expected);
  });

  it("keeps the cables that were found, by their ids", () => {
    const found = withAnswer(house, "asFound", built, "");
    expect(requirementOf({ ...choice, kind: "kept" }, found)).toEqual({
      kind: "kept",
      cables: ["socket-1.a~way-1.a"],
    });
  });
});

describe("hints of a task's own", () => {
  const three = [1, 2, 3].map((at) => ({ en: `hint ${at}`, pl: `podpowiedź ${at}` }));
  const hinted: Scenario = { ...house, hints: three };

  it("are said anew one at a time, in one language; nothing said leaves what was there", () => {
    expect(withHint(hinted, 1, "pl", "Spójrz na pole.").hints).toEqual([
      three[0],
      { en: "hint 2", pl: "Spójrz na pole." },
      three[2],
    ]);
    expect(withHint(hinted, 1, "pl", "")).toEqual(hinted);
    expect(withHint(house, 0, "en", "Look.")).toEqual(house);
  });

  it("are three that a draft may be kept with, or none", () => {
    const shipped = JSON.parse(readFileSync("scenarios/first-spur.json", "utf8")) as Scenario;
    const isKept = (draft: Scenario): boolean => readDraft(draft, "draft").ok;
    expect(isKept(withHint({ ...shipped, hints: three }, 0, "en", "Look."))).toBe(true);
    expect(isKept(withoutHints(shipped))).toBe(true);
    expect(isKept({ ...shipped, hints: three.slice(1) })).toBe(false);
    expect(withoutHints(hinted)).not.toHaveProperty("hints");
  });
});

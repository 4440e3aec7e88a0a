import firstSpur from "../../scenarios/first-spur.json" with { type: "json" };
import { cableId, type ContactId, contactId, entryId, frontId, stationId } from "../../shared/board/ids.ts";
import type {
  AttemptView,
  BenchView,
  DeadView,
  FindingView,
  ReleasedOutcome,
  SensedCable,
  VerdictView,
} from "../../shared/protocol/bench-view.ts";
import type { FaultName } from "../../shared/electrical/fault-name.ts";
import type { LoadView } from "../../shared/protocol/load-view.ts";
import type { ProgressView } from "../../shared/protocol/progress-view.ts";
import type { TestView } from "../../shared/protocol/test-view.ts";
import { deadSteps } from "../../shared/protocol/attempt-words.ts";
import type { StrippedScenario } from "../../shared/scenario/scenario.schema.ts";
import { cableTable } from "../../server/view/cable-table.ts";
import { smallFace, workshopFace } from "./faces.ts";

const { modelAnswers: _model, wrongAnswers: _wrong, hints: _hints, ...stripped } = firstSpur;
export const spurScenario = stripped as unknown as StrippedScenario;

type Spot = [x: number, y: number];
const line = (...spots: Spot[]) => spots.map(([x, y]) => ({ x, y }));

/** A whole cable of three cores between two entries; `left` leaves roles out. */
export const cable = (
  from: string,
  to: string,
  path: { x: number; y: number }[],
  more: Partial<SensedCable> & { left?: string[] } = {},
): SensedCable => {
  const { left = [], ...rest } = more;
  const [a, b] = [from, to].sort() as [string, string];
  const conductors = (
    [
      ["L", "live"],
      ["N", "neutral"],
      ["E", "earth"],
    ] as const
  )
    .filter(([role]) => !left.includes(role))
    .map(([role, kind]) => ({ from: contactId(a, role), to: contactId(b, role), class: kind }));
  const [, , letterA = ""] = /^(.*)\.(.*)$/.exec(a) ?? [];
  const [, , letterB = ""] = /^(.*)\.(.*)$/.exec(b) ?? [];
  const entryA = entryId(a.slice(0, a.lastIndexOf(".")), letterA);
  const entryB = entryId(b.slice(0, b.lastIndexOf(".")), letterB);
  return { id: cableId(entryA, entryB), from: entryA, to: entryB, conductors, path, lengthM: 7.4, ...rest };
};

const steps = (now: AttemptView["step"]): AttemptView["steps"] => {
  const order = ["plan", "wire", "test", "load", "hand-in"] as const;
  const at = order.indexOf(now as (typeof order)[number]);
  return order.map((step, i) => ({
    step,
    state: step === now ? "now" : step === "load" ? "locked" : i < at ? "done" : "open",
  }));
};

export const attempt = (more: Partial<AttemptView> = {}): AttemptView => ({
  id: "0193-demo",
  scenario: spurScenario,
  mode: "practice",
  kind: "first",
  step: "wire",
  steps: steps(more.step ?? "wire"),
  status: "open",
  say: { key: `say.${more.step ?? "wire"}`, facts: {} },
  cables: [],
  joints: [],
  unknown: [],
  settings: [
    { station: stationId("way-1"), key: "deviceRatingA", value: 32, by: "scenario", choices: [] },
    { station: stationId("way-1"), key: "deviceCurve", value: "B", by: "scenario", choices: [] },
  ],
  asFound: [],
  zones: [],
  canUndo: false,
  dead: [],
  plan: { questions: [] },
  cableTable: cableTable(more.scenario ?? spurScenario),
  hints: { used: 0, left: 3, shown: [] },
  tries: 0,
  verdict: null,
  ...more,
});

export const bench = (more: Partial<BenchView> = {}): BenchView => ({
  revision: 1,
  state: "ready",
  benchName: "Bench 3",
  language: "en",
  isLarge: false,
  banners: [{ kind: "board-simulated", facts: {} }],
  person: { name: "Bryony Cole", isGuest: false },
  learners: [
    "Aleks Brandt",
    "Bryony Cole",
    "Callum Reid",
    "Dilnoza Karim",
    "Ewan Hartley",
    "Farah Lund",
    "Grzegorz Nowicki",
    "Hattie Moss",
    "Idris Vale",
    "Jonah Peake",
    "Kasia Wrona",
    "Leo Ashdown",
  ].map((name, i) => ({ id: `demo-${i}`, name })),
  staff: { me: null, unlockers: [] },
  scenarios: [
    {
      id: "first-spur",
      title: spurScenario.title,
      place: spurScenario.place,
      level: 1,
      teaches: spurScenario.teaches,
      task: spurScenario.task,
      needs: [
        { kind: "way", count: 1 },
        { kind: "socket-outlet", count: 3 },
      ],
      lacks: [],
    },
    {
      id: "wall-lights",
      title: { en: "Wall lights behind a fuse", pl: "Kinkiety za bezpiecznikiem" },
      place: { en: "Heron Loft, Tollbarrow", pl: "Poddasze Czapla, Tollbarrow" },
      level: 3,
      teaches: {
        en: "The fuse of an FCU protects the thin cable behind it.",
        pl: "Bezpiecznik FCU chroni cienki kabel za nim.",
      },
      task: spurScenario.task,
      needs: [
        { kind: "fcu", count: 2 },
        { kind: "luminaire", count: 2 },
      ],
      lacks: [{ key: "scenario.lack.station", facts: { kind: "fcu", count: 2 } }],
    },
  ],
  board: smallFace,
  attempt: null,
  ...more,
});

const ringCables = [
  cable("way-1.a", "socket-1.a", line([14, 80], [14, 22], [30, 22]), { csaMm2: 2.5, share: 0.41 }),
  cable("socket-1.b", "socket-2.a", line([30, 22], [92, 22]), { csaMm2: 2.5, share: 0.48, lengthM: 9.1 }),
  cable("socket-2.b", "way-1.b", line([92, 22], [92, 80], [14, 80]), { csaMm2: 2.5, share: 0.52 }),
];
const spurCable = cable("socket-1.c", "socket-3.a", line([30, 22], [30, 41], [66, 41]), {
  csaMm2: 2.5,
  share: 0.64,
  lengthM: 8.3,
});

const requirements: VerdictView["requirements"] = [
  {
    text: "Socket outlets 1, 2 and 3 are served.",
    answer: "met",
    places: [],
  },
  {
    text: "The circuit of way 1 is a ring.",
    answer: "not-yet",
    places: [{ kind: "station", id: "way-1" }],
  },
];

export const verdict = (more: Partial<VerdictView> = {}): VerdictView => ({
  findings: [],
  requirements: requirements.map((one) => ({ ...one, answer: "met" as const })),
  undetermined: [],
  proposal: "met",
  isCurrent: true,
  isHeld: false,
  ...more,
});

export const ringOpen: FindingView = {
  id: "ring-open:some-cores:socket-1.b.L~socket-2.a.L",
  weight: "fix",
  title: "the ring is open in L",
  where: "Between socket outlet 1, entry b, and socket outlet 2, entry a.",
  what: "The line does not come back to way 1. N and E do.",
  why: "In an open ring one leg carries all the current. The cable may then carry more than it can:",
  remedy: "Join L at both ends of this cable.",
  reference: "BS 7671, 433.1.204",
  places: [{ kind: "cable", id: "socket-1.b~socket-2.a" }],
  bars: [
    { name: "Ib", currentA: 32 },
    { name: "Iz", currentA: 27 },
    { name: "In", currentA: 32 },
  ],
};
const cpcMissing: FindingView = {
  id: "cpc-missing:point:socket-3",
  weight: "danger",
  title: "socket outlet 3 has no earth",
  where: "At socket outlet 3, by the armchair.",
  what: "No earth reaches it.",
  why: "If something breaks, metal parts can become live and nothing switches off.",
  remedy: "Join E between socket outlet 1, entry c, and socket outlet 3, entry a.",
  reference: "BS 7671, 411.3.1.1",
  places: [{ kind: "station", id: "socket-3" }],
};

const joint: ContactId[] = [
  contactId("socket-1.a", "L"),
  contactId("socket-1.b", "L"),
  contactId("way-1.a", "L"),
];

/** A crowded task on the workshop board: a ring of six, two spurs and a part behind an FCU. */
const workshopScenario: StrippedScenario = {
  ...spurScenario,
  id: "crowded",
  title: { en: "The long kitchen", pl: "Długa kuchnia" },
  stations: [
    "way-1",
    "socket-1",
    "socket-2",
    "socket-3",
    "socket-4",
    "socket-5",
    "socket-6",
    "fcu-1",
    "junction-box-1",
  ].map((id) => ({
    id: stationId(id),
    kind: workshopFace.stations.find((station) => station.id === id)?.kind ?? "way",
    entries: {},
  })),
  parts: { cableCsaMm2: [1, 1.5, 2.5, 4, 6], fuseRatingA: [3, 5, 13] },
  plan: {
    ...spurScenario.plan,
    places: [
      { station: stationId("way-1"), at: { x: 14, y: 80 } },
      { station: stationId("socket-1"), at: { x: 14, y: 40 } },
      { station: stationId("socket-2"), at: { x: 30, y: 12 } },
      { station: stationId("socket-3"), at: { x: 62, y: 12 } },
      { station: stationId("socket-4"), at: { x: 96, y: 16 } },
      { station: stationId("socket-5"), at: { x: 96, y: 76 } },
      { station: stationId("socket-6"), at: { x: 40, y: 50 } },
      { station: stationId("fcu-1"), at: { x: 68, y: 40 } },
      { station: stationId("junction-box-1"), at: { x: 56, y: 74 } },
    ],
  },
};
const crowdedCables = [
  cable("way-1.a", "socket-1.a", line([14, 80], [14, 40]), { csaMm2: 2.5, share: 0.38 }),
  cable("socket-1.b", "socket-2.a", line([14, 40], [14, 12], [30, 12]), { csaMm2: 2.5, share: 0.4 }),
  cable("socket-2.b", "socket-3.a", line([30, 12], [62, 12]), { csaMm2: 2.5, share: 0.44 }),
  cable("socket-3.b", "socket-4.a", line([62, 12], [96, 12], [96, 16]), { csaMm2: 2.5, share: 0.47 }),
  cable("socket-4.b", "socket-5.a", line([96, 16], [96, 76]), { csaMm2: 2.5, share: 0.5 }),
  cable("socket-5.b", "junction-box-1.a", line([96, 76], [56, 74]), { csaMm2: 2.5, share: 0.53 }),
  cable("junction-box-1.b", "way-1.b", line([56, 74], [14, 74], [14, 80]), { csaMm2: 2.5, share: 0.53 }),
  cable("socket-3.c", "fcu-1.a", line([62, 12], [68, 40]), { csaMm2: 2.5, share: 0.2 }),
  cable("fcu-1.c", "socket-6.a", line([68, 40], [40, 50]), { csaMm2: 1.5, share: 1.12 }),
  cable("junction-box-1.c", "socket-6.b", line([56, 74], [40, 50]), { left: ["E"] }),
];

const asFoundCables = ringCables.map((one, i) => ({ cable: one.id, isIn: i < 2 }));
const dead = deadSteps.map((step, i) => ({ step, isDone: i < 3 }));
const deadState: DeadView = {
  breakers: [1, 2, 3].map((number) => ({ number, isOn: number !== 1, isLocked: number === 1 })),
  chart: [
    { breaker: 1, feeds: "socket-outlets", isOfTask: true },
    { breaker: 2, feeds: "lights", isOfTask: false },
    { breaker: 3, feeds: "cooker", isOfTask: false },
  ],
  reading: { at: "L-N", voltageV: 0 },
  then: "plan",
  missed: "prove-first",
};

const testView: TestView = {
  way: stationId("way-1"),
  kind: "ring",
  supply: "off",
  meter: {
    dial: "low-ohms",
    testV: 500,
    rcdMultiple: 1,
    red: contactId("way-1.a", "N"),
    black: contactId("way-1.b", "N"),
    isNulled: true,
    hasLongLead: false,
    shows: { shows: "over-range" },
  },
  ends: { entries: [entryId(stationId("way-1"), "a"), entryId(stationId("way-1"), "b")], state: "released" },
  link: null,
  parts: [{ station: stationId("socket-1"), part: "electronics", isIn: true }],
  switches: [],
  slots: [
    {
      id: "ring-step-1 L",
      test: "ring-step-1",
      of: "L",
      recorded: {
        id: "dead-0",
        test: "ring-step-1",
        of: "L",
        value: { resistanceOhm: 0.27 },
        judged: "pass",
        check: "right",
      },
      expected: null,
    },
    { id: "ring-step-1 N", test: "ring-step-1", of: "N" },
  ],
  liveSlots: [],
  others: [],
  pastCount: 1,
};
/** A real board with test faces, and a probe lead on a lead: which end of it is meant is not said yet. */
const realFace = {
  ...smallFace,
  isSimulated: false,
  hasProbes: true,
  stations: smallFace.stations.map((station) =>
    station.kind === "socket-outlet"
      ? {
          ...station,
          front: (["L", "N", "E"] as const).map((role) => ({ id: frontId(station.id, role), role })),
        }
      : station,
  ),
};
const sensedTest: TestView = {
  ...testView,
  meter: { ...testView.meter, red: null, black: frontId("socket-2", "N"), shows: { shows: "open" } },
  probeLeads: {
    red: [contactId("socket-1.a", "L"), contactId("way-1.a", "L")],
    black: [frontId("socket-2", "N")],
  },
};
const brokenN: FaultName = { kind: "open-core", place: "socket-1.b~socket-2.a", cores: ["N"] };
const atHunt = (more: Partial<AttemptView> = {}) =>
  attempt({
    step: "test",
    cables: [...ringCables, spurCable],
    test: testView,
    hunt: { faultCount: 2, named: [brokenN] },
    ...more,
  });

/** Two hours in which a cable comes to 96 °C, at the soonest or at the latest. */
const courseC = (forS: number): number[] =>
  Array.from({ length: 121 }, (_, min) => 30 + 66 * (1 - Math.exp((-min * 60) / forS)));
const heatedCable = cableId(entryId(stationId("socket-1"), "a"), entryId(stationId("way-1"), "a"));
const load: LoadView = {
  way: stationId("way-1"),
  isLive: true,
  nowS: 3600,
  appliances: [
    { id: "socket-1/kettle", station: stationId("socket-1"), powerW: 3000, isOn: true, appliance: "kettle" },
    {
      id: "socket-2/fan-heater",
      station: stationId("socket-2"),
      powerW: 2000,
      isOn: false,
      appliance: "fan-heater",
    },
  ],
  cables: ringCables.map(({ id }) => ({ id, currentA: 24, ratingA: 20 })),
  devices: [{ station: stationId("way-1"), currentA: 30, ratingA: 32, state: "may-be-open" }],
  legs: [
    {
      ends: [entryId(stationId("way-1"), "a"), entryId(stationId("way-1"), "b")],
      currentA: [24, 6],
      firstPercent: 80,
    },
  ],
  heat: {
    cable: heatedCable,
    earlyC: courseC(300),
    lateC: courseC(900),
    longLifeC: 70,
    faultLimitC: 160,
    zone: { fromC: 70, toC: 92, forS: 3600 },
  },
  facts: {
    first: { kind: "device", id: "way-1", earliestS: 1200, latestS: 3600 },
    hottest: { cable: heatedCable, earlyC: 96, lateC: 96, state: "beyond" },
    over70S: 280,
    isUnprotected: true,
    untimed: [stationId("way-1")],
  },
};

const outcomes: ReleasedOutcome[] = ["first-spur", "gone"].map((scenario) => ({
  attempt: scenario,
  scenario,
  releasedWallMs: Date.UTC(2026, 10, 26, 9),
  outcome: {
    outcome: "not-yet",
    says: "Look at the second socket again.",
    criteria: ["safe", "right", "tested"].map((id) => ({
      id,
      text: {
        en: "What was built is safe to switch on.",
        pl: "To, co zbudowano, można bezpiecznie włączyć.",
      },
      answer: id === "tested" ? "cannot-assess" : "not-yet",
      reason: "One leg would carry it all.",
    })),
    nextKind: "resubmission",
  },
}));

const progress: ProgressView = {
  goes: [
    {
      scenario: "first-spur",
      title: "The first spur",
      endedWallMs: Date.UTC(2026, 10, 26, 9),
      outcome: "not-yet",
    },
    {
      scenario: "first-spur",
      title: "The first spur",
      endedWallMs: Date.UTC(2026, 10, 25, 9),
      outcome: "left",
    },
  ],
  rules: [
    {
      rule: "ring-open",
      title: "the ring is open",
      trippedCount: 2,
      keptCount: 1,
      isTripping: true,
      dueWallMs: Date.UTC(2026, 10, 27, 9),
    },
    {
      rule: "spur-cable",
      title: "a cable of a spur is too small for the device before it",
      trippedCount: 1,
      keptCount: 3,
      isTripping: false,
      dueWallMs: Date.UTC(2026, 11, 24, 9),
    },
  ],
  next: [{ rule: "ring-open", title: "the ring is open", scenario: "first-spur" }],
};

const views = {
  "sign-in": () => bench({ person: null }),
  scenarios: () => bench(),
  caution: () => bench({ attempt: attempt({ step: "caution" }) }),
  "make-dead": () => bench({ attempt: attempt({ step: "make-dead", dead, deadState }) }),
  plan: () =>
    bench({
      attempt: attempt({
        step: "plan",
        plan: {
          questions: [
            {
              question: "designCurrentA",
              answer: 13.1,
              result: {
                isRight: true,
                reason: { key: "plan.reason.designCurrentA", facts: { designCurrentA: 13.1 } },
              },
            },
            { question: "deviceRatingA", choices: [6, 16, 20, 32] },
            { question: "csaMm2", choices: [1, 1.5, 2.5, 4] },
          ],
          bars: [
            { name: "Ib", currentA: 13.1 },
            { name: "In", currentA: 32 },
            { name: "Iz", currentA: 27 },
          ],
        },
      }),
    }),
  "plan-number": () =>
    bench({
      attempt: attempt({
        step: "plan",
        plan: {
          questions: [
            { question: "designCurrentA" },
            { question: "deviceRatingA", choices: [6, 16, 20, 32] },
          ],
        },
      }),
    }),
  wire: () => bench({ attempt: attempt() }),
  ring: () =>
    bench({ attempt: attempt({ cables: [...ringCables, spurCable], canUndo: true, verdict: verdict() }) }),
  "ring-fault": () =>
    bench({
      attempt: attempt({
        cables: [
          ringCables[0],
          { ...cable("socket-1.b", "socket-2.a", line([30, 22], [92, 22]), { csaMm2: 2.5, left: ["L"] }) },
          ringCables[2],
          { ...spurCable, conductors: spurCable.conductors.filter(({ class: kind }) => kind !== "earth") },
        ] as SensedCable[],
        canUndo: true,
        tries: 2,
        hints: {
          used: 1,
          left: 2,
          shown: [{ en: "Do you get back to where you began?", pl: "Czy wracasz tam, gdzie zacząłeś?" }],
        },
        verdict: verdict({
          findings: [cpcMissing, ringOpen],
          requirements,
          proposal: "not-yet",
        }),
      }),
    }),
  marks: () =>
    bench({
      banners: [
        { kind: "board-fault", fault: "loose-contact", contacts: [contactId("socket-2.b", "N")], facts: {} },
      ],
      attempt: attempt({
        cables: [
          ...ringCables,
          cable("socket-1.c", "socket-3.a", spurCable.path, { asksSize: { offeredCsaMm2: 2.5 } }),
        ],
        joints: [joint],
        unknown: [contactId("socket-2.b", "N")],
        asFound: asFoundCables,
      }),
    }),
  workshop: () =>
    bench({
      board: workshopFace,
      attempt: attempt({
        scenario: workshopScenario,
        cables: crowdedCables,
        settings: [
          { station: stationId("way-1"), key: "deviceRatingA", value: 32, by: "scenario", choices: [] },
          { station: stationId("fcu-1"), key: "fuseRatingA", value: 13, by: "learner", choices: [3, 5, 13] },
        ],
      }),
    }),
  "hand-in": () =>
    bench({
      attempt: attempt({
        step: "hand-in",
        cables: [...ringCables, spurCable],
        verdict: verdict({ findings: [ringOpen], requirements, proposal: "not-yet" }),
      }),
    }),
  assessed: () =>
    bench({
      attempt: attempt({
        mode: "assessed",
        cables: [...ringCables, spurCable].map(({ share: _share, ...one }) => one),
      }),
    }),
  "assessed-done": () =>
    bench({
      attempt: attempt({
        mode: "assessed",
        status: "handed-in",
        step: "hand-in",
        say: { key: "say.handed-in", facts: {} },
      }),
    }),
  test: () => bench({ attempt: atHunt() }),
  "test-leads": () =>
    bench({
      board: realFace,
      banners: [],
      attempt: attempt({ step: "test", cables: ringCables, test: sensedTest }),
    }),
  load: () => bench({ attempt: attempt({ step: "load", cables: ringCables, load }) }),
  "load-off": () =>
    bench({ attempt: attempt({ step: "load", cables: ringCables, load: { ...load, isLive: false } }) }),
  "load-assessed": () => {
    const { heat: _heat, facts: _facts, ...shown } = load;
    return bench({
      attempt: attempt({ mode: "assessed", step: "load", cables: ringCables, load: shown }),
    });
  },
  "hunt-outcome": () =>
    bench({
      attempt: atHunt({
        status: "handed-in",
        step: "hand-in",
        say: { key: "say.handed-in", facts: {} },
        hunt: {
          faultCount: 2,
          named: [brokenN],
          result: {
            faults: [
              { fault: brokenN, isKindRight: true, isPlaceRight: true, isShown: true },
              {
                fault: { kind: "crossed-cores", place: "socket-2.b~way-1.b", cores: ["L", "E"] },
                isKindRight: false,
                isPlaceRight: false,
                isShown: false,
              },
            ],
            isOrderKept: false,
            readingCount: 4,
            points: 3,
            mostPoints: 7,
          },
        },
      }),
    }),
  progress: () => bench({ progress }),
  outcomes: () => bench({ progress, outcomes }),
  "no-board": () =>
    bench({ state: "no-board", noBoard: { key: "no-board.no-rights", facts: {} }, board: null }),
} satisfies Record<string, () => BenchView>;

export type ViewName = keyof typeof views;
export const viewNames = Object.keys(views) as ViewName[];

/** A sample of what the server sends, by name. */
export const sampleView = (name: ViewName, more: Partial<BenchView> = {}): BenchView => ({
  ...views[name](),
  ...more,
});

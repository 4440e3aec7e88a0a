import { isDeepStrictEqual } from "node:util";
import { type EntryId, type StationId, stationOf } from "../../shared/board/ids.ts";
import { buildModel } from "../../shared/circuit/build-model.ts";
import type { CircuitModel } from "../../shared/circuit/model.ts";
import { type LiveTest, liveTests } from "../../shared/electrical/check-live-reading.ts";
import { copperOf } from "../../shared/electrical/copper.ts";
import { type AsBuilt, asBuilt } from "../../shared/electrical/hidden-faults.ts";
import { partsThatCanBeIn } from "../../shared/electrical/left-in-parts.ts";
import { ringEndsAt } from "../../shared/electrical/meter.ts";
import { type CircuitKind, testPlan, type TestSlot } from "../../shared/electrical/test-plan.ts";
import { toWiring } from "../../shared/scenario/to-wiring.ts";
import type { HiddenFault } from "../../shared/wiring/hidden-fault.schema.ts";
import type { LeftInPart, Wiring } from "../../shared/wiring/wiring.schema.ts";
import type { ScenarioKit } from "../library.ts";
import type { Picture } from "./picture-of.ts";

/** What a task has tested: its way, the kind of circuit, the readings its record asks for and what can be left in. */
export interface TestTask {
  way: StationId;
  kind: CircuitKind;
  slots: readonly TestSlot[];
  parts: readonly LeftInPart[];
  switches: readonly StationId[];
}

/** The live tests of a task, all at one point of it. */
export const liveSlots = ({ way }: Pick<TestTask, "way">): { test: LiveTest; of: StationId }[] =>
  liveTests.map((test) => ({ test, of: way }));

const tasks = new WeakMap<ScenarioKit, TestTask>();

/** What a scenario has tested, by what it asks for and never by what is wired; made once. */
export function testTaskOf(kit: ScenarioKit): TestTask {
  const known = tasks.get(kit);
  if (known) return known;
  const task = makeTask(kit);
  tasks.set(kit, task);
  return task;
}

function makeTask({ scenario, stripped, routeBetween }: ScenarioKit): TestTask {
  const [answer = { cables: [] }] = scenario.modelAnswers;
  const model = buildModel(toWiring({ scenario: stripped, built: answer, routeBetween }));
  const shape = scenario.requirements.find(({ kind }) => kind === "shape");
  const used = model.circuits.find(({ isUsed }) => isUsed) ?? model.circuits[0];
  const way = (shape?.kind === "shape" ? shape.of : used?.way) ?? ("way-1" as StationId);
  const circuit = model.circuits.find((one) => one.way === way) ?? used;
  const kind: CircuitKind =
    shape?.kind === "shape" ? shape.shape : circuit?.zone.shape.rings.length ? "ring" : "radial";
  return {
    way,
    kind,
    slots: circuit ? testPlan(kind, circuit) : [],
    parts: partsThatCanBeIn(scenario.stations, scenario.loads),
    switches: model.buses.switches,
  };
}

/** The circuit at a moment, as the meter sees it and as its record is held to. */
export interface CircuitUnderTest {
  wiring: Wiring;
  /** With the hidden faults laid over it; it never leaves the server. */
  built: AsBuilt;
  faults: readonly HiddenFault[];
  /** As the rules read it: hidden faults unseen. */
  model: () => CircuitModel;
  /** The two ends at the way that can be taken out of their terminals; undefined where there are not two. */
  ends: [EntryId, EntryId] | undefined;
}

const circuits = new WeakMap<Wiring, CircuitUnderTest>();

interface Wired {
  kit: ScenarioKit;
  picture: Pick<Picture, "wiring">;
  hiddenFaults: readonly HiddenFault[];
}

/** The circuit to test of an attempt; made once for its wiring. */
export function circuitUnderTest({ kit, picture, hiddenFaults }: Wired): CircuitUnderTest {
  const wiring = picture.wiring();
  const known = circuits.get(wiring);
  if (known && isDeepStrictEqual(known.faults, hiddenFaults)) return known;
  const made = circuitWith(kit, wiring, hiddenFaults);
  circuits.set(wiring, made);
  return made;
}

/** The circuit of a wiring with some faults hidden in it. */
export function circuitWith(
  kit: ScenarioKit,
  wiring: Wiring,
  faults: readonly HiddenFault[],
): CircuitUnderTest {
  const { way } = testTaskOf(kit);
  const built = asBuilt(copperOf(wiring), faults);
  let model: CircuitModel | undefined;
  return {
    wiring,
    built,
    faults,
    model: () => (model ??= buildModel(wiring)),
    ends: ringEndsAt(built, way) ?? firstTwoEnds(wiring, way),
  };
}

/** Where no two cables of a way meet again, the first two that go there: what hands would take out. */
function firstTwoEnds({ cables }: Wiring, way: StationId): [EntryId, EntryId] | undefined {
  const at = cables
    .flatMap(({ from, to }) => [from, to])
    .filter((entry) => stationOf(entry) === way)
    .sort();
  const [one, two] = [...new Set(at)];
  return one && two ? [one, two] : undefined;
}

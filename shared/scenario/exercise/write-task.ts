import { cableId, type StationId } from "../../board/ids.ts";
import { fillTemplate } from "../../rules/wording/fill-template.ts";
import { wordings } from "../../rules/wording/languages.ts";
import { namerOf } from "../../rules/wording/name-place.ts";
import { speakFact } from "../../rules/wording/speak-fact.ts";
import { wordRequirement } from "../../rules/wording/word-requirement.ts";
import { type Language, languages } from "../../text/languages.ts";
import type { Text } from "../../text/text.schema.ts";
import type { Requirement, Wiring } from "../../wiring/wiring.schema.ts";
import type { Built, Scenario } from "../scenario.schema.ts";

/** Lines that tell a learner what to do; several requirements can be one line. */
type Line = "ring" | "radial" | "spur" | "spurs" | "unit" | "sized" | "kept" | "switch" | "switches";

const templates: Record<Language, Record<Line, string>> = {
  en: {
    ring: "Build a ring from {way} through {stations} and back.",
    radial: "Feed {stations} by one radial from {way}.",
    spur: "Feed {stations} by one unfused spur.",
    spurs: "Feed each by an unfused spur of its own: {stations}.",
    unit: "Feed {stations} from the circuit of {way} through {fcu}.",
    sized: "Choose each cable, and what else is yours to choose, for the loads.",
    kept: "Leave every cable that is there as it is.",
    switch: "Let {stations} be switched off with nothing else going off.",
    switches: "Let each be switched off with nothing else going off: {stations}.",
  },
  pl: {
    ring: "Zbuduj pierścień z {way:gen} przez {stations:acc} i z powrotem.",
    radial: "Zasil {stations:acc} jednym obwodem promieniowym z {way:gen}.",
    spur: "Zasil {stations:acc} jednym odgałęzieniem bez bezpiecznika.",
    spurs: "Zasil każde osobnym odgałęzieniem bez bezpiecznika: {stations}.",
    unit: "Zasil {stations:acc} z obwodu, który wychodzi z {way:gen}, przez {fcu:acc}.",
    sized: "Dobierz każdy kabel i wszystko, co jest do wyboru, do obciążenia.",
    kept: "Zostaw każdy kabel, który tam jest, tak jak jest.",
    switch: "Niech da się wyłączyć {stations:acc} tak, że nic innego nie gaśnie.",
    switches: "Niech da się wyłączyć każde osobno tak, że nic innego nie gaśnie: {stations}.",
  },
};

type Asked = Pick<Scenario, "requirements" | "asFound">;

interface Said {
  heldBy: number[];
  /** Left out: the requirement is said as the list of requirements says it. */
  line?: { name: Line; facts: Partial<Record<string, string | readonly string[]>> };
}

/** Of the task's requirements, which are said in one line and how; what has no line of its own comes by itself. */
function linesOf({ requirements, asFound }: Asked): Said[] {
  const at = (kind: Requirement["kind"]): number[] =>
    requirements.flatMap((requirement, index) => (requirement.kind === kind ? [index] : []));
  const shape = requirements.find((one) => one.kind === "shape");
  const inRing = requirements.find((one) => one.kind === "in-ring");
  const circuit = requirements.find((one) => one.kind === "one-circuit");
  const unit = requirements.find((one) => one.kind === "through-fcu");
  const whole = wholeCircuit(shape, inRing, circuit, unit);
  const isWhole = whole !== undefined && circuit?.way === shape?.of;
  const general = [
    ...(["served", "one-circuit", "shape", "in-ring"] as const).flatMap(at),
    ...(whole?.name === "unit" ? at("through-fcu") : []),
  ];
  const rest = requirements.flatMap((requirement, index): Said[] => {
    if (isWhole && general.includes(index)) return [];
    const line = lineOf(requirement, asFound, circuit?.way);
    return [{ heldBy: [index], ...(line ? { line } : {}) }];
  });
  return isWhole ? [{ heldBy: general.toSorted((a, b) => a - b), line: whole }, ...rest] : rest;
}

type OfKind<Kind extends Requirement["kind"]> = Extract<Requirement, { kind: Kind }> | undefined;

/** The line about the circuit as a whole, where there is one: a ring that is built, a radial, or what joins a circuit. */
function wholeCircuit(
  shape: OfKind<"shape">,
  inRing: OfKind<"in-ring">,
  circuit: OfKind<"one-circuit">,
  unit: OfKind<"through-fcu">,
): Said["line"] {
  if (!shape || !circuit?.way) return undefined;
  if (shape.shape === "radial")
    return { name: "radial", facts: { stations: circuit.stations, way: circuit.way } };
  if (inRing) return { name: "ring", facts: { stations: inRing.stations, way: circuit.way } };
  if (unit?.fcu) return { name: "unit", facts: { stations: unit.stations, way: circuit.way, fcu: unit.fcu } };
  return undefined;
}

function lineOf(requirement: Requirement, asFound: Built, way: StationId | undefined): Said["line"] {
  switch (requirement.kind) {
    case "unfused-spur": {
      const { stations } = requirement;
      return { name: stations.length === 1 ? "spur" : "spurs", facts: { stations } };
    }
    case "through-fcu": {
      const { stations, fcu } = requirement;
      return fcu && way ? { name: "unit", facts: { stations, fcu, way } } : undefined;
    }
    case "own-switch": {
      const { stations, by } = requirement;
      return by ? undefined : { name: stations.length === 1 ? "switch" : "switches", facts: { stations } };
    }
    case "sized":
      return { name: "sized", facts: {} };
    case "kept": {
      const kept = new Set<string>(requirement.cables);
      const isAll = asFound.cables.every(({ from, to }) => kept.has(cableId(from, to)));
      return isAll ? { name: "kept", facts: {} } : undefined;
    }
    default:
      return undefined;
  }
}

/**
 * The task's text in every language, written from what the task asks for: the opening, then a numbered line for each
 * thing asked, with the requirements (by index) that hold it.
 */
export function writeTask(
  opening: Text,
  asked: Asked,
  wiring: Pick<Wiring, "stations">,
): { task: Text; asks: NonNullable<Scenario["asks"]> } {
  const lines = linesOf(asked);
  const written = (language: Language): string => {
    const { terms } = wordings[language];
    const nameOf = namerOf(wiring, terms);
    const say = ({ line, heldBy }: Said): string => {
      if (line)
        return fillTemplate(templates[language][line.name], (name, grammar) => {
          const fact = line.facts[name];
          return fact === undefined ? undefined : speakFact(name, fact, grammar, terms, nameOf);
        });
      const requirement = asked.requirements[heldBy[0] ?? 0];
      return requirement ? wordRequirement(requirement, wiring, language) : "";
    };
    return [opening[language], ...lines.map((line, at) => `${at + 1}. ${say(line)}`)].join("\n");
  };
  const [en = "", pl = ""] = languages.map(written);
  return { task: { en, pl }, asks: lines.map(({ heldBy }, at) => ({ number: at + 1, heldBy })) };
}

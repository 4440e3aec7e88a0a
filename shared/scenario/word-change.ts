import { cableId } from "../board/ids.ts";
import { fillTemplate } from "../rules/wording/fill-template.ts";
import { wordings } from "../rules/wording/languages.ts";
import { namerOf, type StationNames } from "../rules/wording/name-place.ts";
import { speakNumber } from "../rules/wording/speak-fact.ts";
import type { Language } from "../text/languages.ts";
import type { Wiring } from "../wiring/wiring.schema.ts";
import type { Change } from "./change.ts";

type Said =
  "pull" | "plug" | "size" | "device" | "curve" | "fuse" | "switched" | "unswitched" | "rated" | "again";

const templates: Record<Language, Record<Said, string>> = {
  en: {
    pull: "Take out {cable:acc}.",
    plug: "Run a {value} cable from {from:nom} to {to:nom}.",
    again: "Take out {cable:acc} and put it back, core to core.",
    size: "Make {cable:acc} {value}.",
    device: "Fit a {value} device in {station:loc}.",
    curve: "Fit a type {value} device in {station:loc}.",
    fuse: "Fit a {value} fuse in {station:loc}.",
    switched: "Choose {station:acc} with a switch.",
    unswitched: "Choose {station:acc} without a switch.",
    rated: "Choose {station:acc} for {value}.",
  },
  pl: {
    pull: "Wyjmij {cable:acc}.",
    plug: "Połącz kablem {value}: {from:nom} i {to:nom}.",
    again: "Wyjmij {cable:acc} i podłącz jeszcze raz, żyła do żyły.",
    size: "Zmień {cable:acc} na {value}.",
    device: "Załóż wyłącznik {value} w {station:loc}.",
    curve: "Załóż wyłącznik o charakterystyce {value} w {station:loc}.",
    fuse: "Załóż bezpiecznik {value} w {station:loc}.",
    switched: "Wybierz {station:acc} z łącznikiem.",
    unswitched: "Wybierz {station:acc} bez łącznika.",
    rated: "Wybierz {station:acc} na {value}.",
  },
};

const saidOfSetting: Partial<Record<string, Said>> = {
  deviceRatingA: "device",
  deviceCurve: "curve",
  fuseRatingA: "fuse",
  ratingA: "rated",
};

/** A change as a sentence that says what to do. */
export function wordChange(
  change: Change,
  wiring: Pick<Wiring, "stations">,
  language: Language,
  names?: StationNames,
): string {
  const { terms } = wordings[language];
  const nameOf = namerOf(wiring, terms, names);
  const size = (csaMm2: number | undefined): string =>
    csaMm2 === undefined ? "" : speakNumber("csaMm2", csaMm2, terms);
  const say = (said: Said, ids: Readonly<Record<string, string>>, value = ""): string =>
    fillTemplate(templates[language][said], (gap, grammar) =>
      gap === "value" ? value : nameOf(ids[gap] ?? "")?.[grammar],
    );
  switch (change.kind) {
    case "pull":
      return say("pull", { cable: change.cable });
    case "size":
      return say("size", { cable: change.cable }, size(change.csaMm2));
    case "plug": {
      const { from, to, csaMm2 } = change.cable;
      return change.isAgain
        ? say("again", { cable: cableId(from, to) })
        : say("plug", { from, to }, size(csaMm2));
    }
    case "set": {
      const { station, key, value } = change;
      const said = saidOfSetting[key] ?? (value === true ? "switched" : "unswitched");
      return say(
        said,
        { station },
        typeof value === "number" ? speakNumber(key, value, terms) : String(value),
      );
    }
  }
}

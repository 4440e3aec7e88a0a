import { roleOf, stationOf } from "../../../shared/board/ids.ts";
import type { AttemptView, BoardFace, SensedCable } from "../../../shared/protocol/bench-view.ts";
import type { RecordWords } from "./record-words.ts";
import { cableMark, drawnStations } from "./wiring-drawing.ts";

/** What there is to say of the cores of a cable: those that are missing, and those that end at another terminal. */
function coresText({ from, conductors }: SensedCable, face: BoardFace, words: RecordWords): string {
  const entry = face.stations.flatMap(({ entries }) => entries).find(({ id }) => id === from);
  const said = (entry?.contacts ?? []).flatMap(({ id, role }) => {
    const lead = conductors.find((one) => one.from === id || one.to === id);
    if (!lead) return [words.t("cores.missing", { core: role })];
    const [a, b] = [roleOf(lead.from), roleOf(lead.to)];
    return a === b ? [] : [words.t("cores.crossed", { from: a, to: b })];
  });
  return said.length === 0 ? words.t("cores.all") : said.join(", ");
}

const amp = (currentA: number | undefined, words: RecordWords): string =>
  currentA === undefined ? "–" : `${words.number(currentA, 1)} A`;

/** The cables of a record, one a row. */
export const cableRows = (view: AttemptView, face: BoardFace, words: RecordWords): string[][] =>
  view.cables.map((cable, at) => [
    cableMark(at + 1),
    [cable.from, cable.to].map((end) => words.place(stationOf(end))).join(" – ") +
      (cable.isAsFound ? ` (${words.t("as-found")})` : ""),
    cable.csaMm2 === undefined ? "–" : `${words.number(cable.csaMm2)} mm²`,
    cable.lengthM === undefined ? "–" : `${words.number(cable.lengthM, 1)} m`,
    amp(cable.carries?.ratingA, words),
    amp(cable.carries?.neededA, words),
    coresText(cable, face, words),
  ]);

/** The stations of a record, one a row, with what is set at each. */
export const stationRows = (view: AttemptView, face: BoardFace, words: RecordWords): string[][] =>
  drawnStations(view, face).map(({ id }, at) => [
    String(at + 1),
    words.place(id),
    view.settings
      .flatMap(({ station, key, value }) =>
        station === id && value !== undefined ? [words.setting(key, value)] : [],
      )
      .join(", "),
  ]);

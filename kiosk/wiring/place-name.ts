import type { BoardFace, FaceStation } from "../../shared/protocol/bench-view.ts";
import type { Words } from "../text/words.svelte.ts";

/** A station as the screen calls it: the word for its kind and its printed label. */
export const stationName = (
  station: Pick<FaceStation, "kind" | "label" | "appliance">,
  words: Pick<Words, "t">,
): string => {
  if (station.kind === "appliance" && station.appliance)
    return numbered(words.t(`appliance.${station.appliance}`), station.label);
  const kind = station.kind === "fcu" ? "kind.short.fcu" : (`kind.${station.kind}` as const);
  return numbered(words.t(kind), station.label);
};

/** The number or letter of a station, as its plate shows it. */
export const stationMark = ({ label }: Pick<FaceStation, "label">): string =>
  /(?:^|\s)(\d+|[A-Za-z])$/.exec(label.trim())?.[1] ?? label;

/** A label that is more than a number or a letter says it all; one that repeats the word is not said twice. */
const numbered = (kind: string, label: string): string => {
  const mark = /(?:^|\s)(\d+|[A-Za-z])$/.exec(label.trim())?.[1];
  if (mark) return `${kind} ${mark}`;
  return kind;
};

const stationAndRest = /^([a-z][a-z0-9]*(?:-[a-z0-9]+)*)(?:\.([a-z][a-z0-9]*))?(?:\.(\w+))?$/;

/** Any id of the board as a name: `socket-3.b.L` is "Socket outlet 3 b L". What is no such id is given back. */
export const placeName = (id: string, face: BoardFace | null, words: Pick<Words, "t">): string => {
  if (id.includes("~"))
    return id
      .split("~")
      .map((end) => placeName(end, face, words))
      .join(" – ");
  const [, station = "", letter, role] = stationAndRest.exec(id) ?? [];
  const found = face?.stations.find((one) => one.id === station);
  if (!found) return id;
  const parts = [stationName(found, words)];
  if (letter) parts.push(letter === "front" ? words.t("place.front") : letter);
  if (role) parts.push(roleName(role, words));
  return parts.join(" ");
};

/** The letters of a role on the screen. */
export const roleName = (role: string, words: Pick<Words, "t">): string => {
  switch (role) {
    case "L":
    case "N":
    case "E":
    case "SL":
    case "common":
    case "strap1":
    case "strap2":
      return words.t(`role.${role}`);
    default:
      return role;
  }
};

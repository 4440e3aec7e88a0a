import type { StationId } from "../../board/ids.ts";
import type { RuleId } from "../../rules/rule.ts";
import type { Text } from "../../text/text.schema.ts";
import type { Built, Scenario } from "../scenario.schema.ts";

/** A wiring that is not the answer, and the rules of which it breaks one or more: none where it only misses what is asked. */
export interface WrongDraft {
  name: string;
  built: Built;
  breaks: readonly RuleId[];
}

/** An exercise before it has its house, its text and a verdict. */
export interface Draft extends Pick<
  Scenario,
  "stations" | "loads" | "parts" | "requirements" | "asFound" | "supply"
> {
  /** What a board needs for all that might have been drawn. Left out: the stations that it always has. */
  needs?: Scenario["stations"];
  /** Right answers to choose from, the thriftiest first: the first that the rules find nothing against is taken. */
  answers: readonly [Built, ...Built[]];
  /** True where an answer demands what the level is there for. */
  isOfLevel: (answer: Built) => boolean;
  wrongs: (answer: Built) => readonly WrongDraft[];
  opening: Text;
  /** Along the outside of the house, as a cable from the way meets them. */
  outer: readonly StationId[];
  /** Farther in. */
  inner: readonly StationId[];
  /** How the cables of the house may be run. */
  routeClass: Scenario["plan"]["routeClasses"][string];
}

import type { Role } from "../../board/ids.ts";
import type { ApplianceKind, Side, StationKind } from "../../board/station-kinds.ts";
import type { Requirement, TestKind } from "../../wiring/wiring.schema.ts";
import type { RuleId, Weight } from "../rule.ts";

/** Cases a name may stand in; a language without them says the same in each. */
export const grammars = ["nom", "gen", "acc", "inst", "loc"] as const;
export type Grammar = (typeof grammars)[number];
export type Forms = Readonly<Record<Grammar, string>>;

/**
 * Sentences of one variant. `{name}` is a fact, `{name:gen}` the same in a case; `{place}`, `{places}`, `{cause}` and
 * `{causes}` name what the finding is about. `[...]` is left out where a fact in it is not known.
 */
export interface VariantWords {
  /** Left out: the title of the rule. */
  title?: string;
  /** What is there. */
  what: string;
  /** Why it matters, in numbers where there are any. */
  why: string;
  /** How to put it right. */
  remedy: string;
  /** What this variant rests on, where the source of the rule does not say it in the learner's words. */
  reference?: string;
  /**
   * The same of several places at once: one cause is one note. Left out: each finding is a note of its own. What is
   * left out in it is said as of one place. A number that differs from place to place is told as a range.
   */
  several?: { title?: string; what: string; why?: string; remedy?: string };
}

export interface RuleWords {
  title: string;
  /** What it rests on, where that is no document: the task itself. Left out: told from the source of the rule. */
  reference?: string;
  variants: Readonly<Record<string, VariantWords>>;
}

/** Sentences for every rule there is. */
export type Catalogue = Readonly<Record<RuleId, RuleWords>>;

/** The same rules and variants in another language: a variant left out does not compile. */
export type Translated<Original extends Catalogue> = {
  readonly [Id in RuleId]: {
    title: string;
    reference?: string;
    variants: { readonly [Variant in keyof Original[Id]["variants"]]: VariantWords };
  };
};

/** Words of the trade and of the language, apart from the sentences of the rules. */
export interface Terms {
  kinds: Record<StationKind, Forms>;
  appliances: Record<ApplianceKind, Forms>;
  roles: Record<Role, Forms>;
  sides: Record<Side, Forms>;
  weights: Record<Weight, string>;
  tests: Record<TestKind, string>;
  /** What a missing value is called, by the field of the wiring format. */
  fields: Readonly<Record<string, string>>;
  /** Words for what a field can hold that is no number, such as a shape. */
  values: Readonly<Record<string, Forms>>;
  decimalMark: string;
  and: string;
  or: string;
  yes: string;
  no: string;
  /** A station that is called by its kind alone. */
  bare: (kind: Forms) => Forms;
  cable: (a: Forms, b: Forms) => Forms;
  /** One conductor of a cable, both ends on the same role. */
  conductor: (role: Role, a: Forms, b: Forms) => Forms;
  /** A lead between two contacts of different roles. */
  lead: (a: Forms, b: Forms) => Forms;
  entry: (letter: string, side: Forms, station: Forms) => Forms;
  contact: (role: Role, letter: string, station: Forms) => Forms;
  /** A test face of a station. */
  front: (role: Role, station: Forms) => Forms;
  /** The sentence that says where to look. */
  where: string;
  /** A number that is not the same everywhere. */
  range: (least: string, most: string) => string;
  /** So many places more than are named. */
  more: (count: number) => string;
  /** English words in the clauses of sources, with what is said for them; a longer phrase stands before its words. */
  clauseWords: readonly (readonly [english: string, said: string])[];
  references: {
    regulation: string;
    standard: string;
    guidance: string;
    practice: string;
  };
  requirements: Record<
    | Exclude<Requirement["kind"], "shape" | "through-fcu">
    | ("ring" | "radial" | "through-one-fcu" | "through-any-fcu" | "thrift-but-one"),
    string
  >;
  /** `noLimit` and `noLimitTt`: a value that nobody can state, for no table has it; they say what can be done. */
  undetermined: Record<"value" | "board" | "noLimit" | "noLimitTt" | "otherField", string>;
}

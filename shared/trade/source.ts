/** How far a value was checked against the document it is said to come from. */
export type Checked = "secondary copy" | "recomputed" | "from memory";

/**
 * Where a number or a rule comes from. Regulation, guidance and common practice are told apart so that a
 * finding can say which it rests on.
 */
export type Source =
  | {
      kind: "regulation" | "standard" | "guidance";
      /** Document, for example "BS 7671:2018" or "On-Site Guide". */
      document: string;
      /** Clause, table or section in it. */
      clause: string;
      checked: Checked;
    }
  | { kind: "common practice, no source" }
  | { kind: "from memory"; about: string };

/** What anybody may read, signed in or not, each a sheet of its own. */
export const publicSheetNames = ["cautions", "data-protection", "accessibility", "notices"] as const;
export type PublicSheetName = (typeof publicSheetNames)[number];

/** Where the sheets are: as a page under `<name>`, as data under `<name>.json`. */
export const publicText = "/public";

/** A sheet in one language. */
export interface PublicSheet {
  name: PublicSheetName;
  title: string;
  parts: PublicPart[];
  /** Every sheet there is, in the order they are offered. */
  all: { name: PublicSheetName; title: string }[];
}

export interface PublicPart {
  heading: string;
  lines: string[];
  /** Text to be opened, such as that of a licence; left out where there is none. */
  fine?: { opener: string; text: string };
}

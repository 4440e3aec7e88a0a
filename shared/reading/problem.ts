/** Why a file or message from outside cannot be used: where it is wrong and what to do about it. */
export interface Problem {
  file: string;
  /** Place in the file, such as `cables[3].from`; `line 4, column 7` where it is not JSON at all. */
  field: string;
  /** What is wrong there. */
  message: string;
  /** What to do about it. */
  remedy: string;
}

/** A problem before it is known which file it is in. */
export type FieldProblem = Omit<Problem, "file">;

/** A value read from outside, or all that is wrong with it. */
export type Read<T> = { ok: true; value: T } | { ok: false; problems: Problem[] };

/** `a.b[2].c` for the path a, b, 2, c; `the whole file` for no path. */
export const fieldName = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((name, key) => {
    if (typeof key === "number") return `${name}[${key}]`;
    return name === "" ? String(key) : `${name}.${String(key)}`;
  }, "") || "the whole file";

/** One line a problem, for a terminal or a log. */
export const problemLine = ({ file, field, message, remedy }: Problem): string =>
  `${file}: ${field}: ${message}. ${remedy}`;

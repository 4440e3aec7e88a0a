import Database from "better-sqlite3";
import { migrations } from "./migrations.ts";
import type { Connection } from "./open-database.ts";

interface Part {
  type: string;
  name: string;
  sql: string | null;
}

const partsOf = (database: Connection): Map<string, Part> =>
  new Map(
    database
      .prepare<[], Part>("SELECT type, name, sql FROM sqlite_schema ORDER BY type, name")
      .all()
      .map((part) => [`${part.type} ${part.name}`, part]),
  );

/**
 * The first table, index or trigger of a log that is not as the program makes it, in words: a trigger that was taken
 * away no longer keeps anybody from changing a record. Undefined where all are.
 */
export function schemaFault(database: Connection): string | undefined {
  const fresh = new Database(":memory:");
  try {
    for (const step of migrations) fresh.exec(step);
    const wanted = partsOf(fresh);
    const found = partsOf(database);
    for (const [name, { sql }] of wanted) {
      const there = found.get(name);
      if (!there) return `the ${name} is missing`;
      if (there.sql !== sql) return `the ${name} was changed`;
    }
    for (const name of found.keys())
      if (!wanted.has(name) && !name.includes("sqlite_")) return `the ${name} does not belong there`;
    return undefined;
  } finally {
    fresh.close();
  }
}

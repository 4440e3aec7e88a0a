import type { Connection } from "../server/store/open-database.ts";

/** Changes what stands in the first row of a type, past the rules of the log and with these put back; gives its sequence. */
export function changeLogged(
  database: Connection,
  type: string,
  from: string,
  to: string,
): number | undefined {
  const trigger = database
    .prepare<[], { sql: string }>("SELECT sql FROM sqlite_master WHERE name = 'log_is_not_changed'")
    .get();
  database.exec("DROP TRIGGER log_is_not_changed");
  const row = database
    .prepare<[string], { sequence: number; bytes: Buffer }>(
      "SELECT sequence, bytes FROM log WHERE type = ? ORDER BY bench_id, boot, sequence LIMIT 1",
    )
    .get(type);
  const bytes = Buffer.from(row?.bytes.toString("utf8").replace(from, to) ?? "");
  database
    .prepare<[Buffer, string, number]>("UPDATE log SET bytes = ? WHERE type = ? AND sequence = ?")
    .run(bytes, type, row?.sequence ?? -1);
  database.exec(trigger?.sql ?? "");
  return row?.sequence;
}

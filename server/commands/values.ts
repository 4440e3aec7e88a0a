import { allValues, type TradeValue } from "../../shared/trade/all-values.ts";
import { isFromMemory } from "../../shared/trade/is-from-memory.ts";
import type { Source } from "../../shared/trade/source.ts";

/**
 * Prints the trade values that were only remembered, grouped by table; with `--all` every value. Gives the exit
 * code: 0, or 2 for an argument it does not know.
 */
export async function run(args: string[]): Promise<number> {
  const unknown = args.find((arg) => arg !== "--all");
  if (unknown !== undefined) {
    console.error(`values: "${unknown}" is not known. Say nothing for the values from memory, or --all.`);
    return 2;
  }
  const shown = args.includes("--all") ? allValues : allValues.filter(({ source }) => isFromMemory(source));
  for (const line of valueTable(shown)) console.log(line);
  const fromMemory = allValues.filter(({ source }) => isFromMemory(source)).length;
  console.log(`\n${fromMemory} of ${allValues.length} values are from memory. Check them in a current copy.`);
  return 0;
}

/** The lines of the printed table: a heading for each trade table, then name, value and source in columns. */
export function valueTable(values: readonly TradeValue[]): string[] {
  const nameWidth = Math.max(0, ...values.map(({ name }) => name.length));
  const valueWidth = Math.max(0, ...values.map(({ valueText }) => valueText.length));
  const line = ({ name, valueText, source }: TradeValue) =>
    `  ${name.padEnd(nameWidth)}  ${valueText.padEnd(valueWidth)}  ${sourceText(source)}`;
  const tables = new Set(values.map(({ table }) => table));
  return [...tables].flatMap((table) => [
    "",
    table,
    ...values.filter((row) => row.table === table).map(line),
  ]);
}

function sourceText(source: Source): string {
  if (source.kind === "common practice, no source") return source.kind;
  if (source.kind === "from memory") return `from memory: ${source.about}`;
  return `${source.document}, ${source.clause} (${source.kind}, ${source.checked})`;
}

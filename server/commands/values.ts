import { rules } from "../../shared/rules/index.ts";
import { allValues, type TradeValue } from "../../shared/trade/all-values.ts";
import { isFromMemory } from "../../shared/trade/is-from-memory.ts";
import type { Source } from "../../shared/trade/source.ts";

/**
 * Prints the trade values and the clauses of rules that were only remembered, values grouped by table; with `--all`
 * every value and clause. Gives the exit code: 0, or 2 for an argument it does not know.
 */
export async function run(args: string[]): Promise<number> {
  const unknown = args.find((arg) => arg !== "--all");
  if (unknown !== undefined) {
    console.error(`values: "${unknown}" is not known. Say nothing for the values from memory, or --all.`);
    return 2;
  }
  const isShown = ({ source }: { source: Source }) => args.includes("--all") || isFromMemory(source);
  for (const line of valueTable(allValues.filter(isShown))) console.log(line);
  console.log("\nrules");
  for (const { name, source } of ruleSources().filter(isShown))
    console.log(`  ${name}  ${sourceText(source)}`);
  const remembered = (all: readonly { source: Source }[]) =>
    all.filter(({ source }) => isFromMemory(source)).length;
  console.log(
    `\n${remembered(allValues)} of ${allValues.length} values and the clauses of ${remembered(ruleSources())} of ` +
      `${ruleSources().length} rules are from memory. Check them in a current copy.`,
  );
  return 0;
}

/** What every rule rests on, and the variants that rest on something else. */
export const ruleSources = (): { name: string; source: Source }[] =>
  rules.flatMap(({ id, source, variantSources = {} }) => [
    { name: id, source },
    ...Object.entries(variantSources).map(([variant, own]) => ({ name: `${id}/${variant}`, source: own })),
  ]);

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

import { readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { allValues } from "../../../shared/trade/all-values.ts";
import type { Source } from "../../../shared/trade/source.ts";
import { unitOfName } from "../../../shared/trade/unit-of-name.ts";

const folder = new URL("../../../shared/trade/", import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith(".ts") && name !== "all-values.ts");
const modules = await Promise.all(
  files.map(
    async (name) => [name, (await import(new URL(name, folder).href)) as Record<string, unknown>] as const,
  ),
);
/** Every exported table of the folder: rows with a source each, or single values with `sources`. */
const tables = modules.flatMap(([, exported]) =>
  Object.entries(exported)
    .filter(
      ([, table]) =>
        Array.isArray(table) || (typeof table === "object" && table !== null && "sources" in table),
    )
    .map(([name, table]) => ({ name, table: table as unknown[] | { sources: Record<string, Source> } })),
);
const sizeOf = ({ table }: (typeof tables)[number]) =>
  Array.isArray(table) ? table.length : Object.keys(table.sources).length;

function says(source: Source): string {
  if (source.kind === "common practice, no source") return source.kind;
  return source.kind === "from memory"
    ? source.about
    : `${source.document} ${source.clause} ${source.checked}`;
}

describe("values of the trade", () => {
  it.each(tables)("are all listed for $name", (table) => {
    const listed = allValues.filter((value) => value.table === unitOfName(table.name).words);
    expect(sizeOf(table)).toBeGreaterThan(0);
    expect(listed).toHaveLength(sizeOf(table));
  });

  it("are listed from no table that the folder does not have", () => {
    expect(tables.length).toBeGreaterThan(35);
    expect(allValues).toHaveLength(tables.reduce((sum, table) => sum + sizeOf(table), 0));
  });

  it.each(tables)("carry a source that says something in every row of $name", ({ table }) => {
    const sources = Array.isArray(table)
      ? table.map((row) => (row as { source: Source }).source)
      : Object.values(table.sources);
    for (const source of sources) expect(says(source).trim().length).toBeGreaterThan(5);
  });

  it("each have a name of their own in their table", () => {
    const names = allValues.map(
      ({ table, name, valueText }) => `${table}: ${name} ${name === "" ? valueText : ""}`,
    );
    const seen = new Set<string>();
    const twice = names.filter((name) => seen.size === seen.add(name).size);
    expect(twice).toEqual([]);
  });

  it("are printed with their unit", () => {
    const of = (table: string, name: string) =>
      allValues
        .filter((value) => value.table === table && value.name === name)
        .map(({ valueText }) => valueText);
    expect(of("cable capacity", "csa 2.5 mm², method C")).toEqual(["27 A"]);
    expect(of("copper resistance", "csa 2.5 mm²")).toEqual(["7.41 mΩ/m"]);
    expect(of("floor areas", "shape radial, least device 20 A, most device 20 A")).toEqual([
      "least csa 2.5 mm², most area 50 m²",
    ]);
    expect(of("supply", "nominal")).toEqual(["230 V"]);
  });

  it("are never all called checked: the ones only remembered say so", () => {
    const memory = allValues.filter(({ source }) => says(source).includes("from memory"));
    expect(memory.map(({ table, name }) => `${table}, ${name}`)).toEqual(
      expect.arrayContaining([
        "cable capacity, csa 2.5 mm², method A",
        "insulation factors, length 50 mm",
        "fuse zs, fuse BS 88-3, rating 20 A, disconnection 5 s",
        "appliance limits, own circuit cooking over",
        "copper heat, beta",
      ]),
    );
  });

  it("are no more called remembered where a copy of them was seen, which the table names", () => {
    const memory = allValues.filter(({ source }) => says(source).includes("from memory"));
    const tables = new Set(memory.map(({ table }) => table));
    for (const table of ["device ratings", "grouping factors", "fuse ratings", "isolation steps"])
      expect(tables).not.toContain(table);
  });
});

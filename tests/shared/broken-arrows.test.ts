import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

/** A project in which every arrow of the house is broken once, and one in which none is. */
const broken: Record<string, string> = {
  "shared/trade/table.ts": `import "../rules/judge.ts"; export const words = 1;`,
  "shared/rules/judge.ts": `import "../../server/main.ts";`,
  "shared/odd/new.ts": `import "../text/words.ts";`,
  "shared/text/words.ts": `export const words = 1;`,
  "hardware/one.ts": `import type { Two } from "./two.ts"; export type One = Two;`,
  "hardware/two.ts": `import type { One } from "./one.ts"; import "../server/main.ts"; export type Two = One;`,
  "server/main.ts": `import "../hardware/three.ts"; import "../kiosk/app.ts";`,
  "hardware/three.ts": `export const three = 3;`,
  "kiosk/app.ts": `import "../hardware/three.ts"; export const app = 1;`,
  "kiosk/Bench.svelte": `<script lang="ts">import { words } from "../shared/circuit/shape.ts";</script>{words}`,
  "kiosk/Table.svelte": `<script lang="ts">import { words } from "../shared/trade/table.ts";</script>{words}`,
  "shared/circuit/shape.ts": `import "../board/ids.ts"; export const words = 1;`,
  "shared/board/ids.ts": `export const id = 1;`,
};

const folders = ["shared", "hardware", "server", "kiosk"];
const tool = resolve("node_modules/dependency-cruiser/bin/dependency-cruise.mjs");

interface Report {
  summary: { violations: { from: string; to: string; rule: { name: string } }[] };
}

describe("the tool that holds the arrows", () => {
  let folder = "";
  let report: Report;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "spurwise-arrows-"));
    for (const [path, text] of Object.entries(broken)) {
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      writeFileSync(join(folder, path), text);
    }
    writeFileSync(join(folder, "tsconfig.json"), `{"compilerOptions":{"allowImportingTsExtensions":true}}`);
    const { stdout } = spawnSync(
      process.execPath,
      [tool, "--config", resolve(".dependency-cruiser.cjs"), "--output-type", "json", ...folders],
      { cwd: folder, encoding: "utf8" },
    );
    report = JSON.parse(stdout) as Report;
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it.each([
    ["a floor that stands after it", "slope-trade", "shared/trade/table.ts"],
    ["a floor that is not on the slope", "known-floor", "shared/odd/new.ts"],
    ["the server, from shared/", "shared-alone", "shared/rules/judge.ts"],
    ["the server, from hardware/", "hardware", "hardware/two.ts"],
    ["the hardware, from the server", "server-opens", "server/main.ts"],
    ["the kiosk, from the server", "server-no-kiosk", "server/main.ts"],
    ["the hardware, from the kiosk", "kiosk", "kiosk/app.ts"],
    ["a computation, from a screen", "kiosk-computes-nothing", "kiosk/Bench.svelte"],
    ["a table of the trade, from a screen", "kiosk-computes-nothing", "kiosk/Table.svelte"],
    ["one another, by types alone", "no-circle", "hardware/one.ts"],
  ])("fails an import of %s", (_what, name, file) => {
    const found = report.summary.violations.filter(({ rule, from }) => rule.name === name && from === file);
    expect(found.length).toBeGreaterThan(0);
  });

  it("lets an arrow down the slope be", () => {
    const from = report.summary.violations.map((violation) => violation.from);
    expect(from).not.toContain("shared/circuit/shape.ts");
  });
});

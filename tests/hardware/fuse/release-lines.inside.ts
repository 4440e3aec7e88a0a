import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { openChainLines } from "../../../hardware/lines/chain-lines.ts";
import { openDirectLines } from "../../../hardware/lines/direct-lines.ts";
import {
  control,
  freshKernel,
  freshWorkshop,
  putDirect,
  report,
  smallPins,
  workshop,
} from "./emulated-gpio.ts";

const hook = join(import.meta.dirname, "../../../hardware/pi-setup/release-lines.sh");
const run = (release: string) =>
  spawnSync(hook, { env: { ...process.env, SPURWISE_RELEASE: release }, encoding: "utf8" });

describe("the stop hook, after a run that was killed with every line pulled", () => {
  it("lets a chain board go: output enable is high and stays so", async () => {
    freshWorkshop();
    (await openChainLines(workshop)).exchange(new Uint8Array(206).fill(1));
    expect(report().pulled).toHaveLength(206);
    expect(run("24:high")).toMatchObject({ status: 0, stderr: "" });
    expect(report().pulled).toEqual([]);
    expect(report().pins[24]).toMatchObject({ isExported: true, isOut: true, level: 1 });
  });

  it("lets a direct board go: every line is an input", async () => {
    freshKernel();
    putDirect(smallPins);
    (await openDirectLines({ pins: smallPins })).exchange(new Uint8Array(24).fill(1));
    expect(report().pulled).toHaveLength(24);
    expect(run(smallPins.map((bcm) => `${bcm}:in`).join(" "))).toMatchObject({ status: 0, stderr: "" });
    expect(report().pulled).toEqual([]);
  });

  it("exports output enable itself where the run had not come so far", () => {
    freshWorkshop();
    expect(run("24:high")).toMatchObject({ status: 0, stderr: "" });
    expect(report().pins[24]).toMatchObject({ isExported: true, isOut: true, level: 1 });
    expect(report().pullEvents).toBe(0);
  });

  it("says so and fails where there is no header's chip, and does nothing where nothing is asked", () => {
    control("reset", "chip INT34C5:00 0 54");
    expect(run("24:high").status).toBe(1);
    expect(run("24:high").stderr).toMatch(/no chip of a Raspberry Pi header/);
    expect(run("").status).toBe(0);
  });
});

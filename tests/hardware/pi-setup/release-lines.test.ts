import { spawnSync } from "node:child_process";
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";

const hook = join(import.meta.dirname, "../../../hardware/pi-setup/release-lines.sh");

/**
 * The stop hook on a kernel without sysfs pins. Stand-ins for gpiod's programs write down how they were called; what
 * `gpiodetect` prints is the form of libgpiod 1.6 (its tools/gpiodetect.c: `%s [%s] (%u lines)`; from memory).
 */
describe("the stop hook on a kernel without sysfs pins", () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), "stop-hook-"));
    mkdirSync(join(folder, "bin"));
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  const standIn = (name: string, script: string): void => {
    const file = join(folder, "bin", name);
    writeFileSync(file, `#!/bin/sh\n${script}\n`);
    chmodSync(file, 0o755);
  };
  const programs = (chips: string): void => {
    standIn("gpiodetect", `cat <<'CHIPS'\n${chips}\nCHIPS`);
    for (const name of ["gpioset", "gpioget"]) standIn(name, `echo "${name} $*" >>"${folder}/calls"`);
  };
  const run = (release: string, path = `${join(folder, "bin")}:/usr/bin:/bin`) =>
    spawnSync("/bin/sh", [hook, join(folder, "no-sysfs")], {
      env: { PATH: path, SPURWISE_RELEASE: release },
      encoding: "utf8",
    });
  const calls = (): string[] =>
    existsSync(join(folder, "calls"))
      ? readFileSync(join(folder, "calls"), "utf8").trimEnd().split("\n")
      : [];

  it("drives the output enable of a chain high on the header's chip, the larger of two of its label", () => {
    programs(
      "gpiochip0 [raspberrypi-exp-gpio] (8 lines)\ngpiochip4 [pinctrl-rp1] (54 lines)\ngpiochip7 [pinctrl-rp1] (4 lines)",
    );
    expect(run("24:high").status).toBe(0);
    expect(calls()).toEqual(["gpioset gpiochip4 24=1"]);
  });

  it("makes every line of a direct board an input", () => {
    programs("gpiochip0 [pinctrl-bcm2711] (58 lines)");
    expect(run("2:in 3:in 17:in").status).toBe(0);
    expect(calls()).toEqual(["gpioget gpiochip0 2", "gpioget gpiochip0 3", "gpioget gpiochip0 17"]);
  });

  it("goes on with the other pins where one cannot be had, and ends with 1", () => {
    programs("gpiochip0 [pinctrl-bcm2711] (58 lines)");
    standIn("gpioget", `echo "gpioget $*" >>"${folder}/calls"; [ "$2" != 3 ]`);
    expect(run("2:in 3:in 17:in").status).toBe(1);
    expect(calls()).toHaveLength(3);
  });

  it.each([
    {
      what: "no chip of a header is there",
      prepare: () => programs("gpiochip0 [other-chip] (8 lines)"),
      says: /gpiodetect names no chip of a Raspberry Pi header/,
    },
    { what: "the programs are not there", prepare: () => {}, says: /no gpioset: apt-get install gpiod/ },
  ])("says so where $what, and ends with 1", ({ prepare, says }) => {
    prepare();
    for (const name of ["sed", "sort", "cat"])
      standIn(name, `exec "$(PATH=/usr/bin:/bin command -v ${name})" "$@"`);
    const { status, stderr } = run("24:high", join(folder, "bin"));
    expect(stderr).toMatch(says);
    expect(status).toBe(1);
    expect(calls()).toEqual([]);
  });

  it("has nothing to do where there is nothing to let go of", () => {
    expect(run("").status).toBe(0);
  });
});

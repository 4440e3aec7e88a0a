import { execFileSync, spawnSync } from "node:child_process";
import { copyFileSync, cpSync, mkdirSync, readFileSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { basename, join } from "node:path";
import ts from "typescript";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { builtProject, fileIn, freshPiRoot, rootObstacle, setUp } from "../hardware/pi-setup/pi-root.ts";

/**
 * The service as the set-up script installs it, started by a real systemd in a container with the emulated pins:
 * hardening that would keep Node or the GPIO package from working shows here, and so does whether the watchdog
 * bites and the stop hook lets go.
 */
const projectFolder = join(import.meta.dirname, "../..");
const fuseFolder = join(projectFolder, "tests/hardware/fuse");
const piFolder = join(projectFolder, "tests/hardware/pi-setup");

interface Step {
  step: string;
  restarts: number;
  facts: {
    uid: number;
    writesData: string;
    writesProgram: string;
    seesHome: boolean;
    networks: number;
  } | null;
  pins: { pulled: number[]; pins: Record<string, { isOut: boolean; level: number }> };
}

function obstacle(): string | undefined {
  const works = (command: string, ...args: string[]) => spawnSync(command, args).status === 0;
  const noRoot = rootObstacle();
  if (noRoot !== undefined) return noRoot;
  if (!works("systemd-nspawn", "--version")) return "it needs the Debian package systemd-container";
  if (!works("gcc", "--version") || !works("pkg-config", "fuse3"))
    return "it needs the Debian packages gcc, pkg-config, libfuse3-dev and fuse3";
  return undefined;
}

/** Puts programs into the root that packages would bring: this machine's own, with the libraries they load. */
function lendProgram(root: string, program: string, target: string): void {
  copyFileSync(program, join(root, target));
  const libraries = execFileSync("ldd", [program], { encoding: "utf8" }).matchAll(/=> (\/\S+)/g);
  for (const [, library] of libraries) {
    if (library === undefined) continue;
    const place = join(root, "usr/local/lib", basename(library));
    // What Debian's base has already is newer or the same.
    if (!/lib(c|m|dl|pthread|rt)\.so/.test(library)) copyFileSync(realpathSync(library), place);
  }
}

/** The project's hardware folder as the plain modules that Node runs, and the driver package with what it needs. */
function lendHardware(root: string): void {
  const target = join(root, "opt/spurwise/dist/hardware");
  mkdirSync(target, { recursive: true });
  for (const name of [
    "health/chain-check",
    "lines/chain-lines",
    "lines/character-pins",
    "lines/errno",
    "lines/gpio-base",
    "lines/lines",
    "lines/open-pins",
    "lines/pin-attempts",
    "scan/systemd-watchdog",
  ]) {
    const source = readFileSync(join(projectFolder, `hardware/${name}.ts`), "utf8");
    const compilerOptions = {
      target: ts.ScriptTarget.ES2022,
      module: ts.ModuleKind.ESNext,
      rewriteRelativeImportExtensions: true,
      verbatimModuleSyntax: true,
    };
    mkdirSync(join(target, name, ".."), { recursive: true });
    writeFileSync(join(target, `${name}.js`), ts.transpileModule(source, { compilerOptions }).outputText);
  }
  const require = createRequire(import.meta.url);
  for (const name of ["onoff", "epoll", "lodash.debounce", "bindings", "file-uri-to-path"]) {
    const folder = join(require.resolve(`${name}/package.json`), "..");
    cpSync(folder, join(root, "opt/spurwise/node_modules", name), { recursive: true });
  }
}

/** Pins in place of sysfs's, made before the service starts and handed to the gpio group as udev does. */
function lendPins(root: string): void {
  const gpiofs = join(root, "usr/local/bin/gpiofs");
  const flags = execFileSync("pkg-config", ["--cflags", "--libs", "fuse3"], { encoding: "utf8" }).trim();
  const sources = ["gpiofs.c", "board-model.c"].map((name) => join(fuseFolder, name));
  execFileSync("gcc", ["-O2", "-o", gpiofs, ...sources, ...flags.split(/\s+/)]);
  lendProgram(root, gpiofs, "usr/local/bin/gpiofs.lent");
  const group = /^gpio:x:(\d+):/m.exec(fileIn(root, "etc/group") ?? "")?.[1];
  writeFileSync(
    join(root, "usr/local/bin/start-pins"),
    [
      "#!/bin/sh -e",
      "mount -t tmpfs -o mode=755 classes /sys/class",
      "mkdir /sys/class/gpio",
      "/usr/local/bin/gpiofs -s -o allow_other,default_permissions /sys/class/gpio",
      "until [ -e /sys/class/gpio/.control ]; do sleep 0.05; done",
      "cat >/sys/class/gpio/.control <<TEXT",
      "chip pinctrl-bcm2711 512 54",
      "chain 3 3 0 11 10 8 25 9 24 -1",
      `owner 0 ${group} ${0o770} 50`,
      "TEXT",
      "",
    ].join("\n"),
    { mode: 0o755 },
  );
}

function addUnits(root: string): void {
  const units = join(root, "etc/systemd/system");
  copyFileSync(join(piFolder, "boot-probe.sh"), join(root, "usr/local/bin/boot-probe"));
  const oneshot = (name: string, lines: string): void => {
    writeFileSync(join(units, name), `[Service]\nType=oneshot\nRemainAfterExit=yes\n${lines}`);
    execFileSync("ln", ["-s", `/etc/systemd/system/${name}`, join(units, "multi-user.target.wants", name)]);
  };
  oneshot("emulated-gpio.service", "ExecStart=/usr/local/bin/start-pins\n[Unit]\nBefore=spurwise.service\n");
  oneshot(
    "boot-probe.service",
    "ExecStart=/usr/local/bin/boot-probe\nStandardOutput=file:/var/log/probe.jsonl\nStandardError=journal\n" +
      "[Unit]\nAfter=spurwise.service\n",
  );
  // The bite is the same; the wait for it is shorter, and long enough for a machine busy with other checks.
  mkdirSync(join(units, "spurwise.service.d"));
  writeFileSync(join(units, "spurwise.service.d/soon.conf"), "[Service]\nWatchdogSec=8\n");
}

const reason = obstacle();
if (reason !== undefined) {
  const sentence = `The bench's service is not started here: ${reason}.`;
  if (process.env["CI"] === undefined) console.warn(sentence);
  it.skipIf(process.env["CI"] === undefined)("the bench's service is started by a real systemd", () => {
    expect.fail(sentence);
  });
} else {
  describe("the bench's service, started by a real systemd", () => {
    let root: string;
    let project: string;
    let steps: Step[];
    let journal: string;
    const step = (name: string): Step => {
      const found = steps.find((one) => one.step === name);
      if (found === undefined) throw new Error(`no step "${name}"; the journal says:\n${journal}`);
      return found;
    };

    beforeAll(() => {
      root = freshPiRoot();
      project = builtProject(readFileSync(join(piFolder, "stand-in-server.mjs"), "utf8"), {
        wiring: {
          kind: "chain",
          pins: { shiftClock: 11, dataOut: 10, latch: 8, load: 25, dataIn: 9, outputEnable: 24 },
          lineCount: 24,
        },
      });
      setUp(root, "--app", project, "--board", "bench", "--no-kiosk");
      lendProgram(root, process.execPath, "usr/bin/node");
      lendHardware(root);
      lendPins(root);
      addUnits(root);
      execFileSync("chroot", [root, "ldconfig"]);
      spawnSync(
        "systemd-nspawn",
        [
          "--quiet",
          "--register=no",
          "--keep-unit",
          "--bind=/dev/fuse",
          "--property=DeviceAllow=/dev/fuse rwm",
          "-bD",
          root,
        ],
        { stdio: "ignore", timeout: 90_000, killSignal: "SIGKILL" },
      );
      journal = fileIn(root, "var/log/service.txt") ?? "";
      steps = (fileIn(root, "var/log/probe.jsonl") ?? "")
        .split("\n")
        .filter((line) => line !== "")
        .map((line) => JSON.parse(line) as Step);
    }, 300_000);
    afterAll(() => {
      rmSync(join(root, ".."), { recursive: true, force: true });
      rmSync(project, { recursive: true, force: true });
    });

    it("reaches its pins through the gpio group, keeps its data, and can change nothing else", () => {
      const { facts, pins } = step("running");
      expect(pins.pulled).toHaveLength(24);
      expect(facts).toMatchObject({ writesData: "done", writesProgram: "EROFS", seesHome: false });
      expect(facts?.uid).toBeGreaterThan(0);
      expect(facts?.networks).toBeGreaterThan(0);
    });

    it("lets go of every line when it is killed, and comes back by itself", () => {
      expect(step("killed").pins.pulled).toEqual([]);
      expect(step("killed").pins.pins["24"]).toMatchObject({ isOut: true, level: 1 });
      expect(step("running again").restarts).toBe(1);
      expect(step("running again").pins.pulled).toHaveLength(24);
    });

    it("is started again by the watchdog when its scan loop hangs", () => {
      expect(journal).toContain("Watchdog timeout");
      expect(step("running after a hang").restarts).toBe(2);
      expect(step("running after a hang").pins.pulled).toHaveLength(24);
    });

    it("leaves output enable high and no line pulled when it is stopped", () => {
      expect(step("stopped").pins.pulled).toEqual([]);
      expect(step("stopped").pins.pins["24"]).toMatchObject({ isOut: true, level: 1 });
    });
  });
}

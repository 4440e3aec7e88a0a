import { execFileSync, spawnSync } from "node:child_process";
import { chmodSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import {
  builtProject,
  contents,
  differing,
  fileIn,
  freshPiRoot,
  rootObstacle,
  setUp,
  setupFolder,
  touchMarks,
} from "./pi-root.ts";

const chainBoard = {
  wiring: {
    kind: "chain",
    pins: { shiftClock: 11, dataOut: 10, latch: 8, load: 25, dataIn: 9, outputEnable: 24, codeIn: 23 },
    lineCount: 206,
  },
};
const directBoard = { wiring: { kind: "direct", pins: [2, 3, 17] } };
const minutesMs = 60_000;

describe("the scripts of the Pi set-up", () => {
  const scripts = readdirSync(setupFolder).filter((name) => name.endsWith(".sh"));
  it.each(scripts)("%s is clean to shellcheck", (name) => {
    const { stdout, status } = spawnSync("shellcheck", [join(setupFolder, name)], { encoding: "utf8" });
    expect(stdout).toBe("");
    expect(status).toBe(0);
  });

  it.each([
    { what: "an option that is not there", options: ["--twice"], says: /^setup: no such option: --twice$/m },
    { what: "an option without its value", options: ["--port"], says: /^setup: --port needs a value$/m },
    {
      what: "a port that is no number",
      options: ["--port", "eighty"],
      says: /^setup: --port takes a number, not 'eighty'$/m,
    },
    {
      what: "a key that is not there",
      options: ["--board", "small", "--update-key", "/nowhere/key.pem"],
      says: /^setup: there is no key .*key\.pem$/m,
    },
    {
      what: "a board that is not there",
      options: ["--board", "none"],
      says: /^setup: there is no board description .*none\.json$/m,
    },
  ])("setup.sh refuses $what in one sentence and writes nothing", ({ options, says }) => {
    const root = mkdtempSync(join(tmpdir(), "empty-root-"));
    const { stderr, status } = spawnSync(
      join(setupFolder, "setup.sh"),
      ["--root", root, "--app", join(import.meta.dirname, "../.."), ...options],
      { encoding: "utf8" },
    );
    expect(stderr).toMatch(says);
    expect(status).toBe(1);
    expect(readdirSync(root)).toEqual([]);
    rmSync(root, { recursive: true });
  });
});

describe("the pins that a board description asks of the boot configuration", () => {
  const pinsOf = (board: unknown): string[] => {
    const project = builtProject("", board);
    const output = execFileSync(
      process.execPath,
      [join(setupFolder, "board-pins.mjs"), join(project, "hardware/boards/bench.json")],
      { encoding: "utf8" },
    );
    rmSync(project, { recursive: true });
    return output.trimEnd().split("\n");
  };

  it("hold a chain board at rest: output enable and load up, all others down, none driven", () => {
    const lines = pinsOf(chainBoard);
    expect(lines.filter((line) => line.startsWith("gpio=")).sort()).toEqual([
      "gpio=10=ip,pd",
      "gpio=11=ip,pd",
      "gpio=23=ip,pd",
      "gpio=24=ip,pu",
      "gpio=25=ip,pu",
      "gpio=8=ip,pd",
      "gpio=9=ip,pd",
    ]);
    expect(lines).toContain("release 24:high");
  });

  it("make every line of a direct board an input, pulled down weakly so that no board reads as all low", () => {
    expect(pinsOf(directBoard)).toEqual([
      "gpio=2=ip,pd",
      "gpio=3=ip,pd",
      "gpio=17=ip,pd",
      "release 2:in 3:in 17:in",
      "bcm 2",
      "bcm 3",
      "bcm 17",
    ]);
  });
});

const reason = rootObstacle();
if (reason !== undefined) {
  const sentence = `The Pi set-up is not checked here: ${reason}.`;
  if (process.env["CI"] === undefined) console.warn(sentence);
  it.skipIf(process.env["CI"] === undefined)("the Pi set-up is checked in a Debian root", () => {
    expect.fail(sentence);
  });
} else {
  describe("the Pi set-up in a Debian root", () => {
    let root: string;
    let project: string;
    let before: Map<string, string>;
    const options = (): string[] => ["--app", project, "--board", "bench", "--read-only"];

    beforeAll(() => {
      root = freshPiRoot();
      project = builtProject("console.log('bench');\n", chainBoard);
      before = contents(root);
      setUp(root, ...options());
    }, 5 * minutesMs);
    afterAll(() => {
      rmSync(join(root, ".."), { recursive: true, force: true });
      rmSync(project, { recursive: true, force: true });
    });

    it("starts the bench and its screen at boot, with the pins at rest from power-up", () => {
      const wanted = readdirSync(join(root, "etc/systemd/system/multi-user.target.wants"));
      expect(wanted).toEqual(expect.arrayContaining(["spurwise.service", "spurwise-kiosk.service"]));
      expect(fileIn(root, "boot/firmware/config.txt")).toContain("\n[all]\ngpio=11=ip,pd\n");
      expect(fileIn(root, "boot/firmware/cmdline.txt")).toMatch(
        /^console=tty1 .* rootwait overlayroot=tmpfs:recurse=0 consoleblank=0\n$/,
      );
      expect(fileIn(root, "etc/fstab")).toMatch(/^LABEL=spurwise-data \/var\/lib\/spurwise ext4 /m);
      expect(fileIn(root, "etc/spurwise/spurwise.env")).toMatch(/^SPURWISE_LINES=gpio$/m);
      expect(fileIn(root, "etc/group")).toMatch(/^gpio:x:\d+:spurwise$/m);
    });

    it("changes no file when it is run again", () => {
      const marks = touchMarks(root);
      setUp(root, ...options());
      expect(differing(marks, touchMarks(root))).toEqual([]);
    });

    it("makes units that systemd finds nothing wrong with", () => {
      // Programs that the packages would bring.
      for (const program of ["node", "cage"]) {
        writeFileSync(join(root, "usr/bin", program), "#!/bin/sh\n");
        chmodSync(join(root, "usr/bin", program), 0o755);
      }
      const { stderr, status } = spawnSync(
        "systemd-analyze",
        ["verify", `--root=${root}`, "spurwise.service", "spurwise-kiosk.service"],
        { encoding: "utf8" },
      );
      for (const program of ["node", "cage"]) rmSync(join(root, "usr/bin", program));
      expect(stderr).toBe("");
      expect(status).toBe(0);
    });

    it("exposes the bench's service by 3.0 or less of 10", () => {
      const report = execFileSync(
        "systemd-analyze",
        ["security", "--offline=yes", "--no-pager", `--root=${root}`, "spurwise.service"],
        { encoding: "utf8" },
      );
      const level = /exposure level for spurwise.service: ([\d.]+)/.exec(report)?.[1];
      expect(Number(level)).toBeGreaterThan(0);
      expect(Number(level)).toBeLessThanOrEqual(3.0);
    });

    it("takes up another board and port, and nothing else changes", () => {
      writeFileSync(join(project, "hardware/boards/other.json"), JSON.stringify(directBoard));
      const marks = contents(root);
      setUp(root, "--app", project, "--board", "other", "--port", "8090", "--read-only");
      expect(differing(marks, contents(root))).toEqual([
        "boot/firmware/config.txt",
        "etc/spurwise/spurwise.env",
        "opt/spurwise/hardware/boards/other.json",
      ]);
      expect(fileIn(root, "boot/firmware/config.txt")?.match(/^gpio=/gm)).toHaveLength(3);
    });

    it("leaves no file behind when it is undone, and gives back every file as it was", () => {
      setUp(root, "--undo");
      expect(differing(before, contents(root))).toEqual([]);
    });

    it("keeps attempts when it is undone, unless they are to go", () => {
      setUp(root, ...options());
      writeFileSync(join(root, "var/lib/spurwise/spurwise.db"), "attempts");
      expect(setUp(root, "--undo")).toContain("the attempts stay in /var/lib/spurwise");
      expect(readFileSync(join(root, "var/lib/spurwise/spurwise.db"), "utf8")).toBe("attempts");
      setUp(root, "--undo", "--delete-data");
      expect(differing(before, contents(root))).toEqual([]);
    });

    it("deletes attempts on a partition of their own while it is mounted, and then unmounts it", () => {
      setUp(root, ...options());
      const data = join(root, "var/lib/spurwise");
      execFileSync("mount", ["-t", "tmpfs", "spurwise-data", data]);
      try {
        writeFileSync(join(data, "spurwise.db"), "attempts");
        setUp(root, "--undo", "--delete-data");
        expect(spawnSync("mountpoint", ["-q", data]).status).not.toBe(0);
        expect(differing(before, contents(root))).toEqual([]);
      } finally {
        spawnSync("umount", [data]);
      }
    });

    it("names what it changes and what it takes away before it does", () => {
      const said = setUp(root, ...options()).split("\n");
      expect(said[0]).toMatch(/this will be written or changed/);
      const isNamed = (what: string) =>
        said.findIndex((line) => line.startsWith("setup:   - ") && line.includes(what));
      const isDone = (what: string) =>
        said.findIndex((line) => /setup: (wrote|changed)/.test(line) && line.includes(what));
      for (const what of [
        "config.txt",
        "cmdline.txt",
        "fstab",
        "/etc/spurwise",
        "/etc/sysusers.d/spurwise.conf",
      ]) {
        expect(isNamed(what), what).toBeGreaterThan(0);
        expect(isDone(what), what).toBeGreaterThan(isNamed(what));
      }
      expect(setUp(root, "--undo")).toMatch(/^setup: this will be taken away:\n/);
    });

    it("says what is missing, and changes nothing, when it is asked to check", () => {
      const marks = touchMarks(root);
      const check = (): { status: number | null; stdout: string } =>
        spawnSync(join(setupFolder, "setup.sh"), ["--check", "--root", root, ...options()], {
          encoding: "utf8",
        });
      expect(check()).toMatchObject({ status: 1 });
      expect(check().stdout).toMatch(/missing: this kernel shows no pins at \/sys\/class\/gpio/);
      expect(check().stdout).toMatch(/missing: the group gpio/);
      expect(differing(marks, touchMarks(root))).toEqual([]);
      // A kernel with a character device, and the headers of libgpiod 1, then of 2.
      mkdirSync(join(root, "usr/include"), { recursive: true });
      const [chip, header] = [join(root, "dev/gpiochip0"), join(root, "usr/include/gpiod.h")];
      for (const file of [chip, header]) writeFileSync(file, "");
      expect(check().stdout).toMatch(/the bench goes through its character device/);
      writeFileSync(header, "struct gpiod_line_request *gpiod_chip_request_lines();\n");
      expect(check().stdout).toMatch(/missing: this kernel shows no pins/);
      for (const file of [chip, header]) rmSync(file);
      const pins = join(root, "sys/class/gpio");
      mkdirSync(join(pins, "gpiochip512"), { recursive: true });
      writeFileSync(join(pins, "export"), "");
      writeFileSync(join(pins, "gpiochip512/label"), "pinctrl-other\n");
      expect(check().stdout).toMatch(/no chip of a Raspberry Pi header among these: pinctrl-other/);
      writeFileSync(join(pins, "gpiochip512/label"), "pinctrl-bcm2711\n");
      execFileSync("groupadd", ["--prefix", root, "--system", "gpio"]);
      expect(check()).toMatchObject({ status: 0, stdout: "setup: nothing is missing\n" });
      execFileSync("groupdel", ["--prefix", root, "gpio"]);
      rmSync(join(root, "sys/class"), { recursive: true });
    });

    it("is refused beside a desktop, whose display manager would fight over the screen", () => {
      const link = join(root, "etc/systemd/system/display-manager.service");
      writeFileSync(link, "");
      expect(() => setUp(root, ...options())).toThrow(/a desktop is installed/);
      rmSync(link);
      expect(differing(before, contents(root))).toEqual([]);
    });
  });
}

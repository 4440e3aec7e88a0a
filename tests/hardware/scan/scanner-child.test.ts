import { type ChildProcess, fork } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "vite";
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from "vitest";
import type { FromScanner, ToScanner } from "../../../hardware/scan/scanner-messages.ts";
import { contact, shippedBoard } from "./program-bench.ts";

/** The scanner's own process, bundled as it ships, heard over its channel. */
class Child {
  readonly #process: ChildProcess;
  readonly #heard: FromScanner[] = [];
  #look: () => void = () => undefined;
  readonly ended: Promise<string>;
  complaint = "";

  constructor(path: string) {
    this.#process = fork(path, [], { execArgv: [], serialization: "json", silent: true });
    this.#process.on("message", (message) => {
      this.#heard.push(message as FromScanner);
      this.#look();
    });
    this.#process.stderr?.on("data", (text) => (this.complaint += String(text)));
    this.ended = new Promise((resolve) =>
      this.#process.once("exit", (code, signal) => resolve(`${signal ?? code ?? ""}`)),
    );
    onTestFinished(() => void this.#process.kill("SIGKILL"));
  }

  send(message: ToScanner): void {
    this.#process.send(message);
  }

  /** The first message from now or before that fits; each is given once. */
  next<Type extends FromScanner["type"]>(
    type: Type,
    fits: (message: Extract<FromScanner, { type: Type }>) => boolean = () => true,
  ): Promise<Extract<FromScanner, { type: Type }>> {
    type Wanted = Extract<FromScanner, { type: Type }>;
    return new Promise((resolve) => {
      this.#look = () => {
        const at = this.#heard.findIndex((each) => each.type === type && fits(each as Wanted));
        if (at === -1) return;
        this.#look = () => undefined;
        resolve(this.#heard.splice(0, at + 1).at(-1) as Wanted);
      };
      this.#look();
    });
  }

  goAway(): void {
    this.#process.disconnect();
  }

  signal(name: NodeJS.Signals): void {
    this.#process.kill(name);
  }
}

const external = ["onoff", "node-libgpiod"];
let folder = "";
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "scanner-child-"));
  await build({
    configFile: false,
    logLevel: "error",
    ssr: { noExternal: true, external },
    build: {
      ssr: true,
      outDir: folder,
      target: "node20",
      rolldownOptions: { external, input: { "scanner-child": "hardware/scan/scanner-child.ts" } },
    },
  });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const start = (): Child => new Child(join(folder, "scanner-child.js"));
const opened = async (): Promise<Child> => {
  const child = start();
  child.send({ type: "open", board: shippedBoard("workshop"), lines: "simulated" });
  await child.next("sensed", ({ state }) => state.isSettled);
  return child;
};

describe("the scanner's process", () => {
  it("senses a lead on the simulated board and says that it is alive", async () => {
    const child = await opened();
    child.send({
      type: "plug",
      request: 1,
      contactA: contact("way-1.a.L"),
      contactB: contact("socket-1.a.L"),
    });
    const { state } = await child.next("sensed");
    expect(state.groups).toEqual([["socket-1.a.L", "way-1.a.L"]]);
    const { patternCount } = await child.next("alive");
    expect((await child.next("alive")).patternCount).toBeGreaterThan(patternCount);
  });

  it("ends when it is told to", async () => {
    const child = await opened();
    child.send({ type: "close" });
    expect(await child.ended).toBe("0");
  });

  it("ends when the server that started it is gone", async () => {
    const child = await opened();
    child.goAway();
    expect(await child.ended).toBe("0");
  });

  it("ends when the service is stopped, and leaves an interrupt from the terminal to the server", async () => {
    const child = await opened();
    child.signal("SIGINT");
    await child.next("alive");
    await child.next("alive");
    child.signal("SIGTERM");
    expect(await child.ended).toBe("0");
  });

  it("says why a real board cannot be had, and never turns to simulation", async () => {
    const child = start();
    child.send({ type: "open", board: shippedBoard("workshop"), lines: "gpio" });
    const { code } = await child.next("open-failed");
    expect(["no-sysfs-gpio", "unknown-chip", "no-gpio-driver"]).toContain(code);
  });

  it("says why and ends when the program itself is at fault", async () => {
    const child = start();
    child.send({ type: "open", board: { id: "no board at all" } as never, lines: "simulated" });
    expect(await child.ended).toBe("1");
    expect(child.complaint).toContain("Spurwise scanner:");
  });
});

import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { systemdWatchdog } from "../../../hardware/scan/systemd-watchdog.ts";

/** A real systemd is fed in the check of the service; here a program of its name writes down what it is told. */
describe("the watchdog of the service", () => {
  let folder: string;
  const usualPath = process.env["PATH"];
  const told = (): string[] => {
    const file = join(folder, "told");
    return existsSync(file) ? readFileSync(file, "utf8").trim().split("\n") : [];
  };
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), "notify-"));
    writeFileSync(join(folder, "systemd-notify"), `#!/bin/sh\necho "$1" >>${folder}/told\n`, { mode: 0o755 });
    process.env["PATH"] = `${folder}:${usualPath}`;
  });
  afterEach(() => {
    process.env["PATH"] = usualPath;
    rmSync(folder, { recursive: true });
  });

  it("is fed at most three times in the manager's period, however often the scan loop calls", async () => {
    let nowMs = 0;
    const watchdog = systemdWatchdog({ NOTIFY_SOCKET: "/run/x", WATCHDOG_USEC: "30000000" }, () => nowMs);
    watchdog.ready();
    for (; nowMs <= 60_000; nowMs += 100) watchdog.alive();
    // At 0, 10, 20 ... 60 s.
    await vi.waitFor(() => expect(told()).toHaveLength(8), { timeout: 10_000 });
    expect(told().filter((message) => message === "WATCHDOG=1")).toHaveLength(7);
    expect(told().filter((message) => message === "READY=1")).toHaveLength(1);
  });

  it("says that it is ready and no more where the manager asks for no watchdog", async () => {
    let nowMs = 0;
    const watchdog = systemdWatchdog({ NOTIFY_SOCKET: "/run/x" }, () => nowMs);
    for (; nowMs <= 60_000; nowMs += 1000) watchdog.alive();
    watchdog.ready();
    await vi.waitFor(() => expect(told()).toEqual(["READY=1"]), { timeout: 10_000 });
  });

  it("starts no program on a laptop, where no manager listens", () => {
    const watchdog = systemdWatchdog({ WATCHDOG_USEC: "30000000" }, () => {
      throw new Error("the clock was asked");
    });
    watchdog.ready();
    watchdog.alive();
    expect(told()).toEqual([]);
  });
});

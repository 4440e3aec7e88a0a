import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { staffRoles } from "../../../shared/protocol/author.ts";
import type { KeeperView, MachineView } from "../../../shared/protocol/keep-view.ts";
import { backUpTime } from "../../../server/keep/machine-view.ts";
import { soon } from "../board/board-double.ts";
import { temporaryFolder } from "../temporary-folder.ts";
import { TestBench } from "../test-bench.ts";
import { testServer } from "../test-server.ts";

describe("how the machine is", () => {
  it("is told to the technician alone, and who sits at the desk to each of the staff", async () => {
    const { bench, url } = await testServer();
    const status = async (path: string) => (await fetch(`${url}/keep-data/${path}`)).status;
    expect([await status("me"), await status("machine")]).toEqual([401, 401]);
    for (const role of staffRoles) {
      await bench.does("sign-in", { by: "badge", badge: `SPURWISE-DEMO-${role.toUpperCase()}` });
      const me = (await (await fetch(`${url}/keep-data/me`)).json()) as KeeperView;
      expect(me).toMatchObject({ role, isAtBench: true });
      expect(await status("machine"), role).toBe(role === "technician" ? 200 : 403);
      await bench.does("sign-out", {});
    }
  });

  it("has the records, the chain, the board with its last self-check, the versions and the newest back-up", async () => {
    const folder = temporaryFolder();
    for (const name of [
      "spurwise-20260102-030405-1a2b.backup",
      "spurwise-20251231-235959-1a2b.backup",
      "other.txt",
    ])
      writeFileSync(join(folder, name), "x");
    const { bench, url } = await testServer({ backUpTo: folder });
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-TECHNICIAN" });
    const look = async () => (await (await fetch(`${url}/keep-data/machine`)).json()) as MachineView;
    const before = await look();
    expect(before).toMatchObject({
      log: { state: "sound", boot: 1, head: expect.stringMatching(/^[0-9a-f]{64}$/) as string },
      board: { state: "ready", lines: "simulated", selfCheck: null, faultCount: 0 },
      backUp: { isChosen: true, state: null, newestWallMs: Date.UTC(2026, 0, 2, 3, 4, 5) },
      clock: { state: "synced" },
    });
    expect(before.log.eventCount).toBeGreaterThan(0);
    expect(before.commit?.count).toBeGreaterThan(0);
    expect(before.database.sizeBytes).toBeGreaterThan(0);
    expect(before.disk.freeBytes).toBeGreaterThan(0);
    expect(before.disk.freeBytes).toBeLessThanOrEqual(before.disk.sizeBytes);
    await bench.does("self-check", {});
    for (let count = 0; count < 50 && (await look()).board.selfCheck === null; count += 1) {
      bench.atRest();
      await soon();
    }
    const last = { faultCount: 0, wallMs: bench.clock.wallMs() };
    expect((await look()).board.selfCheck).toEqual(last);
    await bench.stop();
    const again = new TestBench({ folder: bench.folder });
    expect(again.bench.core.board.lastSelfCheck).toMatchObject(last);
    // What is known of one board says nothing of another.
    const other = { ...again.parts.board, id: "another" };
    await again.stop();
    const moved = new TestBench({ folder: bench.folder, parts: { board: other } });
    expect(moved.bench.core.board.lastSelfCheck).toBeUndefined();
  });

  it("knows when a back-up was made by its name alone", () => {
    expect(backUpTime("spurwise-20261126-224500-1a2b.backup")).toBe(Date.UTC(2026, 10, 26, 22, 45));
    for (const name of ["spurwise-20269926-224500-1a2b.backup", "spurwise-x.backup", ""])
      expect(backUpTime(name), name).toBeNull();
  });
});

import { execFileSync, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { setupFolder } from "./pi-root.ts";

/** Runs the wait against a server that gives these answers in turn, the last one from then on. */
async function waitAgainst(answers: (() => string)[], mostS: number) {
  let asked = 0;
  const server = createServer((request, response) => {
    const answer = answers[Math.min(asked, answers.length - 1)];
    asked += 1;
    try {
      response.end(request.url === "/health" && answer !== undefined ? answer() : "");
    } catch {
      response.writeHead(500).end();
    }
  }).listen(0, "127.0.0.1");
  await once(server, "listening");
  const { port } = server.address() as AddressInfo;
  const waiting = spawn(process.execPath, [join(setupFolder, "wait-until-ready.mjs"), String(mostS)], {
    env: { ...process.env, SPURWISE_PORT: String(port) },
    stdio: ["ignore", "ignore", "pipe"],
  });
  let said = "";
  waiting.stderr.on("data", (text: Buffer) => (said += text.toString()));
  const [status] = (await once(waiting, "close")) as [number];
  server.closeAllConnections();
  server.close();
  return { status, asked, said };
}

describe("the bench screen of the Pi", () => {
  it("is opened only when the health address says that the bench is ready", async () => {
    const notYet = () => '{"isReady":false}';
    const broken = () => {
      throw new Error("starting");
    };
    const { status, asked } = await waitAgainst(
      [broken, notYet, () => "<html>", () => '{"isReady":true}'],
      30,
    );
    expect({ status, asked }).toEqual({ status: 0, asked: 4 });
  });

  it("is opened on a bench whose board cannot be had, for that is what its page says", async () => {
    const answers = ["starting", "starting", "no-board"].map(
      (state) => () => JSON.stringify({ isReady: false, board: { state } }),
    );
    expect(await waitAgainst(answers, 30)).toMatchObject({ status: 0, asked: 3 });
  });

  it("is not opened on a bench that never gets ready: the wait ends with one sentence", async () => {
    const { status, said } = await waitAgainst([() => '{"isReady":false}'], 1);
    expect(status).toBe(1);
    expect(said).toMatch(
      /^Spurwise: the bench was not ready at http:\/\/127\.0\.0\.1:\d+\/health within 1 s; .*\n$/,
    );
  });

  it("is a browser without a past, a pinch or a swipe back, on the bench's own address", () => {
    const folder = mkdtempSync(join(tmpdir(), "browser-"));
    writeFileSync(join(folder, "chromium"), '#!/bin/sh\nprintf "%s\\n" "$@"\n', { mode: 0o755 });
    const flags = execFileSync(join(setupFolder, "kiosk-session.sh"), {
      env: {
        PATH: `${folder}:/usr/bin:/bin`,
        RUNTIME_DIRECTORY: "/run/spurwise-kiosk",
        SPURWISE_PORT: "8099",
      },
      encoding: "utf8",
    }).split("\n");
    rmSync(folder, { recursive: true });
    expect(flags).toEqual(
      expect.arrayContaining([
        "--kiosk",
        "--app=http://127.0.0.1:8099/",
        "--user-data-dir=/run/spurwise-kiosk/profile",
        "--disk-cache-dir=/run/spurwise-kiosk/cache",
        "--disable-pinch",
        "--overscroll-history-navigation=0",
      ]),
    );
  });

  it("keeps the browser's profile in a folder that systemd makes in memory and empties at every start", () => {
    const unit = readFileSync(join(setupFolder, "files/spurwise-kiosk.service"), "utf8");
    expect(unit).toMatch(/^RuntimeDirectory=spurwise-kiosk$/m);
    expect(unit).toMatch(/^ExecStartPre=.*wait-until-ready\.mjs$/m);
  });
});

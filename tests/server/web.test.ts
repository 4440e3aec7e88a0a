import { mkdirSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { join } from "node:path";
import { io } from "socket.io-client";
import { describe, expect, it, onTestFinished } from "vitest";
import { readWiring } from "../../shared/wiring/read-wiring.ts";
import { judge } from "../../shared/rules/judge.ts";
import { actSamples } from "./acts/act-samples.ts";
import { temporaryFolder } from "./temporary-folder.ts";
import { TestBench } from "./test-bench.ts";
import { Screen, testServer } from "./test-server.ts";

/** A request with any headers, those a browser would not let a page set included. */
function get(
  url: string,
  headers: Record<string, string> = {},
): Promise<{ status: number; headers: Record<string, unknown>; body: string }> {
  return new Promise((resolve, reject) => {
    const sent = request(url, { headers }, (response) => {
      let body = "";
      response.on("data", (chunk: Buffer) => (body += chunk.toString("utf8")));
      response.on("end", () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, body }),
      );
    });
    sent.on("upgrade", (response, socket) => {
      socket.destroy();
      resolve({ status: response.statusCode ?? 0, headers: response.headers, body: "" });
    });
    sent.on("error", reject);
    sent.end();
  });
}

/** What a browser asks for a link with (RFC 6455). */
const upgrade = {
  connection: "Upgrade",
  upgrade: "websocket",
  "sec-websocket-version": "13",
  "sec-websocket-key": "dGhlIHNhbXBsZSBub25jZQ==",
};

describe("a message over the socket", () => {
  it("that poses as a text before anybody has signed in is refused, and the bench goes on", async () => {
    const { url } = await testServer();
    const screen = new Screen(url);
    await screen.sees(({ state }) => state === "ready");
    for (const length of [{ valueOf: 1 }, { valueOf: 1, toString: 1 }, null, "64"])
      expect(await screen.send("sign-in", { by: "name", learner: { length } })).toMatchObject({
        code: "bad-message",
        facts: { where: "sign-in: learner" },
      });
    await screen.does("sign-in", { by: "guest" });
  });

  it.each([
    { what: "a name that is no command", name: "open-the-door", message: {}, where: "open-the-door" },
    { what: "a name every object has", name: "constructor", message: {}, where: "constructor" },
    { what: "nothing at all", name: "sign-in", message: undefined, where: "sign-in: the whole file" },
    {
      what: "a field too many",
      name: "plug",
      message: { contactA: "way-1.a.L", contactB: "socket-1.a.L", force: true },
      where: "plug: the whole file",
    },
    {
      what: "a contact that is none",
      name: "plug",
      message: { contactA: "way-1.a.L", contactB: "'; DROP TABLE log" },
      where: "plug: contactB",
    },
    {
      what: "a wiring in place of a lead",
      name: "plug",
      message: { version: 1, stations: [], cables: [] },
      where: "plug: contactA",
    },
    {
      what: "a size below nothing",
      name: "declare",
      message: { subject: "socket-1", key: "ratingA", value: -1 },
      where: "declare: value",
    },
    {
      what: "another language",
      name: "set-language",
      message: { language: "xx" },
      where: "set-language: language",
    },
  ])(
    "that is $what is refused with what and where, and changes nothing",
    async ({ name, message, where }) => {
      const { bench, url } = await testServer();
      await bench.isWiring();
      const screen = new Screen(url);
      const { revision } = await screen.sees(({ state }) => state === "ready");
      const rows = bench.rows().length;
      expect(await screen.send(name, message)).toMatchObject({
        ok: false,
        code: "bad-message",
        facts: { where },
      });
      expect(bench.rows()).toHaveLength(rows);
      expect(bench.view().revision).toBe(revision);
      await screen.does("set-large", { isLarge: true });
    },
  );

  it("that is larger than 64 kB ends the link and nothing else", async () => {
    const { bench, url } = await testServer();
    const screen = new Screen(url);
    await screen.sees(() => true);
    const ended = new Promise((resolve) => screen.socket.on("disconnect", resolve));
    screen.socket.emit("sign-in", { by: "badge", badge: "x".repeat(70_000) });
    await ended;
    const next = new Screen(url);
    await next.does("sign-in", { by: "guest" });
    expect(bench.view().person).toEqual({ name: "", isGuest: true });
  });

  it("that comes in a flood is answered with too-fast, and the bench goes on", async () => {
    const { bench, url } = await testServer();
    const screen = new Screen(url);
    await screen.sees(() => true);
    const answers = await Promise.all(
      Array.from({ length: 200 }, () => screen.send("set-large", { isLarge: true })),
    );
    const refused = answers.filter((answer) => !answer.ok);
    expect(refused).toHaveLength(140);
    expect(refused.every((answer) => !answer.ok && answer.code === "too-fast")).toBe(true);
    bench.clock.advance(1000);
    await screen.does("set-large", { isLarge: false });
  });

  it("that is an act gets an answer, whatever the state of the bench", async () => {
    const { url } = await testServer();
    const screen = new Screen(url);
    for (const [name, message] of Object.entries(actSamples))
      expect(await screen.send(name, message)).toHaveProperty("ok");
  });

  it("from a page of another origin is not let in, nor under a name that is not the bench's own", async () => {
    const { url } = await testServer();
    const handshake = `${url}/socket.io/?EIO=4&transport=websocket`;
    const port = new URL(url).port;
    const asks = (headers: Record<string, string> = {}) =>
      get(handshake, { ...upgrade, ...headers }).then(({ status }) => status);
    expect(await asks()).toBe(101);
    expect(await asks({ origin: url })).toBe(101);
    expect(await asks({ origin: "http://example.org" })).toBe(400);
    expect(await asks({ origin: "null" })).toBe(400);
    expect(await asks({ "sec-fetch-site": "cross-site" })).toBe(400);
    const elsewhere = `bench.example.org:${port}`;
    expect(await asks({ host: elsewhere, origin: `http://${elsewhere}` })).toBe(400);
    expect((await get(handshake.replace("websocket", "polling"))).status).toBe(400);
  });
});

describe("a screen that connects", () => {
  it("gets the whole view at once, and every other screen the same view after a change", async () => {
    const { bench, url } = await testServer();
    const [one, two] = [new Screen(url), new Screen(url)];
    await Promise.all([one.sees(() => true), two.sees(() => true)]);
    await one.does("sign-in", { by: "name", learner: "demo-05" });
    const seen = await two.sees(({ person }) => person !== null);
    expect(seen).toEqual(JSON.parse(JSON.stringify(bench.view())));
    expect(seen.learners).toEqual([]);
  });

  it("is told of a cable once all its pins make contact and once it is on the disk, and of nothing else", async () => {
    const { bench, url } = await testServer();
    await bench.isWiring();
    const screen = new Screen(url);
    await screen.sees(({ state }) => state === "ready");
    screen.frames.length = 0;
    await screen.does("plug-cable", { entryA: "way-1.a", entryB: "socket-1.a" });
    for (let ms = 0; ms < 1000; ms += 10) {
      bench.clock.advance(10);
      await new Promise(setImmediate);
    }
    await screen.sees(({ attempt }) => attempt?.cables[0] !== undefined && !attempt.cables[0].isUnsaved);
    await screen.does("sign-out");
    await screen.sees(({ person }) => person === null);
    const changes = screen.frames.filter((frame) => frame.includes('"change"'));
    expect(changes.filter((frame) => /^[^{]*\{"of":\{"revision":\{"to":\d+\}\}\}/.test(frame))).toEqual([]);
    const told = changes.map((frame) => ["L", "N", "E"].filter((role) => frame.includes(`way-1.a.${role}`)));
    expect(told).toEqual([["L", "N", "E"], [], []]);
  });
});

describe("a socket of no audience", () => {
  it("gets no view and has no act, while the bench's own screen gets both", async () => {
    const { bench, url } = await testServer();
    const screen = new Screen(url);
    const stranger = io(url, { transports: ["websocket"], reconnection: false, forceNew: true });
    onTestFinished(() => void stranger.disconnect());
    const heard: string[] = [];
    stranger.onAny((name: string) => heard.push(name));
    await new Promise((done) => stranger.once("connect", () => done(undefined)));
    stranger.emit("set-language", { language: "pl" }, () => heard.push("answer"));
    await screen.does("set-large", { isLarge: true });
    await screen.sees(({ isLarge }) => isLarge);
    expect(heard).toEqual([]);
    expect(bench.view()).toMatchObject({ language: "en", isLarge: true });
  });
});

describe("the pages", () => {
  it("answer for their health", async () => {
    const { url } = await testServer();
    expect(JSON.parse((await get(`${url}/health`)).body)).toMatchObject({
      isReady: true,
      lines: "simulated",
      hasGpioLibrary: false,
      board: { id: "test-small", state: "ready" },
      log: { state: "sound", eventCount: 1 },
      clock: "synced",
    });
  });

  it("give the wiring on the board to be judged without a bench, in practice only", async () => {
    const { bench, url } = await testServer();
    expect((await get(`${url}/wiring.json`)).status).toBe(404);
    await bench.isWiring();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    const saved = await get(`${url}/wiring.json`);
    expect(saved.headers["content-disposition"]).toContain("wiring.json");
    const read = readWiring(saved.body, "wiring.json");
    expect(read.ok && judge(read.value)).toEqual(bench.bench.core.work.run?.judged().verdict);
    await bench.does("hand-in", {});
    await bench.does("start-attempt", { scenario: "first-spur", mode: "assessed" });
    expect((await get(`${url}/wiring.json`)).status).toBe(404);
  });

  it("may run no script but their own and are kept for a year only where their name says what is in them", async () => {
    const kioskFolder = temporaryFolder();
    mkdirSync(join(kioskFolder, "assets"));
    writeFileSync(join(kioskFolder, "index.html"), "<!doctype html><title>Spurwise</title>");
    writeFileSync(join(kioskFolder, "assets/bench-3f2a.js"), "export {};");
    const { url } = await testServer({ kioskFolder });
    const page = await get(`${url}/`);
    expect(page.body).toContain("Spurwise");
    expect(page.headers["cache-control"]).toBe("no-cache");
    expect(page.headers["content-security-policy"]).toMatch(/script-src 'self'(;|$)/);
    expect(page.headers["content-security-policy"]).toMatch(/font-src 'self'(;|$)/);
    expect(page.headers["content-security-policy"]).not.toContain("https:");
    expect(page.headers["content-security-policy"]).not.toContain("upgrade-insecure-requests");
    expect(page.headers["strict-transport-security"]).toBeUndefined();
    expect((await get(`${url}/assets/bench-3f2a.js`)).headers["cache-control"]).toMatch(
      /max-age=31536000, immutable/,
    );
    expect((await get(`${url}/../server/main.ts`)).status).toBe(404);
    expect((await get(`${url}/nothing-here`)).status).toBe(404);
  });

  it("are limited to some twelve hundred requests a minute", async () => {
    const { url } = await testServer();
    let status = 200;
    for (let count = 0; count < 1300 && status !== 429; count += 1)
      status = (await get(`${url}/health`)).status;
    expect(status).toBe(429);
  });
});

describe("who may start what", () => {
  const start = (bench: TestBench, mode: "practice" | "assessed" | "open-day") =>
    bench.refusal("start-attempt", { scenario: "first-spur", mode });

  it("assessed work needs a badge, guests practise, and the open day holds no person", async () => {
    const bench = await new TestBench().start();
    expect(await start(bench, "practice")).toBe("not-signed-in");
    await bench.does("sign-in", { by: "guest" });
    expect(await start(bench, "assessed")).toBe("guests-practise");
    await bench.does("sign-in", { by: "name", learner: "demo-01" });
    expect(await start(bench, "assessed")).toBe("badge-needed");
    expect(await start(bench, "open-day")).toBe("open-day-guests");
    expect(await bench.refusal("sign-in", { by: "badge", badge: "demo-01" })).toBe("unknown-badge");
    expect(await bench.refusal("sign-in", { by: "name", learner: "nobody" })).toBe("unknown-learner");
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-01" });
    expect(await start(bench, "assessed")).toBe("done");
    await bench.does("sign-in", { by: "name", learner: "demo-03" });
    expect(await start(bench, "practice")).toBe("others-work-open");
  });

  it("goes on with assessed work by the badge it began with: a name that is tapped is not enough", async () => {
    const bench = await new TestBench().start();
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-01" });
    expect(await start(bench, "assessed")).toBe("done");
    await bench.does("sign-out", {});
    expect(bench.view()).toMatchObject({ person: null, isWorkKept: true });
    expect(await bench.refusal("sign-in", { by: "name", learner: "demo-01" })).toBe("badge-needed");
    expect(bench.view().person).toBeNull();
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-01" });
    expect(bench.attempt().mode).toBe("assessed");
    await bench.does("accept-caution", {});
    await bench.does("hand-in", {});
    await bench.does("sign-out", {});
    expect(bench.view().isWorkKept).toBeUndefined();
    await bench.does("sign-in", { by: "name", learner: "demo-01" });
    expect(bench.attempt().status).toBe("handed-in");
  });
});

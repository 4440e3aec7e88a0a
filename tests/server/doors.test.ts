import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { request as httpRequest } from "node:http";
import { request as httpsRequest } from "node:https";
import { join } from "node:path";
import { io } from "socket.io-client";
import { describe, expect, it, onTestFinished } from "vitest";
import type { NetworkDoor } from "../../server/create-server.ts";
import { openParts } from "../../server/parts.ts";
import { readEnvironment } from "../../server/environment.ts";
import { createApp } from "../../server/web/create-app.ts";
import { WebSessions } from "../../server/web/web-sessions.ts";
import { byBench } from "../../shared/protocol/author.ts";
import { benchNamespace } from "../../shared/protocol/socket-events.ts";
import { soon } from "./board/board-double.ts";
import { temporaryFolder } from "./temporary-folder.ts";
import { TestBench } from "./test-bench.ts";
import { Screen, type TestServer, testServer } from "./test-server.ts";

interface Answer {
  status: number;
  headers: Record<string, string | string[] | undefined>;
  body: string;
}

/** A request with any headers, those a browser would not let a page set included. */
function ask(
  url: string,
  {
    method = "GET",
    headers = {},
    body = "",
  }: { method?: string; headers?: Record<string, string>; body?: string } = {},
): Promise<Answer> {
  const isForm = body === "" ? {} : { "content-type": "application/x-www-form-urlencoded" };
  const send = url.startsWith("https") ? httpsRequest : httpRequest;
  return new Promise((resolve, reject) => {
    const sent = send(
      url,
      { method, headers: { ...isForm, ...headers }, rejectUnauthorized: false },
      (response) => {
        let text = "";
        response.on("data", (chunk: Buffer) => (text += chunk.toString("utf8")));
        response.on("end", () =>
          resolve({ status: response.statusCode ?? 0, headers: response.headers, body: text }),
        );
      },
    );
    sent.on("error", reject);
    sent.end(body);
  });
}

const pin = "482915";
const networkDoor: NetworkDoor = { host: "127.0.0.1", port: 0, names: ["bench.example.org"], tls: undefined };

/** A bench on a network, with a technician and a trainer; pages in a folder of their own. */
async function onNetwork(network: NetworkDoor = networkDoor): Promise<TestServer> {
  const kioskFolder = temporaryFolder();
  mkdirSync(join(kioskFolder, "assets"));
  writeFileSync(join(kioskFolder, "index.html"), "<!doctype html><title>Spurwise</title>");
  writeFileSync(join(kioskFolder, "assets/bench-3f2a.js"), "export {};");
  const made = await testServer({ kioskFolder, network, hasDemo: false });
  const { people } = made.bench.parts;
  const by = { by: "bench", session: null } as const;
  await people.list.add({ name: "Ida Nowak", role: "technician", pin }, by);
  await people.list.add({ name: "Maud Perrin", role: "trainer", pin, badge: "T-0815" }, by);
  await people.list.add({ name: "Kasia Wrona", role: "learner", badge: "L-11" }, by);
  return made;
}

const signIn = (url: string, form: Record<string, string>, headers: Record<string, string> = {}) =>
  ask(`${url}/sign-in`, {
    method: "POST",
    headers: { origin: url, ...headers },
    body: new URLSearchParams(form).toString(),
  });

const cookieOf = ({ headers }: Answer): string => String(headers["set-cookie"]?.[0]).split(";")[0] ?? "";

const cookieFor = async (url: string, name = "Maud Perrin"): Promise<string> =>
  cookieOf(await signIn(url, { name, pin }));

/** True where a link to the bench's views is let in. */
async function isLetIn(url: string, headers: Record<string, string> = {}): Promise<boolean> {
  const socket = io(`${url}${benchNamespace}`, {
    transports: ["websocket"],
    reconnection: false,
    forceNew: true,
    extraHeaders: headers,
    rejectUnauthorized: false,
  });
  onTestFinished(() => void socket.disconnect());
  return new Promise((resolve) => {
    socket.once("view", () => resolve(true));
    socket.once("connect_error", () => resolve(false));
    socket.once("disconnect", () => resolve(false));
  });
}

describe("the door on loopback", () => {
  it("is the only one until a technician has let the network in, whatever the environment says, and from the next start on", () => {
    const data = temporaryFolder();
    const environment = { ...readEnvironment({ SPURWISE_HOST: "0.0.0.0", SPURWISE_LINES: "gpio" }), data };
    const opened = () => openParts(environment, () => undefined);
    const first = opened();
    expect(first.parts.network).toBeUndefined();
    const choose = (
      memory: Parameters<NonNullable<typeof first.parts.bench.records>["memory"]["write"]>[0],
    ) => first.parts.bench.records?.memory.write(memory);
    choose({ language: "en", isLarge: false, person: null, isNetworkChosen: true });
    first.close();
    // Nobody is set up: whoever came in could set themselves up.
    const second = opened();
    expect(second.parts.network).toBeUndefined();
    second.close();
  });

  it("opens with the technician's choice, and shuts again with it; the log has who chose", async () => {
    const data = temporaryFolder();
    const environment = { ...readEnvironment({ SPURWISE_LINES: "gpio" }), data };
    const start = () => openParts(environment, () => undefined);
    const first = start();
    await first.parts.bench.people.setUp(
      first.parts.bench.people.firstStartCode ?? "",
      "Ida Nowak",
      pin,
      "x",
    );
    first.close();
    const bench = await new TestBench({ folder: data, hasDemo: false }).start();
    const ida = bench.parts.people.all()[0]?.id ?? "";
    await bench.does("sign-in", { by: "pin", person: ida, pin });
    await bench.does("choose-network", { isOpen: true });
    expect(bench.view().staff.network).toEqual({ isOpen: false, isChosen: true });
    expect(bench.events("network-chosen")).toMatchObject([
      { author: { by: "technician" }, content: { isOpen: true, person: ida } },
    ]);
    await bench.stop();
    const open = start();
    expect(open.parts.network).toEqual({ host: "0.0.0.0", port: 4711, names: [], tls: undefined });
    open.close();
    const again = await new TestBench({ folder: data, hasDemo: false }).start();
    await again.does("sign-in", { by: "pin", person: ida, pin });
    await again.does("choose-network", { isOpen: false });
    await again.stop();
    const shut = start();
    expect(shut.parts.network).toBeUndefined();
    shut.close();
  });

  it("has no page to sign in on: whoever stands at the bench is there", async () => {
    const { url } = await onNetwork();
    expect((await ask(`${url}/sign-in`)).status).toBe(404);
    expect((await ask(`${url}/`)).body).toContain("Spurwise");
    expect(await isLetIn(url)).toBe(true);
  });
});

describe("the door on the network", () => {
  it("gives nobody any page but the health, what is public and the sign-in, every route of the program tried", async () => {
    const { bench, networkUrl } = await onNetwork();
    const app = createApp({
      kioskFolder: "/nonexistent",
      door: {
        kind: "network",
        names: { scheme: "http", hosts: () => new Set() },
        sessions: new WebSessions(bench.parts.people, () => 0),
      },
      signIn: { people: bench.parts.people, language: () => "en", signedIn: () => undefined },
      health: () => ({}) as never,
      publicText: { facts: { keepYears: 3 }, language: () => "en" },
      story: () => Promise.reject(new Error("not told here")),
      anchor: () => undefined,
      wiring: () => undefined,
      evidence: {
        staffOf: () => undefined,
        source: () => undefined,
        filterOf: () => ({}),
        shown: bench.bench.core.shown,
        authorOf: () => byBench,
        wallMs: () => 0,
      },
      desk: {
        core: bench.bench.core,
        staffOf: () => undefined,
        authorOf: () => byBench,
        isAtBench: false,
      },
      lead: { core: bench.bench.core, staffOf: () => undefined },
      keep: {
        core: bench.bench.core,
        health: () => ({}) as never,
        machine: { databasePath: "", backUpTo: undefined, sqliteVersion: "", notes: () => [] },
        keeping: { tasks: {} as never, passphrase: undefined, canUpdate: false, isFree: () => true },
        keepYears: 3,
        due: () => [],
        staffOf: () => undefined,
        actorOf: () => bench.bench.core.session.actor,
        isAtBench: false,
      },
      note: () => undefined,
    });
    interface Layer {
      route?: { path: string; methods: Record<string, boolean> };
      handle?: { stack?: Layer[] };
    }
    const routesOf = (layers: Layer[]): { path: string; method: string }[] =>
      layers.flatMap(({ route, handle }) =>
        route
          ? Object.keys(route.methods).map((method) => ({ path: route.path, method: method.toUpperCase() }))
          : routesOf(handle?.stack ?? []),
      );
    const routes = routesOf((app.router as unknown as { stack: Layer[] }).stack);
    expect(routes.map(({ method, path }) => `${method} ${path}`)).toEqual([
      "GET /health",
      "GET /public",
      "GET /public/letters/:name",
      "GET /public/:name",
      "GET /show-data/story.json",
      "GET /sign-in",
      "POST /sign-in",
      "POST /sign-out",
      "GET /anchor.json",
      "GET /wiring.json",
      "GET /evidence/attempts.csv",
      "GET /evidence/statements-1.0.3.jsonl",
      "GET /evidence/statements-2.0.0.jsonl",
      "GET /evidence/archive.jsonl",
      "GET /evidence/:attempt/attempt.json",
      "GET /evidence/:attempt/record.pdf",
      "GET /evidence/:attempt/appeals-pack.json",
      "GET /desk-data/live",
      "GET /desk-data/attempts",
      "GET /desk-data/attempts/:attempt",
      "GET /desk-data/attempts/:attempt/moments/:at",
      "GET /lead-data/stream",
      "GET /lead-data/found",
      "GET /keep-data/me",
      "GET /keep-data/machine",
      "GET /keep-data/support.json",
      "GET /keep-data/debrief",
      "GET /keep-data/people",
      "GET /keep-data/class-list.csv",
      "POST /keep-data/class-list",
      "POST /keep-data/badges",
      "GET /keep-data/criteria",
      "GET /keep-data/criteria.json",
      "POST /keep-data/criteria",
      "GET /keep-data/keeping",
      "POST /keep-data/keeping/back-up",
      "POST /keep-data/keeping/restore",
      "POST /keep-data/keeping/update",
      "POST /keep-data/keeping/stop",
      "GET /keep-data/prepare",
      "GET /keep-data/prepare/scenario",
      "GET /keep-data/prepare/wired",
      "POST /keep-data/prepare/check",
      "POST /keep-data/prepare/keep",
      "POST /keep-data/prepare/import",
      "POST /keep-data/prepare/withdraw",
    ]);
    const others = ["/", "/index.html", "/assets/bench-3f2a.js", "/nothing-here", "/HEALTH/../wiring.json"];
    const seen: Record<string, number> = {};
    for (const { method, path } of [...routes, ...others.map((path) => ({ method: "GET", path }))])
      seen[`${method} ${path}`] = (
        await ask(networkUrl + path, { method, headers: { origin: networkUrl } })
      ).status;
    expect(seen).toEqual({
      "GET /health": 200,
      "GET /public": 303,
      "GET /public/letters/:name": 401,
      "GET /public/:name": 404,
      "GET /show-data/story.json": 200,
      "GET /sign-in": 200,
      "POST /sign-in": 403,
      "POST /sign-out": 303,
      "GET /anchor.json": 401,
      "GET /wiring.json": 401,
      "GET /evidence/attempts.csv": 401,
      "GET /evidence/statements-1.0.3.jsonl": 401,
      "GET /evidence/statements-2.0.0.jsonl": 401,
      "GET /evidence/archive.jsonl": 401,
      "GET /evidence/:attempt/attempt.json": 401,
      "GET /evidence/:attempt/record.pdf": 401,
      "GET /evidence/:attempt/appeals-pack.json": 401,
      "GET /desk-data/live": 401,
      "GET /desk-data/attempts": 401,
      "GET /desk-data/attempts/:attempt": 401,
      "GET /desk-data/attempts/:attempt/moments/:at": 401,
      "GET /lead-data/stream": 401,
      "GET /lead-data/found": 401,
      "GET /keep-data/me": 401,
      "GET /keep-data/machine": 401,
      "GET /keep-data/support.json": 401,
      "GET /keep-data/debrief": 401,
      "GET /keep-data/people": 401,
      "GET /keep-data/class-list.csv": 401,
      "POST /keep-data/class-list": 401,
      "POST /keep-data/badges": 401,
      "GET /keep-data/criteria": 401,
      "GET /keep-data/criteria.json": 401,
      "POST /keep-data/criteria": 401,
      "GET /keep-data/keeping": 401,
      "POST /keep-data/keeping/back-up": 401,
      "POST /keep-data/keeping/restore": 401,
      "POST /keep-data/keeping/update": 401,
      "POST /keep-data/keeping/stop": 401,
      "GET /keep-data/prepare": 401,
      "GET /keep-data/prepare/scenario": 401,
      "GET /keep-data/prepare/wired": 401,
      "POST /keep-data/prepare/check": 401,
      "POST /keep-data/prepare/keep": 401,
      "POST /keep-data/prepare/import": 401,
      "POST /keep-data/prepare/withdraw": 401,
      "GET /": 303,
      "GET /index.html": 401,
      // The program's own text, of all screens alike: the show, which anybody may see, is made of it.
      "GET /assets/bench-3f2a.js": 200,
      "GET /nothing-here": 401,
      "GET /HEALTH/../wiring.json": 401,
    });
    expect(await isLetIn(networkUrl)).toBe(false);
    expect(await isLetIn(networkUrl, { cookie: "spurwise=" })).toBe(false);
  });

  it("lets the staff in by PIN or badge, never a learner, with a cookie that no script can read", async () => {
    const { bench, networkUrl } = await onNetwork();
    const entered = await signIn(networkUrl, { name: "maud perrin", pin });
    expect(entered).toMatchObject({ status: 303, headers: { location: "/" } });
    expect(entered.headers["set-cookie"]).toEqual([
      expect.stringMatching(/^spurwise=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict$/) as string,
    ]);
    const cookie = cookieOf(entered);
    expect((await ask(`${networkUrl}/`, { headers: { cookie } })).body).toContain("Spurwise");
    expect(await isLetIn(networkUrl, { cookie })).toBe(true);
    expect((await signIn(networkUrl, { badge: "T-0815" })).status).toBe(303);
    for (const form of [
      { badge: "L-11" },
      { badge: "nobody" },
      { name: "Maud Perrin", pin: "999999" },
      { name: "Nobody", pin },
      {},
    ])
      expect(await signIn(networkUrl, form as Record<string, string>)).toMatchObject({
        status: 403,
        headers: {},
      });
    expect(bench.events("staff-signed-in").map(({ content }) => [content["with"], content["at"]])).toEqual([
      ["pin", "network"],
      ["badge", "network"],
    ]);
  });

  it("says that a link without a certificate can be read, in the language of the bench", async () => {
    const { bench, networkUrl } = await onNetwork();
    expect((await ask(`${networkUrl}/sign-in`)).body).toContain("not encrypted");
    bench.bench.core.session.remember({ language: "pl" });
    expect((await ask(`${networkUrl}/sign-in`)).body).toContain("nie jest szyfrowane");
  });

  it("takes no session from a browser: one that was planted is worth nothing, and each sign-in makes another", async () => {
    const { networkUrl } = await onNetwork();
    const planted = `spurwise=${"A".repeat(43)}`;
    const entered = await signIn(networkUrl, { name: "Maud Perrin", pin }, { cookie: planted });
    expect(cookieOf(entered)).not.toBe(planted);
    expect((await ask(`${networkUrl}/wiring.json`, { headers: { cookie: planted } })).status).toBe(401);
    const first = cookieOf(entered);
    const second = cookieOf(await signIn(networkUrl, { name: "Maud Perrin", pin }, { cookie: first }));
    expect((await ask(`${networkUrl}/wiring.json`, { headers: { cookie: first } })).status).toBe(401);
    expect((await ask(`${networkUrl}/wiring.json`, { headers: { cookie: second } })).status).toBe(404);
    const twice = `${second}; ${planted}`;
    expect((await ask(`${networkUrl}/wiring.json`, { headers: { cookie: twice } })).status).toBe(401);
  });

  it("ends a session that is idle, that is signed out, here or everywhere, and one whose person is gone", async () => {
    const { bench, networkUrl } = await onNetwork();
    const isIn = async (cookie: string): Promise<boolean> =>
      (await ask(`${networkUrl}/wiring.json`, { headers: { cookie } })).status !== 401;
    const minuteMs = 60_000;
    const idle = await cookieFor(networkUrl);
    bench.clock.advance(16 * minuteMs);
    expect(await isIn(idle)).toBe(false);

    const out = await cookieFor(networkUrl);
    await ask(`${networkUrl}/sign-out`, { method: "POST", headers: { cookie: out, origin: networkUrl } });
    expect(await isIn(out)).toBe(false);

    const [one, two, other] = [
      await cookieFor(networkUrl),
      await cookieFor(networkUrl),
      await cookieFor(networkUrl, "Ida Nowak"),
    ];
    await ask(`${networkUrl}/sign-out`, {
      method: "POST",
      headers: { cookie: one, origin: networkUrl },
      body: "everywhere=1",
    });
    expect([await isIn(one), await isIn(two), await isIn(other)]).toEqual([false, false, true]);

    const gone = await cookieFor(networkUrl);
    const maud = bench.parts.people.all().find(({ name }) => name === "Maud Perrin")?.id ?? "";
    bench.parts.people.list.erase(maud, { by: "bench", session: null });
    expect(await isIn(gone)).toBe(false);
  });

  it("ends a session after eight hours, however much is done in it", async () => {
    const { bench } = await onNetwork();
    let nowMs = 0;
    const sessions = new WebSessions(bench.parts.people, () => nowMs);
    const { id } = sessions.begin(bench.parts.people.unlockers()[0]!);
    for (; nowMs <= 8 * 3_600_000; nowMs += 600_000) {
      expect(sessions.staffOf(id)?.staff.name).toBe("Ida Nowak");
      sessions.touch(id);
    }
    expect(sessions.staffOf(id)).toBeUndefined();
  });

  it("drops the link of whoever is signed out, and does nothing more for it", async () => {
    const { bench, networkUrl } = await onNetwork();
    const cookie = await cookieFor(networkUrl);
    const screen = new Screen(networkUrl, { cookie });
    await screen.sees(() => true);
    const ended = new Promise((resolve) => screen.socket.once("disconnect", resolve));
    await ask(`${networkUrl}/sign-out`, { method: "POST", headers: { cookie, origin: networkUrl } });
    expect(await screen.send("end-attempt", { why: "learner-gone" })).toMatchObject({
      code: "not-signed-in",
    });
    await ended;
    expect(bench.events("attempt-left")).toEqual([]);
  });

  it("is opened by its own names alone, so that no other site can point its name there, and by its own pages", async () => {
    const { networkUrl } = await onNetwork();
    const { port } = new URL(networkUrl);
    const cookie = await cookieFor(networkUrl);
    const at = (headers: Record<string, string>) =>
      ask(`${networkUrl}/wiring.json`, { headers: { cookie, ...headers } }).then(({ status }) => status);
    expect(await at({})).toBe(404);
    expect(await at({ host: `bench.example.org:${port}` })).toBe(404);
    expect(await at({ host: `BENCH.example.org:${port}`, origin: `http://BENCH.example.org:${port}` })).toBe(
      404,
    );
    expect(await at({ host: `evil.example.org:${port}` })).toBe(403);
    expect(await at({ host: `127.0.0.1.evil.example.org:${port}` })).toBe(403);
    expect(await at({ origin: "http://evil.example.org" })).toBe(403);
    expect(await at({ origin: networkUrl.replace("http", "https") })).toBe(403);
    expect(await at({ origin: "null" })).toBe(403);
    expect(await at({ "sec-fetch-site": "cross-site" })).toBe(403);
    expect(await isLetIn(networkUrl, { cookie, origin: "http://evil.example.org" })).toBe(false);
    expect(await isLetIn(networkUrl, { cookie, origin: networkUrl })).toBe(true);
    // A form without an origin comes from no browser.
    const form = new URLSearchParams({ name: "Maud Perrin", pin }).toString();
    expect((await ask(`${networkUrl}/sign-in`, { method: "POST", body: form })).status).toBe(403);
  });

  it("makes whoever guesses wait, and is not put off by a form of another shape or size", async () => {
    const { bench, networkUrl } = await onNetwork();
    const seen: boolean[] = [];
    for (let count = 0; count < 8; count += 1)
      seen.push(
        (await signIn(networkUrl, { badge: `guess ${count}` })).body.includes("Too many wrong tries"),
      );
    expect(seen).toEqual([false, false, false, false, false, true, true, true]);
    bench.clock.advance(60_000);
    const post = (body: string) =>
      ask(`${networkUrl}/sign-in`, { method: "POST", headers: { origin: networkUrl }, body });
    expect((await post("name[length]=1&pin[valueOf]=1&badge[]=x")).status).toBe(403);
    expect((await post(`name=${"x".repeat(5000)}`)).status).toBeGreaterThanOrEqual(400);
    bench.clock.advance(120_000);
    expect((await signIn(networkUrl, { name: "Maud Perrin", pin })).status).toBe(303);
  });

  it("takes a class list from a trainer, all or none, and gives it back without a formula in it", async () => {
    const { bench, networkUrl } = await onNetwork();
    const { people } = bench.parts;
    await people.list.add({ name: "Sol Verma", role: "assessor", pin }, { by: "bench", session: null });
    const cookie = await cookieFor(networkUrl);
    const address = `${networkUrl}/keep-data/class-list`;
    const send = (body: string, headers: Record<string, string> = {}) =>
      ask(address, {
        method: "POST",
        headers: { cookie, origin: networkUrl, "content-type": "text/csv", ...headers },
        body,
      });
    expect(await send("name,badge\n,L-12\nLeo,L-11\n")).toMatchObject({
      status: 422,
      body: expect.stringMatching(/"faults":\[\{"line":2,/) as string,
    });
    expect(await send("name,badge\nLeo,L-11\n")).toMatchObject({
      status: 422,
      body: `{"learners":[],"faults":[{"line":2,"message":"the badge is somebody's already"}]}`,
    });
    expect(await send(`name\n${"x".repeat(300_000)}`)).toMatchObject({ status: 413 });
    expect(await send("name\n=1+1\nLeo Ashdown\n")).toMatchObject({
      status: 200,
      body: expect.stringContaining("Leo Ashdown") as string,
    });
    const list = await ask(`${address}.csv`, { headers: { cookie } });
    expect(list.headers["content-disposition"]).toContain("class-list.csv");
    expect(list.body).toBe("name,centre number\r\n'=1+1,\r\nKasia Wrona,\r\nLeo Ashdown,\r\n");
    expect(bench.events("person-kept").slice(-2)).toMatchObject([
      { author: { by: "trainer" } },
      { author: { by: "trainer" } },
    ]);
    const byAssessor = await cookieFor(networkUrl, "Sol Verma");
    expect((await send("name\nMia\n", { cookie: byAssessor })).status).toBe(403);
    expect((await ask(`${address}.csv`, { headers: { cookie: byAssessor } })).status).toBe(403);
    expect((await ask(address, { method: "POST", headers: { cookie }, body: "name\nMia\n" })).status).toBe(
      403,
    );
  });

  it("shows who looks on what the bench shows, without names and without the code of the first start", async () => {
    const { bench, networkUrl, url } = await onNetwork();
    const own = new Screen(url);
    const remote = new Screen(networkUrl, { cookie: await cookieFor(networkUrl) });
    const view = await remote.sees(() => true);
    expect(view.staff).toEqual({ me: { name: "Maud Perrin", role: "trainer" }, unlockers: [] });
    expect(view.learners).toEqual([]);
    expect((await own.sees(() => true)).learners).toHaveLength(1);
    expect(await remote.send("sign-in", { by: "guest" })).toMatchObject({ code: "own-screen-only" });
    await bench.does("sign-in", { by: "guest" });
    await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    expect((await remote.sees(({ staff }) => staff.work !== undefined)).staff.work).toEqual({
      name: "",
      mode: "practice",
      isWaitingForTrainer: false,
    });
    await remote.does("end-attempt", { why: "started-wrongly" });
    expect(bench.events("attempt-left")).toMatchObject([
      { author: { by: "trainer" }, content: { reason: "ended" } },
    ]);
    await soon();
    expect(bench.view().attempt).toBeNull();
  });

  it("is encrypted where the bench has a certificate: the cookie then goes over no other link", async () => {
    const folder = temporaryFolder();
    const [key, cert] = [join(folder, "key.pem"), join(folder, "cert.pem")];
    execFileSync(
      "openssl",
      [
        ...["req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:P-256", "-nodes", "-days", "2"],
        ...["-subj", "/CN=bench", "-keyout", key, "-out", cert],
      ],
      { stdio: "ignore" },
    );
    const tls = { cert: readFileSync(cert), key: readFileSync(key) };
    const { networkUrl } = await onNetwork({ ...networkDoor, tls });
    expect(networkUrl).toMatch(/^https:/);
    expect((await ask(`${networkUrl}/sign-in`)).body).not.toContain("not encrypted");
    const entered = await signIn(networkUrl, { name: "Maud Perrin", pin });
    expect(entered.headers["set-cookie"]?.[0]).toMatch(/^__Host-spurwise=.*; Secure$/);
    const cookie = cookieOf(entered);
    expect(await isLetIn(networkUrl, { cookie })).toBe(true);
    expect(await isLetIn(networkUrl, {})).toBe(false);
  });
});

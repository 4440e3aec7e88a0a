import { createServer as createHttpServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { join } from "node:path";
import type { Pool } from "pg";
import { afterAll, afterEach, beforeAll, expect, it, onTestFinished, vi } from "vitest";
import { centreApp } from "../../../server/centre/centre-app.ts";
import { openCentreKey } from "../../../server/centre/centre-key.ts";
import { CentrePeople } from "../../../server/centre/centre-people.ts";
import type { CentreStore } from "../../../server/centre/centre-store.ts";
import { run } from "../../../server/commands/centre.ts";
import { createServer } from "../../../server/create-server.ts";
import { readEnvironment } from "../../../server/environment.ts";
import { centreLink, peopleLink } from "../../../server/outbox/centre-link.ts";
import { Outbox } from "../../../server/outbox/outbox.ts";
import { PeopleOutbox } from "../../../server/outbox/people-outbox.ts";
import { openParts } from "../../../server/parts.ts";
import { openSigner } from "../../../server/store/log-signer.ts";
import { openForReading } from "../../../server/store/open-database.ts";
import { verifyLog } from "../../../server/store/verify-log.ts";
import type { DeskList, DeskRecord } from "../../../shared/protocol/desk-view.ts";
import { temporaryFolder } from "../temporary-folder.ts";
import { TestBench } from "../test-bench.ts";
import { hastyTimers } from "./bench-log.ts";
import { describeOnPostgres } from "./describe-on-postgres.ts";
import type { PrivatePostgres } from "./private-postgres.ts";
import { type StoreOfItsOwn, storeOfItsOwn } from "./store-of-its-own.ts";

describeOnPostgres("the desk of a centre", (programs) => {
  let own: StoreOfItsOwn;
  let postgres: PrivatePostgres;
  let pool: Pool;
  let store: CentreStore;
  let centre: Server;
  let address: string;

  beforeAll(async () => {
    own = await storeOfItsOwn(programs);
    ({ postgres, pool, store } = own);
    centre = createHttpServer(centreApp(store, new CentrePeople(pool), () => undefined));
    await new Promise<void>((ready) => centre.listen(0, "127.0.0.1", ready));
    address = `http://127.0.0.1:${(centre.address() as AddressInfo).port}`;
  });
  afterEach(() => vi.unstubAllEnvs());
  afterAll(async () => {
    centre.closeAllConnections();
    centre.close();
    await own.remove();
  });

  /** A bench on the centre's list with a learner on its own, whose work was handed in; all of it goes to the centre. */
  const benchWithWork = async (name: string, centreKey: string) => {
    const bench = await new TestBench({ isSealing: true }).start();
    const { records, people } = bench.parts;
    const { log, logReader } = records!;
    await people.list.add({ name: `${name} Keeper`, role: "technician", pin: "481516" }, {
      role: "bench",
    } as never);
    const learner = await people.list.add(
      { name, role: "learner", centreNumber: "N-17", badge: `BADGE-${name}` },
      {
        role: "bench",
      } as never,
    );
    await bench.does("sign-in", { by: "badge", badge: `BADGE-${name}` });
    await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    await bench.does("accept-caution", {});
    await bench.does("hand-in", {});
    const signer = openSigner(bench.folder);
    await store.keepBench({ benchId: log.benchId, centre: "north-hall", publicKey: signer.publicKey });
    const notes: string[] = [];
    const parts = {
      benchId: log.benchId,
      logReader,
      signer,
      timers: hastyTimers,
      note: (sentence: string) => void notes.push(sentence),
    };
    const outbox = new Outbox({ ...parts, link: centreLink(address) });
    const sending = new PeopleOutbox({ ...parts, people, centreKey, link: peopleLink(address) });
    const stop = async () => {
      await outbox.stop();
      await sending.stop();
    };
    onTestFinished(stop);
    outbox.start();
    sending.start();
    await vi.waitFor(
      () => {
        const last = logReader.lastRow(log.benchId);
        expect(outbox.state.sent).toEqual({ boot: last?.boot, sequence: last?.sequence });
        expect(sending.isAllSent).toBe(true);
      },
      { timeout: 30_000, interval: 5 },
    );
    return {
      bench,
      learner: (learner as { id: string }).id,
      attempt: bench.attempt().id,
      notes,
      sending,
      stop,
    };
  };

  /** The house's own server, at the desk of the centre, with one of its assessors before it. */
  const startDesk = async (data: string) => {
    const said: string[] = [];
    const environment = readEnvironment({
      SPURWISE_DATA: data,
      SPURWISE_CENTRE_STORE: postgres.uri,
      SPURWISE_CENTRE_ID: "north-hall",
    });
    const opened = openParts(environment, (sentence) => void said.push(sentence));
    const server = createServer(opened.parts);
    const { ownPort } = await server.listen(0);
    await opened.readScenarios();
    opened.startBesides({ damaged: () => undefined, changed: () => undefined });
    let isClosed = false;
    const close = async () => {
      if (isClosed) return;
      isClosed = true;
      await server.close();
      opened.close();
    };
    onTestFinished(close);
    const { core } = server.bench;
    const act = (name: string, command: object) =>
      server.bench.handle(name as never, command as never, core.session);
    expect(await act("sign-in", { by: "badge", badge: "SPURWISE-DEMO-ASSESSOR" })).toMatchObject({
      ok: true,
    });
    const data_ = async <Of>(path: string): Promise<Of> => {
      const answer = await fetch(`http://127.0.0.1:${ownPort}${path}`);
      expect([path, answer.status, said]).toEqual([path, 200, said]);
      return (await answer.json()) as Of;
    };
    const rows = async (query = "") => (await data_<DeskList>(`/desk-data/attempts?${query}`)).attempts;
    return { rows, data: data_, act, said, close, port: ownPort };
  };

  it("shows, finds, replays and hands out the work of all its benches by name, and adds nothing to it", async () => {
    const data = temporaryFolder();
    const { publicKey } = openCentreKey(data);
    const first = await benchWithWork("Ada Marsh", publicKey);
    const second = await benchWithWork("Bo Fenwick", publicKey);
    // With the store alone nobody reads a name.
    const { rows: kept } = await pool.query<{ all: string }>("SELECT person::text AS all FROM person");
    expect(kept).toHaveLength(4);
    expect(kept.map(({ all }) => all).join()).not.toMatch(/Marsh|Fenwick|N-17/);

    const desk = await startDesk(data);
    await vi.waitFor(
      async () =>
        expect((await desk.rows()).map(({ learner }) => learner).sort()).toEqual(["Ada Marsh", "Bo Fenwick"]),
      { timeout: 30_000, interval: 20 },
    );
    expect(await desk.rows("learner=marsh")).toMatchObject([
      {
        id: first.attempt,
        status: "handed-in",
        otherBench: `Spurwise ${first.bench.parts.records!.log.benchId.slice(-4)}`,
      },
    ]);
    expect(await desk.rows("sort=learner&order=down")).toMatchObject([
      { learner: "Bo Fenwick" },
      { learner: "Ada Marsh" },
    ]);
    const record = await desk.data<DeskRecord>(`/desk-data/attempts/${second.attempt}`);
    expect(record.moments.map(({ type }) => type)).toContain("handed-in");
    expect(record.moments).toHaveLength(
      second.bench.parts.records!.logReader.rowsOfAttempt(second.attempt).length,
    );
    const pack = await fetch(`http://127.0.0.1:${desk.port}/evidence/${first.attempt}/appeals-pack.json`);
    expect(pack.status).toBe(200);
    const { publicKey: sealKey } = (await pack.json()) as { publicKey: string };
    expect(sealKey).toBe(openSigner(first.bench.folder).publicKey);
    expect(
      await desk.act("observe", { attempt: first.attempt, seen: "x", observerSays: "", learnerSays: "" }),
    ).toMatchObject({ ok: false, code: "of-another-bench" });

    // What comes later is there with the next look, and the records stay sound, here and after a start.
    await first.bench.does("leave-attempt", {});
    await first.bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    await vi.waitFor(async () => expect(await desk.rows()).toHaveLength(3), {
      timeout: 30_000,
      interval: 20,
    });
    await first.stop();
    await second.stop();
    await desk.close();
    const reading = openForReading(join(data, "spurwise.db"));
    expect(verifyLog(reading)).toMatchObject({ isSound: true });
    reading.close();
    const again = await startDesk(data);
    expect(await again.rows()).toHaveLength(3);
  }, 90_000);

  it("loses the name of whoever is erased at the centre for good, or at their bench", async () => {
    const data = temporaryFolder();
    const { publicKey } = openCentreKey(data);
    const { bench, learner, attempt, sending } = await benchWithWork("Cy Dunmore", publicKey);
    const gone = await benchWithWork("Di Ashby", publicKey);
    const desk = await startDesk(data);
    const names = async () => (await desk.rows()).map((row) => [row.id, row.learner]);
    await vi.waitFor(async () => expect(await names()).toContainEqual([attempt, "Cy Dunmore"]), {
      timeout: 30_000,
      interval: 20,
    });

    vi.stubEnv("SPURWISE_DATA", data);
    const lines: string[] = [];
    const writing = vi
      .spyOn(process.stdout, "write")
      .mockImplementation((text) => lines.push(String(text)) > 0);
    expect(await run([postgres.uri, "people", "north-hall"])).toBe(0);
    expect(lines.join("")).toMatch(new RegExp(`${learner} {2}learner {2}Cy Dunmore {2}N-17 {2}bench `));
    expect(await run([postgres.uri, "erase", "north-hall", learner])).toBe(0);
    expect(await run(["this-key"])).toBe(0);
    writing.mockRestore();
    expect(lines.at(-1)).toBe(`${publicKey}\n`);
    expect(gone.bench.parts.people.list.erase(gone.learner, { role: "bench" } as never)).toBeUndefined();

    const without = (id: string) => `? ${id.slice(-4)}`;
    await vi.waitFor(
      async () => {
        const now = await names();
        expect(now).toContainEqual([attempt, without(learner)]);
        expect(now).toContainEqual([gone.attempt, without(gone.learner)]);
      },
      { timeout: 30_000, interval: 20 },
    );
    expect(await desk.rows("learner=dunmore")).toEqual([]);

    // The bench that still knows them tells of them again, and they are not taken in.
    await bench.parts.people.list.add({ name: "Ed Lowry", role: "learner" }, { role: "bench" } as never);
    await vi.waitFor(() => expect(sending.isAllSent).toBe(true), { timeout: 30_000, interval: 5 });
    const { rows } = await pool.query("SELECT 1 FROM person WHERE person_id = ANY ($1::text[])", [
      [learner, gone.learner],
    ]);
    expect(rows).toEqual([]);

    // A store that was brought back from before loses them again when the centre starts.
    await pool.query("DELETE FROM person_erased");
    await new CentrePeople(pool).eraseEverywhere([learner]);
    const { rows: erased } = await pool.query("SELECT person_id FROM person_erased");
    expect(erased).toEqual([{ person_id: learner }]);
  }, 90_000);

  it("takes nothing of a bench from where its rows were changed in the store, and says so", async () => {
    const data = temporaryFolder();
    const { bench, attempt } = await benchWithWork("Flo Garrick", openCentreKey(data).publicKey);
    const { benchId } = bench.parts.records!.log;
    await pool.query("UPDATE log_row SET wall_ms = wall_ms + 1 WHERE bench_id = $1 AND sequence = 4", [
      benchId,
    ]);
    const desk = await startDesk(data);
    await vi.waitFor(
      () =>
        expect(desk.said.join("\n")).toContain(
          `bench ${benchId}, boot 1, event 4: its content is not what was written`,
        ),
      { timeout: 30_000, interval: 20 },
    );
    expect((await desk.rows()).map(({ id }) => id)).not.toContain(attempt);
  }, 60_000);

  it("hears an older list of people, and one that nobody signed, without taking it", async () => {
    const key = openCentreKey(temporaryFolder()).publicKey;
    const { bench, stop } = await benchWithWork("Gus Hale", key);
    await stop();
    const { benchId } = bench.parts.records!.log;
    const people = new CentrePeople(pool);
    const list = { benchId, key, people: [], sealed: [] };
    expect(await people.take({ ...list, asOf: { boot: 1, sequence: 0 } })).toEqual({ what: "older" });
    const { rows } = await pool.query("SELECT 1 FROM person WHERE bench_id = $1", [benchId]);
    expect(rows).toHaveLength(2);
    const answer = await fetch(`${address}/centre/people`, {
      method: "POST",
      body: JSON.stringify({ ...list, asOf: { boot: 9, sequence: 9 } }),
    });
    expect(await answer.json()).toEqual({ what: "refused", why: "not-signed" });
  });
});

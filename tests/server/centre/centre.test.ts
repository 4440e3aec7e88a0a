import fc from "fast-check";
import { copyFileSync, rmSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import type { Pool } from "pg";
import { afterAll, afterEach, beforeAll, beforeEach, expect, it, vi } from "vitest";
import { centreApp } from "../../../server/centre/centre-app.ts";
import { CentrePeople } from "../../../server/centre/centre-people.ts";
import type { CentreStore } from "../../../server/centre/centre-store.ts";
import { recordOfCentre } from "../../../server/centre/centre-rows.ts";
import { verifyCentre } from "../../../server/centre/verify-centre.ts";
import { rowOfRecord } from "../../../server/store/row-of-record.ts";
import type { LogRow } from "../../../shared/protocol/log-row.ts";
import { testDepth } from "../../depth.ts";
import { BenchLog } from "./bench-log.ts";
import { FaultProxy, mishaps } from "./fault-proxy.ts";
import { describeOnPostgres } from "./describe-on-postgres.ts";
import type { PrivatePostgres } from "./private-postgres.ts";
import { type StoreOfItsOwn, storeOfItsOwn } from "./store-of-its-own.ts";

describeOnPostgres("the centre's store", (programs) => {
  let own: StoreOfItsOwn;
  let postgres: PrivatePostgres;
  let pool: Pool;
  let store: CentreStore;
  let server: Server | undefined;
  let proxy: FaultProxy;
  let address: string;
  const benches: BenchLog[] = [];
  let port = 0;

  beforeAll(async () => {
    own = await storeOfItsOwn(programs);
    ({ postgres, pool, store } = own);
  });
  afterAll(async () => {
    await own.remove();
  });

  const listen = async (): Promise<void> => {
    const listening = createServer(centreApp(store, new CentrePeople(pool), () => undefined));
    await new Promise<void>((ready) => listening.listen(port, "127.0.0.1", ready));
    port = (listening.address() as AddressInfo).port;
    server = listening;
  };
  /** Changes the form of the store: where rows that come in meanwhile lock it (class 40 of the error codes), again. */
  const insist = (sql: string): Promise<unknown> =>
    pool.query(sql).catch((error: { code?: string }) => {
      if (!error.code?.startsWith("40")) throw error;
      return insist(sql);
    });
  const stopServer = async (): Promise<void> => {
    const stopping = server;
    server = undefined;
    stopping?.closeAllConnections();
    await new Promise((done) => (stopping ? stopping.close(done) : done(undefined)));
  };

  beforeEach(async () => {
    port = 0;
    await listen();
    proxy = new FaultProxy(() => port);
    address = await proxy.listen();
  });
  afterEach(async () => {
    for (const bench of benches.splice(0)) await bench.close();
    proxy.close();
    await stopServer();
  });

  const onList = async (bench = new BenchLog()): Promise<BenchLog> => {
    benches.push(bench);
    const { benchId } = bench.writer;
    await store.keepBench({ benchId, centre: "north-hall", publicKey: bench.signer.publicKey });
    return bench;
  };
  const rowsAtCentre = async (bench: BenchLog): Promise<(LogRow | undefined)[]> => {
    const { rows } = await pool.query<Record<string, unknown>>(
      "SELECT * FROM log_row WHERE bench_id = $1 ORDER BY boot, sequence",
      [bench.writer.benchId],
    );
    return rows.map((record) => rowOfRecord(recordOfCentre(record)));
  };
  const plain = (rows: readonly (LogRow | undefined)[]) =>
      rows.map((row) => row && { ...row, bytes: Buffer.from(row.bytes).toString(), hash: Buffer.from(row.hash).toString("hex"), previousHash: "" }); // prettier-ignore
  const allSent = (bench: BenchLog) =>
    vi.waitFor(() => expect(bench.isAllSent).toBe(true), { timeout: 30_000, interval: 5 });
  const headOf = async (bench: BenchLog) =>
    (await store.heads()).find(({ benchId }) => benchId === bench.writer.benchId);
  /** Everything the bench wrote is at the centre, once, in its order, byte for byte, and nothing else of it. */
  const isWholeAtCentre = async (bench: BenchLog): Promise<void> => {
    const { rows } = bench;
    expect(plain(await rowsAtCentre(bench))).toEqual(plain(rows));
    const last = rows.at(-1);
    expect(await headOf(bench)).toMatchObject({
      rowCount: rows.length,
      head: { boot: last?.boot, sequence: last?.sequence, hash: Buffer.from(last!.hash).toString("hex") },
      setAsideCount: 0,
    });
  };

  it("takes the log of a bench with its documents, and what is written later", async () => {
    const bench = await onList();
    bench.append(1200);
    bench.send(address);
    await allSent(bench);
    await isWholeAtCentre(bench);
    bench.append(3);
    await vi.waitFor(async () => expect((await headOf(bench))?.rowCount).toBe(1204), { timeout: 30_000 });
    await isWholeAtCentre(bench);
    expect(await verifyCentre(pool)).toMatchObject({ isSound: true });
  });

  it("has every event once, in its order, whatever the network, the bench and the centre do", async () => {
    const move = fc.oneof(
      fc.record({ do: fc.constant("append" as const), count: fc.integer({ min: 1, max: 40 }) }),
      fc.record({
        do: fc.constant("mishaps" as const),
        of: fc.array(fc.constantFrom(...mishaps), { maxLength: 5 }),
      }),
      fc.record({ do: fc.constant("restart-bench" as const) }),
      fc.record({ do: fc.constant("restart-centre" as const) }),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(move, { minLength: 3, maxLength: 12 }), async (moves) => {
        const bench = await onList();
        bench.send(address);
        for (const one of moves) {
          if (one.do === "append") bench.append(one.count);
          if (one.do === "mishaps") {
            proxy.plan(...one.of);
            bench.append(3);
            await vi.waitFor(() => expect(bench.isAllSent || proxy.isPlanOver).toBe(true), {
              timeout: 30_000,
              interval: 2,
            });
          }
          if (one.do === "restart-bench") await bench.restart(address);
          if (one.do === "restart-centre") {
            await stopServer();
            await listen();
          }
        }
        proxy.heal();
        await allSent(bench);
        await isWholeAtCentre(bench);
        await bench.outbox?.stop();
      }),
      { numRuns: 12 * testDepth },
    );
    for (const mishap of mishaps) expect([mishap, proxy.happened.get(mishap) ?? 0]).not.toEqual([mishap, 0]);
    expect(await verifyCentre(pool)).toMatchObject({ isSound: true });
  });

  it("goes on where it was when the engine was killed in the midst of it", async () => {
    const bench = await onList();
    bench.append(300);
    bench.send(address);
    await postgres.kill();
    await postgres.start();
    bench.append(20);
    await allSent(bench);
    await isWholeAtCentre(bench);
  });

  it("takes nothing while the store's disk is full, and all of it once there is room", async () => {
    const bench = await onList();
    bench.append(30);
    bench.send(address);
    await allSent(bench);
    // As the engine says it: class 53 of its error codes, "insufficient resources".
    await insist(`
      CREATE FUNCTION no_room() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN RAISE EXCEPTION 'could not extend file: No space left on device' USING ERRCODE = '53100'; END $$;
      CREATE TRIGGER no_room BEFORE INSERT ON log_row FOR EACH ROW EXECUTE FUNCTION no_room()`);
    bench.append(20);
    await vi.waitFor(() => expect(bench.outbox?.state.trouble?.why).toBe("not-reached"), { timeout: 30_000 });
    expect(await headOf(bench)).toMatchObject({ rowCount: 31 });
    await insist("DROP TRIGGER no_room ON log_row; DROP FUNCTION no_room()");
    await allSent(bench);
    await isWholeAtCentre(bench);
    expect(bench.outbox?.state.trouble).toBeUndefined();
  });

  it("has all that a bench could write when the bench's disk was full, and what it wrote after", async () => {
    const bench = await onList();
    bench.append(10);
    bench.send(address);
    bench.fillDisk();
    const long = "x".repeat(50_000);
    expect(() => bench.append(1, long)).toThrow(expect.objectContaining({ code: "disk-full" }));
    await allSent(bench);
    await isWholeAtCentre(bench);
    bench.fillDisk(false);
    bench.append(5, long);
    await allSent(bench);
    await isWholeAtCentre(bench);
  });

  it("sets aside what a bench that was restored from a back-up writes, and keeps what it had", async () => {
    const bench = await onList();
    bench.append(5);
    const copy = await bench.keepCopy();
    bench.append(5);
    bench.send(address);
    await allSent(bench);
    const before = plain(await rowsAtCentre(bench));
    await bench.close();
    copyFileSync(copy, bench.path);
    for (const end of ["-wal", "-shm"]) rmSync(`${bench.path}${end}`, { force: true });
    benches.splice(benches.indexOf(bench), 1);
    const restored = await onList(new BenchLog(bench.folder));
    restored.append(9, "b");
    restored.send(address);
    await vi.waitFor(() => expect(restored.outbox?.state.trouble?.why).toBe("set-aside"), {
      timeout: 30_000,
    });
    expect(plain(await rowsAtCentre(restored))).toEqual(before);
    expect((await headOf(restored))?.setAsideCount).toBeGreaterThan(0);
    expect(restored.notes.join()).toContain("the centre has another log of this bench");
  });

  it("tells two benches of one copied card apart by what they write", async () => {
    const bench = await onList();
    bench.append(5);
    const copy = await bench.keepCopy();
    const twinFolder = new BenchLog();
    await twinFolder.close();
    copyFileSync(copy, twinFolder.path);
    copyFileSync(`${bench.folder}/signing-key.pem`, `${twinFolder.folder}/signing-key.pem`);
    for (const end of ["-wal", "-shm"]) rmSync(`${twinFolder.path}${end}`, { force: true });
    const twin = await onList(new BenchLog(twinFolder.folder));
    bench.append(7);
    twin.append(7, "twin");
    bench.send(address);
    await allSent(bench);
    twin.send(address);
    await vi.waitFor(() => expect(twin.outbox?.state.trouble?.why).toBe("set-aside"), { timeout: 30_000 });
    expect(plain(await rowsAtCentre(bench))).toEqual(plain(bench.rows));
  });

  it("takes nothing of a bench that is not on its list, or signed by another, or whose rows are changed", async () => {
    const stranger = new BenchLog();
    benches.push(stranger);
    stranger.send(address);
    await vi.waitFor(() => expect(stranger.outbox?.state.trouble?.why).toBe("unknown-bench"), {
      timeout: 30_000,
    });
    const impostor = new BenchLog();
    benches.push(impostor);
    const { benchId } = impostor.writer;
    const { publicKey } = stranger.signer;
    await store.keepBench({ benchId, centre: "north-hall", publicKey });
    impostor.send(address);
    await vi.waitFor(() => expect(impostor.outbox?.state.trouble?.why).toBe("not-signed"), {
      timeout: 30_000,
    });
    const bench = await onList();
    const [boot] = bench.rows;
    const changed = { ...boot!, wallMs: boot!.wallMs + 1 };
    const batch = { benchId: bench.writer.benchId, after: null, rows: [changed], documents: [] };
    expect(await store.take(batch as never)).toMatchObject({ what: "refused", why: "broken-row" });
    expect(await rowsAtCentre(bench)).toEqual([]);
  });

  it("asks for what lies before, and takes no row before its documents", async () => {
    const bench = await onList();
    bench.append(4);
    const { rows } = bench;
    const { benchId } = bench.writer;
    const take = (from: number, to: number, after: object | null) =>
      store.take({ benchId, after, rows: rows.slice(from, to), documents: [] } as never);
    expect(await take(2, 4, { boot: 1, sequence: 1 })).toEqual({ what: "gap", head: null });
    expect(await take(0, 2, null)).toMatchObject({ what: "wants", hashes: [expect.any(String)] });
    expect(await rowsAtCentre(bench)).toEqual([]);
  });

  it.each([
    [
      "a changed row",
      "UPDATE log_row SET bytes = bytes || '\\x20' WHERE bench_id = $1 AND sequence = 3",
      "event 3",
    ],
    ["a row that was taken out", "DELETE FROM log_row WHERE bench_id = $1 AND sequence = 2", "event 3"],
    ["the last row taken out", "DELETE FROM log_row WHERE bench_id = $1 AND sequence = 6", "event 6"],
    ["a changed document", "UPDATE document SET bytes = '\\x00' WHERE $1::text IS NOT NULL", "document"],
  ])("is proved by verify, which names %s", async (_, statement, named) => {
    const bench = await onList();
    bench.append(6);
    bench.send(address);
    await allSent(bench);
    const client = await pool.connect();
    await client.query("BEGIN");
    await client.query(statement, [bench.writer.benchId]);
    const proof = await verifyCentre(client as never);
    await client.query("ROLLBACK");
    client.release();
    expect(proof).toMatchObject({ isSound: false });
    expect(JSON.stringify(proof)).toContain(named);
    expect(await verifyCentre(pool)).toMatchObject({ isSound: true });
  });

  it("keeps rows in a partition of their centre and month", async () => {
    const { rows } = await pool.query<{ name: string }>(
      "SELECT DISTINCT tableoid::regclass::text AS name FROM log_row ORDER BY 1",
    );
    // The clock of the checks stands in June 2025.
    expect(rows.map(({ name }) => name)).toEqual([expect.stringMatching(/^log_row_\d+_2025_06$/)]);
  });
});

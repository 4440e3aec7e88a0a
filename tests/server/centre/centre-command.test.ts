import { afterAll, afterEach, beforeAll, expect, it, vi } from "vitest";
import { run } from "../../../server/commands/centre.ts";
import { openParts } from "../../../server/parts.ts";
import { readEnvironment } from "../../../server/environment.ts";
import { createServer } from "../../../server/create-server.ts";
import { temporaryFolder } from "../temporary-folder.ts";
import { describeOnPostgres } from "./describe-on-postgres.ts";
import { PrivatePostgres } from "./private-postgres.ts";

/** Runs the command; gives its exit code and what it printed. */
async function said(args: string[], until?: () => Promise<void>): Promise<{ code: number; text: string }> {
  const lines: string[] = [];
  const writing = vi
    .spyOn(process.stdout, "write")
    .mockImplementation((text) => lines.push(String(text)) > 0);
  try {
    const code = await run(args, until);
    return { code, text: lines.join("") };
  } finally {
    writing.mockRestore();
  }
}

describeOnPostgres("npm run centre", (programs) => {
  let postgres: PrivatePostgres;
  beforeAll(async () => {
    postgres = new PrivatePostgres(programs);
    await postgres.start();
  });
  afterEach(() => vi.unstubAllEnvs());
  afterAll(() => postgres.remove());

  it("brings the log of a running bench into the store, and verify names a row that was changed there", async () => {
    vi.stubEnv("SPURWISE_CENTRE_PORT", "0");
    const data = temporaryFolder();
    expect((await said([postgres.uri, "list"])).text).toBe("There is no bench on the list.\n");
    expect(await said([postgres.uri, "add-centre", "north-hall", "North", "Hall"])).toMatchObject({
      code: 0,
    });

    let end = (): void => undefined;
    const lines: string[] = [];
    const writing = vi
      .spyOn(process.stdout, "write")
      .mockImplementation((text) => lines.push(String(text)) > 0);
    const serving = run([postgres.uri], () => new Promise<void>((over) => (end = over)));
    const address = await vi.waitFor(
      () => {
        const [, found] = /Spurwise centre: (\S+)/.exec(lines.join("")) ?? [];
        if (found === undefined) throw new Error("it does not listen yet");
        return found;
      },
      { timeout: 30_000, interval: 20 },
    );
    writing.mockRestore();

    const environment = readEnvironment({ SPURWISE_DATA: data, SPURWISE_CENTRE: address });
    const first = openParts(environment, () => undefined);
    const { benchId, publicKey = "" } = first.parts.bench.records!.log;
    first.close();
    vi.stubEnv("SPURWISE_DATA", data);
    expect((await said(["this-bench"])).text.trim()).toBe(`${benchId} ${publicKey}`);
    const added = await said([postgres.uri, "add-bench", "north-hall", benchId, publicKey]);
    expect(added).toMatchObject({ code: 0, text: `The bench ${benchId} is on the list of north-hall.\n` });

    const opened = openParts(environment, () => undefined);
    const server = createServer(opened.parts);
    await server.listen(0);
    opened.startBesides({ damaged: () => undefined, changed: () => undefined });
    await vi.waitFor(
      () => {
        const sent = server.health().centre?.sent;
        expect(sent).toEqual({
          boot: opened.parts.bench.records!.log.boot,
          sequence: expect.any(Number) as number,
        });
      },
      { timeout: 30_000, interval: 20 },
    );
    await server.close();
    opened.close();

    expect((await said([postgres.uri, "list"])).text).toMatch(
      new RegExp(`^north-hall {2}${benchId} {2}\\d+ records`),
    );
    expect(await said([postgres.uri, "verify"])).toMatchObject({ code: 0 });
    const pool = postgres.pool();
    await pool.query("UPDATE log_row SET wall_ms = wall_ms + 1 WHERE sequence = 0");
    await pool.end();
    expect(await said([postgres.uri, "verify"])).toEqual({
      code: 1,
      text: expect.stringMatching(
        new RegExp(
          `First bad record: bench ${benchId}, boot \\d+, event 0: its content is not what was written`,
        ),
      ) as string,
    });
    end();
    expect(await serving).toBe(0);
  });

  it.each([[[]], [["mysql://host/db"]]])("says how it is used where it is given %j", async (args) => {
    expect(await said(args)).toMatchObject({
      code: 2,
      text: expect.stringContaining("npm run centre") as string,
    });
  });

  it("says so where there is no store, and where the network would read the log", async () => {
    const none = "postgresql://spurwise@localhost/postgres?host=%2Fnonexistent";
    expect(await said([none, "list"])).toMatchObject({
      code: 2,
      text: expect.stringContaining("cannot be used") as string,
    });
    vi.stubEnv("SPURWISE_DATA", temporaryFolder());
    vi.stubEnv("SPURWISE_CENTRE_HOST", "0.0.0.0");
    expect(await said([postgres.uri])).toMatchObject({
      code: 2,
      text: expect.stringContaining("Without a certificate") as string,
    });
  });

  it("leaves a store of a later version as it is", async () => {
    const pool = postgres.pool();
    await pool.query("INSERT INTO migration (version) VALUES (1000)");
    expect(await said([postgres.uri, "list"])).toMatchObject({
      code: 2,
      text: expect.stringContaining("version 1000") as string,
    });
    await pool.query("DELETE FROM migration WHERE version = 1000");
    await pool.end();
  });
});

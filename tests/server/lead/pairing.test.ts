import { type AddressInfo, connect, createServer, type Server, type Socket } from "node:net";
import { onTestFinished, describe, expect, it } from "vitest";
import { largestUnprovedBytes, openChannel, takeChannels } from "../../../server/lead/channel.ts";
import { openSigner } from "../../../server/store/log-signer.ts";
import { temporaryFolder } from "../temporary-folder.ts";
import { LedBench, pair, until, workshopOf } from "./led-bench.ts";

const joining = (lead: LedBench, bench: LedBench, code: string, port = lead.workshop.port) =>
  bench.byTrainer("lead-act", { what: "join", address: `127.0.0.1:${port}`, code });

async function leadWithCode(): Promise<{ lead: LedBench; bench: LedBench; code: string }> {
  const lead = await new LedBench().start();
  await lead.byTrainer("lead-act", { what: "lead", isLeading: true });
  await lead.byTrainer("lead-act", { what: "show-code" });
  return { lead, bench: await new LedBench().start(), code: lead.workshop.code?.text ?? "" };
}

/** Somebody on the network through whom everything goes, and who may change it. */
async function between(
  port: number,
  change: (bytes: Buffer) => Buffer[] = (bytes) => [bytes],
): Promise<number> {
  const sockets: Socket[] = [];
  const server: Server = createServer((near) => {
    const far = connect(port, "127.0.0.1");
    sockets.push(near, far);
    near.on("data", (bytes: Buffer) => change(bytes).forEach((one) => far.write(one)));
    far.on("data", (bytes: Buffer) => void near.write(bytes));
    for (const [one, other] of [
      [near, far],
      [far, near],
    ] as const) {
      one.on("error", () => other.destroy());
      one.on("close", () => other.destroy());
    }
  });
  await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
  onTestFinished(() => {
    sockets.forEach((socket) => socket.destroy());
    server.close();
  });
  return (server.address() as AddressInfo).port;
}

describe("pairing", () => {
  it("pins the keys of both ends by the code that one shows and the other is given, however it is typed", async () => {
    const { lead, bench, code } = await leadWithCode();
    expect(code).toMatch(/^[2-9A-HJKMNP-Z]{4}-[2-9A-HJKMNP-Z]{4}$/);
    expect(await joining(lead, bench, ` ${code.toLowerCase().replace("-", " ")} `)).toEqual({ ok: true });
    expect(lead.book.benches).toMatchObject([{ id: bench.id }]);
    expect(bench.book.lead).toMatchObject({ id: lead.id, port: lead.workshop.port });
    // Each end has in its log whom it is paired with, and whose hand did it.
    const byHand = { author: { by: "trainer", session: "s-1" } };
    expect(lead.bench.events("bench-paired")).toMatchObject([
      { ...byHand, content: { bench: bench.id, person: "t-1" } },
    ]);
    expect(bench.bench.events("lead-joined")).toMatchObject([
      { ...byHand, content: { lead: lead.id, person: "t-1" } },
    ]);
    await until(() => lead.reportOf(bench), "the report");
    // It is used up: another bench needs another.
    expect(lead.workshop.code).toBeUndefined();
    expect(await joining(lead, await new LedBench().start(), code)).toMatchObject({ code: "no-pair-code" });
  });

  it("takes one bench alone by a code, however many come with it at once", async () => {
    const { lead, bench, code } = await leadWithCode();
    const other = await new LedBench().start();
    const replies = await Promise.all([joining(lead, bench, code), joining(lead, other, code)]);
    expect(replies.filter(({ ok }) => ok)).toHaveLength(1);
    expect(replies.find(({ ok }) => !ok)).toMatchObject({ code: "no-pair-code" });
    expect(lead.book.benches).toHaveLength(1);
  });

  it("ends the code after three wrong ones, and pairs nobody", async () => {
    const { lead, bench, code } = await leadWithCode();
    for (let tried = 0; tried < 3; tried += 1)
      expect(await joining(lead, bench, "2222-2222")).toMatchObject({ code: "wrong-pair-code" });
    expect(await joining(lead, bench, code)).toMatchObject({ code: "no-pair-code" });
    expect(lead.book.benches).toEqual([]);
    expect(bench.book.lead).toBeNull();
  });

  it("ends the code after three minutes", async () => {
    const { lead, bench, code } = await leadWithCode();
    lead.bench.clock.advance(179_000);
    expect(lead.workshop.code?.text).toBe(code);
    lead.bench.clock.advance(1000);
    expect(await joining(lead, bench, code)).toMatchObject({ code: "no-pair-code" });
  });

  it("is refused where nobody leads, and where nobody answers", async () => {
    const { bench } = await leadWithCode();
    const alone = await new LedBench().start();
    expect(await alone.byTrainer("lead-act", { what: "show-code" })).toMatchObject({ code: "no-lead" });
    expect(await joining(alone, bench, "2222-2222", 1)).toMatchObject({ code: "lead-not-reached" });
  });

  it("fails where somebody in between makes both ends think that they are the other: the proof is for one connection", async () => {
    const { lead, bench, code } = await leadWithCode();
    // They end the one connection, open another, and pass on what is said.
    const server = takeChannels((near) => {
      void openChannel("127.0.0.1", lead.workshop.port ?? 0).then((far) => {
        near.listen(
          (message) => far.send(message as object),
          () => far.close(),
        );
        far.listen(
          (message) => near.send(message as object),
          () => near.close(),
        );
      });
    });
    await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
    onTestFinished(() => void server.close());
    const { port } = server.address() as AddressInfo;
    expect(await joining(lead, bench, code, port)).toMatchObject({ code: "wrong-pair-code" });
    expect(lead.book.benches).toEqual([]);
    expect(bench.book.lead).toBeNull();
  });
});

describe("the link after it", () => {
  it("shows nothing of names to whoever reads what goes over the network", async () => {
    const { lead, bench, code } = await leadWithCode();
    let seen = "";
    const port = await between(lead.workshop.port ?? 0, (bytes) => {
      seen += bytes.toString("latin1");
      return [bytes];
    });
    expect(await joining(lead, bench, code, port)).toEqual({ ok: true });
    await bench.bench.isWiring();
    await until(() => lead.reportOf(bench)?.work, "the work");
    expect(seen.length).toBeGreaterThan(2000);
    const name = lead.reportOf(bench)?.work?.learner ?? "";
    expect(name).not.toBe("");
    for (const word of [name, "first-spur", bench.id, code]) expect(seen, word).not.toContain(word);
  });

  it("ends where a byte is changed on the way or sent again; nothing of it is taken, and it is opened anew", async () => {
    const { lead, bench, code } = await leadWithCode();
    let isBad: false | "changed" | "again" = false;
    const port = await between(lead.workshop.port ?? 0, (bytes) => {
      const bad = isBad;
      isBad = false;
      if (bad === "again") return [bytes, bytes];
      if (bad === "changed") bytes[bytes.length - 1] = (bytes.at(-1) ?? 0) ^ 1;
      return [bytes];
    });
    expect(await joining(lead, bench, code, port)).toEqual({ ok: true });
    await until(() => lead.reportOf(bench), "the first report");
    for (const how of ["changed", "again"] as const) {
      const before = lead.channels.length;
      isBad = how;
      await bench.bench.does("set-language", { language: "en" });
      await bench.bench.does("sign-in", { by: "guest" });
      await bench.bench.does("sign-out", {});
      await until(() => lead.channels.length > before, "another connection");
      await until(() => lead.workshop.benches()[0]?.isLinked, "the link");
    }
  });

  it("is refused to a bench that has not the key it was paired with, and to one that was forgotten", async () => {
    const { lead, benches } = await workshopOf(1);
    const [bench] = benches as [LedBench];
    const stranger = await new LedBench().start();
    stranger.book.keepLead(bench.book.lead);
    // It says that it is the other bench.
    const channel = await openChannel("127.0.0.1", lead.workshop.port ?? 0);
    channel.send({ what: "link", benchId: bench.id, signature: "AAAA" });
    expect(await channel.next()).toEqual({ what: "refused", why: "unknown-bench" });
    await lead.byTrainer("lead-act", { what: "forget", bench: bench.id });
    await until(() => bench.link.lead?.isLinked === false, "the end of the link");
    expect(lead.workshop.benches()).toEqual([]);
    expect(lead.bench.events("bench-forgotten")).toMatchObject([{ content: { bench: bench.id } }]);
    await until(
      () => bench.bench.notes.some((note) => note.includes("does not know this bench")),
      "the note",
    );
  });

  it("is not gone into where another one answers at the lead's address", async () => {
    const { lead, benches } = await workshopOf(1);
    const [bench] = benches as [LedBench];
    // It says that it is the lead, and has not its key.
    const key = openSigner(temporaryFolder());
    const server = takeChannels((channel) => {
      void channel
        .next()
        .then(() => channel.send({ what: "linked", signature: key.signatureOf("link lead") }));
    });
    await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
    onTestFinished(() => void server.close());
    const known = bench.book.lead;
    if (!known) throw new Error("not paired");
    bench.book.keepLead({ ...known, port: (server.address() as AddressInfo).port });
    lead.workshop.stop();
    await until(() => bench.bench.notes.some((note) => note.includes("another one answers")), "the note");
    expect(bench.link.lead?.isLinked).toBe(false);
  });
});

describe("whoever calls a lead", () => {
  it.each([
    ["what is no message", { hello: 1 }],
    ["an order", { what: "order", order: 1, act: "freeze-bench", message: { isFrozen: true } }],
  ])("and says %s is let go, and the benches that are linked stay so", async (_, message) => {
    const { lead, benches } = await workshopOf(1);
    const channel = await openChannel("127.0.0.1", lead.workshop.port ?? 0);
    channel.send(message);
    await expect(channel.next()).rejects.toThrow("ended");
    expect(lead.workshop.benches()[0]?.isLinked).toBe(true);
    expect(benches[0]?.bench.bench.core.hold.isFrozen).toBe(false);
  });

  it("keeps what was paired over a start of both", async () => {
    const { lead, benches } = await workshopOf(1);
    const [bench] = benches as [LedBench];
    bench.cutPower();
    const again = await new LedBench({ folder: bench.bench.folder }).start();
    await until(() => lead.workshop.benches()[0]?.isLinked && again.link.lead?.isLinked, "the link");
    await pair(lead, again);
    expect(lead.book.benches).toHaveLength(1);
  });
});

describe("a message over the link", () => {
  it.each([
    ["nobody has proved who they are yet, ends it", false],
    ["it is proved who is there, is taken", true],
  ])("that is long, where %s", async (_, isProved) => {
    const taken = new Promise<unknown>((done) => {
      const server = takeChannels((channel) => {
        if (isProved) channel.trust();
        channel.next().then(done, done);
      });
      server.listen(0, "127.0.0.1", () => {
        const { port } = server.address() as AddressInfo;
        void openChannel("127.0.0.1", port).then((channel) => channel.send(long));
      });
      onTestFinished(() => void server.close());
    });
    const long = { text: "x".repeat(largestUnprovedBytes) };
    if (isProved) expect(await taken).toEqual(long);
    else expect(await taken).toBeInstanceOf(Error);
  });
});

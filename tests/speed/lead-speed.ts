import { get } from "node:http";
import { rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { logFile } from "../../server/folders.ts";
import { type Channel, openChannel } from "../../server/lead/channel.ts";
import { linkText, signedOfLink } from "../../server/lead/pair-code.ts";
import { openRecords } from "../../server/open-records.ts";
import { type LogSigner, openSigner } from "../../server/store/log-signer.ts";
import type { BenchView } from "../../shared/protocol/bench-view.ts";
import { type BenchReport, leadData, type LeadView } from "../../shared/protocol/lead-view.ts";
import { changeOf } from "../../shared/protocol/view-change.ts";
import { BenchLink } from "../e2e/bench-link.ts";
import { newDataFolder, startBench } from "../e2e/bench-process.ts";
import { seeded } from "../seeded.ts";
import { fullBoard } from "./judge-speed.ts";
import { usedS } from "./process-time.ts";
import type { SpeedLine } from "./speed-line.ts";

const benchCount = 20;
const changesPerS = 5;
const viewerCount = 30;
const settleS = 4;
const watchedS = 15;
const mostShare = 0.4;
const leadPort = 4797;

/** What a bench shows while the workshop board is filled cable by cable, one view after each. */
async function viewsOfWork(): Promise<BenchView[]> {
  const bench = await startBench({ board: "workshop" });
  const link = new BenchLink(bench.address);
  try {
    await link.seen(({ state, scenarios }) => state === "ready" && scenarios.length > 0);
    await link.does("sign-in", { by: "guest" });
    await link.does("start-attempt", { scenario: "ring-and-spurs", mode: "practice" });
    await link.does("accept-caution", {});
    await link.does("go-to-step", { step: "wire" });
    const views: BenchView[] = [];
    for (const { from, to } of fullBoard(seeded(1)).cables) {
      // Of what the board has at random some pairs of entries have no core in common.
      await link.does("plug-cable", { entryA: from, entryB: to }).catch(() => undefined);
      if (link.view?.attempt && link.view !== views.at(-1)) views.push(link.view);
    }
    if (views.length < 20) throw new Error(`the board was not filled: ${views.length} views`);
    return views;
  } finally {
    link.close();
    await bench.stop();
  }
}

const reportOf = ({ attempt, board }: BenchView, learner: string, nowWallMs: number): BenchReport => ({
  ...{ benchName: learner, nowWallMs, state: "ready", clock: "synced", faults: [], records: "sound" },
  ...{ person: learner, isFrozen: false, timeUpWallMs: nowWallMs + 1_800_000, heldTimeMs: null },
  work: attempt && {
    ...{ attempt: attempt.id, learner, title: { en: "Ring and spurs", pl: "Obwód z odgałęzieniami" } },
    ...{ mode: "practice", step: "wire", startedWallMs: 0, readyWallMs: null, isWaitingForTrainer: false },
  },
  picture: attempt && { ...attempt, verdict: null },
  face: board!,
  ...{ packVersion: 1, waitingPackVersion: null },
});

/** A bench as far as its lead knows it: it goes from view to view, so many times a second. */
class Sender {
  readonly #channel: Channel;
  readonly #views: readonly BenchView[];
  readonly #name: string;
  #at: number;
  #sent: BenchReport;

  private constructor(channel: Channel, views: readonly BenchView[], at: number) {
    this.#channel = channel;
    this.#views = views;
    this.#name = `Learner ${at}`;
    this.#at = at;
    this.#sent = reportOf(views[at % views.length]!, this.#name, Date.now());
    channel.listen(
      () => undefined,
      () => undefined,
    );
    channel.send({ what: "report", report: this.#sent });
  }

  static async link(
    { id, signer }: { id: string; signer: LogSigner },
    leadId: string,
    views: readonly BenchView[],
    at: number,
  ): Promise<Sender> {
    const channel = await openChannel("127.0.0.1", leadPort);
    const text = linkText(channel.binding, id, leadId);
    channel.send({
      ...{ what: "link", benchId: id },
      signature: signer.signatureOf(signedOfLink("link", "bench", text)),
    });
    const answer = (await channel.next()) as { what?: string };
    if (answer.what !== "linked") throw new Error(`the lead answered ${answer.what}`);
    return new Sender(channel, views, at);
  }

  change(): void {
    this.#at += 1;
    const report = reportOf(this.#views[this.#at % this.#views.length]!, this.#name, Date.now());
    this.#channel.send({ what: "change", change: changeOf(this.#sent, report) });
    this.#sent = report;
  }

  close(): void {
    this.#channel.close();
  }
}

/** Somebody who watches the page of the lead: counts the bytes that come. */
const watching = (address: string): { bytes: () => number; close: () => void } => {
  let count = 0;
  const request = get(`${address}${leadData}/stream`, (response) => {
    if (response.statusCode !== 200) throw new Error(`the stream answered ${response.statusCode}`);
    response.on("data", (piece: Buffer) => (count += piece.length));
  });
  request.on("error", () => undefined);
  return { bytes: () => count, close: () => request.destroy() };
};

/** What somebody who opens the page now is told first. */
const firstView = (address: string): Promise<LeadView> =>
  new Promise((done, failed) => {
    let text = "";
    const request = get(`${address}${leadData}/stream`, (response) => {
      response.setEncoding("utf8").on("data", (piece: string) => {
        text += piece;
        const [, data] = /^data: (.*)\n\n/m.exec(text) ?? [];
        if (data === undefined) return;
        request.destroy();
        done(JSON.parse(data) as LeadView);
      });
    });
    request.on("error", failed);
  });

/** A lead in a process of its own, with benches that change and people who watch its page. */
export const lines = async (): Promise<SpeedLine[]> => {
  const views = await viewsOfWork();
  const dataFolder = newDataFolder();
  const folders = Array.from({ length: benchCount }, newDataFolder);
  const known = folders.map((folder, at) => ({ id: `bench-${at}`, signer: openSigner(folder) }));
  const { records, reading, writing } = openRecords(logFile(dataFolder), () => undefined);
  const leadId = records.log.benchId;
  records.log.checkpoint();
  reading.close();
  writing.close();
  // They were paired before: what is measured is the work with them.
  const benches = known.map(({ id, signer }) => ({ id, name: id, publicKey: signer.publicKey }));
  writeFileSync(join(dataFolder, "lead.json"), JSON.stringify({ isLeading: true, benches, lead: null }));
  const lead = await startBench({ board: "workshop", dataFolder, leadPort });
  const link = new BenchLink(lead.address);
  const senders: Sender[] = [];
  const viewers: ReturnType<typeof watching>[] = [];
  let timer: NodeJS.Timeout | undefined;
  try {
    await link.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-TRAINER" });
    for (const [at, bench] of known.entries()) senders.push(await Sender.link(bench, leadId, views, at));
    for (let at = 0; at < viewerCount; at += 1) viewers.push(watching(lead.address));
    let turn = 0;
    // One bench after the other, each so many times a second, however late the timer is.
    const startMs = performance.now();
    timer = setInterval(() => {
      const due = ((performance.now() - startMs) / 1000) * benchCount * changesPerS;
      while (turn < due) senders[(turn += 1) % benchCount]?.change();
    }, 5);
    await pause(settleS * 1000);
    const before = { usedS: usedS(lead.pid), turn, atMs: performance.now(), bytes: viewers[0]?.bytes() ?? 0 };
    await pause(watchedS * 1000);
    const seconds = (performance.now() - before.atMs) / 1000;
    const share = (usedS(lead.pid) - before.usedS) / seconds;
    const perS = (turn - before.turn) / seconds;
    const told = Math.min(...viewers.map(({ bytes }) => bytes())) - before.bytes;
    const now = await firstView(lead.address);
    const liveCount = now.benches.filter(
      ({ report }) => now.nowWallMs - (report?.nowWallMs ?? 0) < 1000,
    ).length;
    const isWhole = perS > 0.98 * benchCount * changesPerS && told > 0 && liveCount === benchCount;
    return [
      {
        what: `${benchCount} benches at ${(perS / benchCount).toFixed(1)} changes a second, ${viewerCount} viewers: the lead`,
        reached: `${(share * 100).toFixed(0)} % of a core`,
        target: `under ${mostShare * 100} %`,
        ok: isWhole && share < mostShare,
      },
    ];
  } finally {
    clearInterval(timer);
    for (const one of [...viewers, ...senders, link]) one.close();
    await lead.stop();
    for (const folder of [dataFolder, ...folders]) rmSync(folder, { recursive: true, force: true });
  }
};

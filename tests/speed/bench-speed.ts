import { chromium, type Page } from "@playwright/test";
import { setTimeout as pause } from "node:timers/promises";
import { io, type Socket } from "socket.io-client";
import { benchNamespace } from "../../shared/protocol/socket-events.ts";
import { type BenchOptions, startBench } from "../e2e/bench-process.ts";
import { pointsOfRing, ringAndSpurs } from "../e2e/ring-and-spurs.ts";
import { browserOptions } from "../browser-options.ts";
import { BenchLink } from "../e2e/bench-link.ts";
import { BenchScreen } from "../e2e/bench-screen.ts";
import { TestScreen } from "../e2e/test-screen.ts";
import { deadTestsOverLink } from "../e2e/dead-tests-over-link.ts";
import { firstLoadKb, mostFirstLoadKb } from "./first-load-kb.ts";
import { ms, quantile, type SpeedLine } from "./speed-line.ts";
import { twelveCables } from "./twelve-cables.ts";

const turns = 40;
/** Long enough for the drawing to be done, and for the scan to come to rest between turns. */
const turnMs = 350;
const throttling = 6;

/** What the page notes, in milliseconds since 1970 and to a fraction. */
interface Stamps {
  /** When a message of the server last came. */
  message: number;
  /** When the drawing last changed, apart from the outline that turns whole once a cable is on the disk. */
  drawn: number;
  /** How long after the message before it that was. */
  messageToDrawnMs: number;
  /** When that outline last turned whole: leads are gathered for a quarter of a second before they are written. */
  kept: number;
  /** When a finger was last lifted. */
  released: number;
}

/** Runs in the page before anything else. */
const noteStamps = (): void => {
  const stamps: Stamps = { message: 0, drawn: 0, messageToDrawnMs: 0, kept: 0, released: 0 };
  Object.assign(window, { stamps });
  const now = () => performance.timeOrigin + performance.now();
  const Native = window.WebSocket;
  window.WebSocket = class extends Native {
    constructor(url: string | URL, protocols?: string | string[]) {
      super(url, protocols);
      this.addEventListener("message", () => (stamps.message = now()));
    }
  };
  document.addEventListener("pointerup", () => (stamps.released = now()), { capture: true });
  new MutationObserver((changes) => {
    if (changes.every(({ attributeName }) => attributeName === "stroke-dasharray")) {
      stamps.kept = now();
      return;
    }
    stamps.drawn = now();
    stamps.messageToDrawnMs = stamps.drawn - stamps.message;
  }).observe(document, {
    subtree: true,
    childList: true,
    attributes: true,
    characterData: true,
  });
};

/** What the page has noted so far. */
const stampsOf = (page: Page): Promise<Stamps> =>
  page.evaluate(() => (window as unknown as { stamps: Stamps }).stamps);

interface Turn {
  /** From the contact to the last change of the drawing. */
  contactToDrawnMs: number;
  /** From the message before it to the last change of the drawing. */
  messageToDrawnMs: number;
  /** From the request to the view that shows it, at another socket. */
  answerMs: number;
}

const now = (): number => performance.timeOrigin + performance.now();

/** Asks for something and waits for what changes in the view. */
const nextView = async (socket: Socket, name: string, command: object): Promise<number> => {
  const start = now();
  await new Promise<void>((done) => {
    socket.once("change", () => done());
    socket.emit(name, command, () => undefined);
  });
  return now() - start;
};

/** Puts one lead in and out again and again while the bench screen is open, and times each going in. */
const watchLeads = async (options: BenchOptions, rate: number): Promise<Turn[]> =>
  onPage(options, async (page, address) => {
    await page.addInitScript(noteStamps);
    await new BenchScreen(page).openTask(address, "build-a-radial");
    const session = await page.context().newCDPSession(page);
    await session.send("Emulation.setCPUThrottlingRate", { rate });
    const socket = io(`${address}${benchNamespace}`, { transports: ["websocket"] });
    await new Promise((done) => socket.once("view", done));
    const lead = { contactA: "socket-1.a.L", contactB: "way-2.a.L" };
    const samples: Turn[] = [];
    for (let turn = 0; turn < turns; turn += 1) {
      const start = now();
      const answerMs = await nextView(socket, "plug", lead);
      await pause(turnMs);
      const { drawn, messageToDrawnMs } = await stampsOf(page);
      samples.push({ contactToDrawnMs: drawn - start, messageToDrawnMs, answerMs });
      await nextView(socket, "pull", { what: "lead", ...lead });
      await pause(turnMs);
    }
    socket.close();
    return samples;
  });

const onPage = async <Result>(
  options: BenchOptions,
  use: (page: Page, address: string) => Promise<Result>,
): Promise<Result> => {
  const bench = await startBench(options);
  const browser = await chromium.launch(browserOptions);
  try {
    const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, hasTouch: true });
    return await use(await context.newPage(), bench.address);
  } finally {
    await browser.close();
    await bench.stop();
  }
};

/** Contact to drawing on the workshop board's chain, with a stand-in that spins so long a GPIO call. */
const contactLines = async (spinUs: number, target: { medianMs: number; lateMs: number } | undefined) => {
  const samples = (await watchLeads({ board: "workshop", lines: "spinning", spinUs }, 1)).map(
    ({ contactToDrawnMs }) => contactToDrawnMs,
  );
  const [median, late] = [quantile(samples, 0.5), quantile(samples, 0.95)];
  return {
    what: `contact to drawing, 206 lines, ${spinUs} µs a GPIO call: median, p95`,
    reached: `${ms(median)}, ${ms(late)}`,
    target: target ? `${target.medianMs} ms, ${target.lateMs} ms` : "said, no target",
    ok: !target || (median <= target.medianMs && late <= target.lateMs),
  };
};

const touchLines = async (): Promise<SpeedLine[]> => {
  const samples = await watchLeads({ board: "workshop" }, throttling);
  const answer = quantile(
    samples.map(({ answerMs }) => answerMs),
    0.95,
  );
  const drawings = samples.map(({ messageToDrawnMs }) => messageToDrawnMs);
  const [drawing, late] = [quantile(drawings, 0.5), quantile(drawings, 0.95)];
  return [
    {
      what: "touch to the server's answer: p95",
      reached: ms(answer),
      target: "within 10 ms",
      ok: answer <= 10,
    },
    {
      what: `message to the last change of the drawing, one lead, ${throttling}x throttling: median, p95`,
      reached: `${ms(drawing)}, ${ms(late)}`,
      target: "within one frame, 17 ms",
      ok: late <= 17,
    },
  ];
};

/**
 * A finger and nothing else: a tap of the driver listens to every event in the page to see that it meets what is meant,
 * and asks the page what lies under it, in the page's own time.
 */
const touchStation = async (screen: BenchScreen, station: string): Promise<void> => {
  const box = await screen.get(`station-${station}`).boundingBox();
  if (!box) throw new Error(`there is no ${station} on the plan`);
  await screen.page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
};

/** Lays a cable by two taps among twelve, again and again, and times each from the lifted finger to the last change. */
const touchedCableLines = async (): Promise<SpeedLine[]> =>
  onPage({ board: "workshop" }, async (page, address) => {
    await page.addInitScript(noteStamps);
    const screen = new BenchScreen(page);
    await screen.openTask(address, "build-a-radial");
    const socket = io(`${address}${benchNamespace}`, { transports: ["websocket"] });
    await new Promise((done) => socket.once("view", done));
    for (const [entryA, entryB] of twelveCables)
      await new Promise((done) => socket.emit("plug-cable", { entryA, entryB, csaMm2: 2.5 }, done));
    await screen.expectCableCount(twelveCables.length);
    const session = await page.context().newCDPSession(page);
    await session.send("Emulation.setCPUThrottlingRate", { rate: throttling });
    const released: number[] = [];
    const afterMessage: number[] = [];
    const kept: number[] = [];
    for (let turn = 0; turn < turns; turn += 1) {
      await touchStation(screen, "way-2");
      await touchStation(screen, "socket-5");
      // Looking for the cable meanwhile would take of the page's own time.
      await pause(turnMs);
      const stamps = await stampsOf(page);
      await screen.expectCableCount(twelveCables.length + 1);
      released.push(stamps.drawn - stamps.released);
      afterMessage.push(stamps.messageToDrawnMs);
      kept.push(stamps.kept - stamps.released);
      await screen.get("key-undo").tap();
      await screen.expectCableCount(twelveCables.length);
      await pause(turnMs);
    }
    socket.close();
    const [touch, frame] = [quantile(released, 0.5), quantile(afterMessage, 0.5)];
    return [
      {
        what: `touch release to the last change of the drawing, 12 cables, ${throttling}x throttling: median`,
        reached: ms(touch),
        target: "within 100 ms",
        ok: touch <= 100,
      },
      {
        what: `message to the last change of the drawing, 12 cables, ${throttling}x throttling: median`,
        reached: ms(frame),
        target: "within one frame, 17 ms",
        ok: frame <= 17,
      },
      {
        what: `touch release to the outline that says it is on the disk, ${throttling}x throttling: median`,
        reached: ms(quantile(kept, 0.5)),
        target: "said, no target",
        ok: true,
      },
    ];
  });

const firstLoadMs = (): Promise<number> =>
  onPage({ board: "workshop" }, async (page, address) => {
    const session = await page.context().newCDPSession(page);
    await session.send("Emulation.setCPUThrottlingRate", { rate: throttling });
    const start = now();
    await page.goto(address);
    await page.getByTestId("key-guest").waitFor();
    return now() - start;
  });

/** A ring with two spurs, tested and switched on; then from the touch of Load to what can be touched there. */
const openLoadMs = (): Promise<number> =>
  onPage({ board: "workshop" }, async (page, address) => {
    const screen = new BenchScreen(page);
    await screen.openTask(address, "ring-and-spurs");
    const link = new BenchLink(address);
    await link.plugCables(ringAndSpurs, 2.5);
    await screen.expectCableCount(ringAndSpurs.length);
    await TestScreen.open(screen);
    await deadTestsOverLink(link, pointsOfRing);
    link.close();
    const session = await page.context().newCDPSession(page);
    await session.send("Emulation.setCPUThrottlingRate", { rate: throttling });
    const start = now();
    await screen.get("step-load").tap();
    await screen.get("load-appliance-socket-1/kettle").waitFor();
    return now() - start;
  });

/** The bench in a real browser: first load, touch to verdict, contact to drawing. */
export const lines = async (): Promise<SpeedLine[]> => {
  const firstKb = firstLoadKb();
  const loadMs = await firstLoadMs();
  const openingMs = await openLoadMs();
  return [
    {
      what: "first load of the bench screen, script and style, compressed",
      reached: `${firstKb.toFixed(1)} kB`,
      target: `under ${mostFirstLoadKb} kB`,
      ok: firstKb < mostFirstLoadKb,
    },
    {
      what: `bench screen usable, ${throttling}x throttling, cold cache`,
      reached: ms(loadMs),
      target: "under 3 s",
      ok: loadMs < 3000,
    },
    {
      what: `step Load open for the first time, ${throttling}x throttling`,
      reached: ms(openingMs),
      target: "under 1 s",
      ok: openingMs < 1000,
    },
    ...(await touchLines()),
    ...(await touchedCableLines()),
    await contactLines(6, { medianMs: 100, lateMs: 150 }),
    await contactLines(12, undefined),
  ];
};

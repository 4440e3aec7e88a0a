import { page } from "vitest/browser";
import { render } from "vitest-browser-svelte";
import Bench from "../../kiosk/bench/Bench.svelte";
import "../../kiosk/bench/bench.css";
import { fetchAhead } from "../../kiosk/bench/late-screens.ts";
import { bringLanguage } from "../../kiosk/text/words.svelte.ts";
import type { Send } from "../../kiosk/link/send.ts";
import type { BenchView } from "../../shared/protocol/bench-view.ts";
import type { Reply } from "../../shared/protocol/reply.ts";

export const panels = [
  { panel: "7-inch", width: 800, height: 480 },
  { panel: "10-inch", width: 1280, height: 800 },
] as const;

export interface Sent {
  name: string;
  command: unknown;
}

interface Options {
  view: BenchView;
  width?: number;
  height?: number;
  isLost?: boolean;
  lengthen?: (text: string) => string;
  idleMs?: number;
  answer?: Reply;
}

// Taken before a check may put a clock of its own in its place.
const nextFrame = window.requestAnimationFrame.bind(window);
/** Two frames of the browser: what watches sizes has been told by then. */
const laidOut = () => new Promise((done) => nextFrame(() => nextFrame(done)));

/** Waits until a screen that comes when it is opened stands. */
const stands = async (frame: HTMLElement): Promise<void> => {
  for (let frames = 0; frames < 300; frames += 1) {
    const work = frame.querySelector(".work");
    if (!work || work.childElementCount > 0) return;
    await new Promise((done) => nextFrame(done));
  }
};

/** Waits until a sheet that comes when it is opened stands below its title. */
export const sheetStands = async (): Promise<void> => {
  for (let frames = 0; frames < 300; frames += 1) {
    if (document.querySelector("dialog > :not(header)")) return;
    await new Promise((done) => nextFrame(done));
  }
};

/** Puts the bench screen up with a view and keeps what it sends. */
export const showBench = async ({
  view,
  width = 800,
  height = 480,
  answer = { ok: true },
  ...more
}: Options) => {
  await page.viewport(width, height);
  await bringLanguage(view.language);
  // As it is once the first screen has stood for a moment.
  await fetchAhead();
  const sent: Sent[] = [];
  const send: Send = async (name, command) => {
    sent.push({ name, command });
    return answer;
  };
  const frame = document.createElement("div");
  frame.id = "bench";
  frame.style.cssText = "position: fixed; inset: 0";
  document.body.append(frame);
  for (const old of document.querySelectorAll("#bench")) if (old !== frame) old.remove();
  const screen = await render(Bench, { view, isLost: false, send, ...more }, { baseElement: frame });
  // The screen stands in a box of the test library's; in the kiosk it fills the window.
  const [box] = frame.children;
  if (box instanceof HTMLElement) box.style.height = "100%";
  await document.fonts.load("700 20px 'Atkinson Hyperlegible'");
  await document.fonts.ready;
  await stands(frame);
  await laidOut();
  const show = async (next: Partial<Options>) => {
    await screen.rerender({ ...next });
    await stands(frame);
  };
  return { screen, sent, show, frame };
};

/** An element by its test id; fails where there is none. */
export const byId = (id: string): HTMLElement => {
  const found = document.querySelector<HTMLElement>(`[data-testid="${id}"]`);
  if (!found) throw new Error(`nothing on the screen is called ${id}`);
  return found;
};

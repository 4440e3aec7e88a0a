import { describe, expect, it } from "vitest";
import { userEvent } from "vitest/browser";
import { byId, panels, showBench } from "./show-bench.ts";
import { attempt, bench, sampleView } from "./views.ts";
import { workshopFace } from "./faces.ts";

const tap = async (id: string): Promise<void> => {
  byId(id).click();
  await Promise.resolve();
};
const centre = (id: string) => {
  const { x, y, width, height } = byId(id).getBoundingClientRect();
  return { clientX: x + width / 2, clientY: y + height / 2 };
};
const pointer = (type: string, target: Element, at: { clientX: number; clientY: number }) =>
  target.dispatchEvent(
    new PointerEvent(type, { bubbles: true, pointerId: 1, button: 0, isPrimary: true, ...at }),
  );

/** Drags as a finger does: down, some moves, up where it ends. */
const drag = (from: string, to: string): void => {
  const [start, end] = [centre(from), centre(to)];
  const source = byId(from);
  pointer("pointerdown", source, start);
  for (const part of [0.2, 0.6, 1])
    pointer("pointermove", source, {
      clientX: start.clientX + (end.clientX - start.clientX) * part,
      clientY: start.clientY + (end.clientY - start.clientY) * part,
    });
  pointer("pointerup", source, end);
};

describe("the cable in hand", () => {
  it("is of the size that was planned, until another is taken from the tray", async () => {
    const planned = attempt({ step: "wire", plan: { questions: [{ question: "csaMm2", answer: 2.5 }] } });
    const { sent, screen } = await showBench({ view: bench({ attempt: planned }) });
    drag("station-socket-1", "station-socket-3");
    await tap("key-tray");
    await screen.getByTestId("key-take-1.5").click();
    drag("station-socket-1", "station-socket-3");
    expect(sent.map(({ command }) => (command as { csaMm2?: number }).csaMm2)).toEqual([2.5, 1.5]);
  });
});

describe("what a cable is laid with", () => {
  const laid = async () => {
    const shown = await showBench({ view: sampleView("wire") });
    const say = shown.screen.getByTestId("say");
    await shown.screen.getByTestId("station-socket-1").click();
    await expect.element(say).toHaveTextContent("From Socket outlet 1.");
    const [target, at] = [byId("station-socket-3"), centre("station-socket-3")];
    pointer("pointerdown", target, at);
    pointer("pointerup", target, at);
    target.dispatchEvent(new TouchEvent("touchend", { bubbles: true, cancelable: true }));
    return { ...shown, say };
  };
  const saysFrom = () => byId("say").textContent.includes("From Socket outlet 1.");

  it("is put down as the finger is lifted, before the cable comes", async () => {
    const { say } = await laid();
    await Promise.resolve();
    expect(saysFrom()).toBe(false);
    await expect.element(say).not.toHaveTextContent("From");
  });

  it("is not what the next touch goes on from", async () => {
    const { sent, say } = await laid();
    byId("station-socket-2").click();
    await expect.element(say).toHaveTextContent("From Socket outlet 2.");
    expect(sent).toHaveLength(1);
  });
});

describe.each(panels)("wiring on the plan, on a $panel panel", ({ width, height }) => {
  it("by tap and tap runs a cable of the size in hand from the first free entry to the first free entry", async () => {
    const { sent, screen } = await showBench({ view: sampleView("wire"), width, height });
    await tap("key-tray");
    await screen.getByTestId("key-take-2.5").click();
    await screen.getByTestId("station-socket-1").click();
    await expect.element(screen.getByTestId("say")).toHaveTextContent("From Socket outlet 1. Now tap where");
    await screen.getByTestId("station-socket-3").click();
    expect(sent).toEqual([
      { name: "plug-cable", command: { entryA: "socket-1.a", entryB: "socket-3.a", csaMm2: 2.5 } },
    ]);
  });

  it("by the second tap runs it as the finger is lifted, and not once more by the press that follows", async () => {
    const { sent, screen } = await showBench({ view: sampleView("wire"), width, height });
    await screen.getByTestId("station-socket-1").click();
    const [target, at] = [byId("station-socket-3"), centre("station-socket-3")];
    pointer("pointerdown", target, at);
    expect(sent).toEqual([]);
    pointer("pointerup", target, at);
    expect(sent).toMatchObject([
      { name: "plug-cable", command: { entryA: "socket-1.a", entryB: "socket-3.a" } },
    ]);
    await tap("station-socket-3");
    expect(sent).toHaveLength(1);
  });

  it("has the finger's touch end with that, and a press that no finger made is one of its own", async () => {
    const { sent, screen } = await showBench({ view: sampleView("wire"), width, height });
    const lifted = (id: string): boolean => {
      const [target, at] = [byId(id), centre(id)];
      pointer("pointerdown", target, at);
      pointer("pointerup", target, at);
      return !target.dispatchEvent(new TouchEvent("touchend", { bubbles: true, cancelable: true }));
    };
    // The first tap is a press of the key, as ever.
    expect(lifted("station-socket-1")).toBe(false);
    await tap("station-socket-1");
    expect(lifted("station-socket-3")).toBe(true);
    expect(sent).toHaveLength(1);
    await tap("station-socket-2");
    await expect.element(screen.getByTestId("say")).toHaveTextContent("From Socket outlet 2");
  });

  it("by keyboard works after a finger that no press followed", async () => {
    const { screen } = await showBench({ view: sampleView("wire"), width, height });
    drag("station-socket-1", "station-socket-3");
    byId("station-way-1").focus();
    await userEvent.keyboard("{Enter}");
    await expect.element(screen.getByTestId("say")).toHaveTextContent("From Way 1");
  });

  it("by dragging does the same", async () => {
    const { sent } = await showBench({ view: sampleView("wire"), width, height });
    drag("station-way-1", "station-socket-2");
    expect(sent).toEqual([
      { name: "plug-cable", command: { entryA: "way-1.a", entryB: "socket-2.a", csaMm2: 1.5 } },
    ]);
  });

  it("takes a drag that ends where it began for a tap", async () => {
    const { sent, screen } = await showBench({ view: sampleView("wire"), width, height });
    const start = centre("station-way-1");
    const source = byId("station-way-1");
    pointer("pointerdown", source, start);
    pointer("pointermove", source, { clientX: start.clientX + 30, clientY: start.clientY - 4 });
    pointer("pointermove", source, { clientX: start.clientX + 4, clientY: start.clientY });
    pointer("pointerup", source, start);
    await expect.element(screen.getByTestId("say")).toHaveTextContent("From Way 1");
    expect(sent).toEqual([]);
  });

  it("says what a drag or a tap that met nothing did not do, and moves nothing for it", async () => {
    const { sent, screen } = await showBench({ view: sampleView("ring"), width, height });
    const placed = () => JSON.stringify(byId("cable-socket-1.b~socket-2.a").getBoundingClientRect());
    const before = placed();
    const plan = byId("station-way-1").closest("section");
    if (!plan) throw new Error("there is no plan");
    const { left, bottom } = plan.getBoundingClientRect();
    const nowhere = { clientX: left + 4, clientY: bottom - 4 };
    const [start, source] = [centre("station-socket-2"), byId("station-socket-2")];
    pointer("pointerdown", source, start);
    for (const at of [{ clientX: start.clientX - 60, clientY: start.clientY + 60 }, nowhere])
      pointer("pointermove", source, at);
    pointer("pointerup", source, nowhere);
    await expect.element(screen.getByTestId("refusal")).toHaveTextContent("No cable was laid");
    expect(placed()).toBe(before);
    source.click();
    plan.dispatchEvent(new MouseEvent("click", { bubbles: true, ...nowhere }));
    await expect.element(screen.getByTestId("refusal")).toHaveTextContent("Nothing is there");
    expect(placed()).toBe(before);
    expect(sent).toEqual([]);
  });

  it("takes a drag that ends right beside a plate, and a tap there, for the plate", async () => {
    const { sent, screen } = await showBench({ view: sampleView("wire"), width, height });
    const { right, top, height: high } = byId("station-socket-2").getBoundingClientRect();
    const beside = { clientX: right + 8, clientY: top + high / 2 };
    const [start, source] = [centre("station-way-1"), byId("station-way-1")];
    pointer("pointerdown", source, start);
    pointer("pointermove", source, { clientX: start.clientX + 60, clientY: start.clientY });
    pointer("pointermove", source, beside);
    pointer("pointerup", source, beside);
    expect(sent.map(({ name }) => name)).toEqual(["plug-cable"]);
    source.closest("section")?.dispatchEvent(new MouseEvent("click", { bubbles: true, ...beside }));
    source.closest("section")?.dispatchEvent(new MouseEvent("click", { bubbles: true, ...beside }));
    await expect.element(screen.getByTestId("say")).toHaveTextContent("From Socket outlet 2");
  });

  it("tells about a station at the second tap on it, or at its i", async () => {
    const { screen } = await showBench({ view: sampleView("wire"), width, height });
    await screen.getByTestId("station-socket-1").click();
    expect(document.querySelector("[data-testid='entry-socket-1.a']")).toBeNull();
    await screen.getByTestId("station-socket-1").click();
    await expect.element(screen.getByTestId("entry-socket-1.a")).toBeVisible();
    await screen.getByTestId("key-close-card").click();
    await screen.getByTestId("station-socket-1").click();
    await screen.getByTestId("key-about").click();
    await expect.element(screen.getByTestId("entry-socket-1.a")).toBeVisible();
  });

  it("asks which entry of a fused connection unit is meant, and plugs the one that is chosen", async () => {
    const { sent, screen } = await showBench({
      view: bench({
        board: workshopFace,
        attempt: { ...attempt(), ...(sampleView("workshop").attempt ?? {}), cables: [] },
      }),
      width,
      height,
    });
    drag("station-socket-3", "station-fcu-1");
    expect(sent).toEqual([]);
    await screen.getByTestId("entry-fcu-1.c").click();
    expect(sent).toEqual([
      { name: "plug-cable", command: { entryA: "socket-3.a", entryB: "fcu-1.c", csaMm2: 1 } },
    ]);
  });

  it("can be given up half way, by a key and by Escape", async () => {
    const { sent, screen } = await showBench({ view: sampleView("wire"), width, height });
    for (const giveUp of [
      async () => screen.getByTestId("key-cancel").click(),
      async () => void window.dispatchEvent(new KeyboardEvent("keydown", { key: "Escape" })),
    ]) {
      await screen.getByTestId("station-socket-1").click();
      await giveUp();
      await expect
        .element(screen.getByTestId("say"))
        .toHaveTextContent("Tap where a cable starts, then tap where it goes");
    }
    expect(sent).toEqual([]);
  });

  it("pulls a cable out that is touched, on its label or anywhere along its line", async () => {
    const { sent, screen } = await showBench({ view: sampleView("ring"), width, height });
    await screen.getByTestId("cable-socket-1.b~socket-2.a").click();
    await screen.getByTestId("key-pull-cable").click();
    expect(sent).toEqual([{ name: "pull", command: { what: "cable", cable: "socket-1.b~socket-2.a" } }]);
  });

  it("moves no lead of a real board: what is touched is only told about", async () => {
    const view = sampleView("wire");
    const { sent, screen } = await showBench({
      view: { ...view, board: view.board ? { ...view.board, isSimulated: false } : null },
      width,
      height,
    });
    drag("station-way-1", "station-socket-2");
    await screen.getByTestId("station-socket-1").click();
    await screen.getByTestId("entry-socket-1.a").click();
    await expect.element(screen.getByTestId("refusal")).toHaveTextContent("by hand");
    expect(document.querySelector("[data-testid='key-tray']")).toBeNull();
    expect(sent).toEqual([]);
  });
});

describe("wiring on the board's face", () => {
  it("joins contact to contact by tap and tap, with two stations open side by side", async () => {
    const { sent, screen } = await showBench({ view: sampleView("workshop") });
    await screen.getByTestId("key-face").click();
    await screen.getByTestId("station-socket-1").click();
    await screen.getByTestId("station-fcu-1").click();
    await screen.getByTestId("contact-socket-1.c.L").click();
    await screen.getByTestId("contact-fcu-1.b.L").click();
    expect(sent).toEqual([{ name: "plug", command: { contactA: "socket-1.c.L", contactB: "fcu-1.b.L" } }]);
  });

  it("joins contact to contact, and entry to entry, by dragging", async () => {
    const { sent, screen } = await showBench({ view: sampleView("workshop") });
    await screen.getByTestId("key-face").click();
    await screen.getByTestId("station-socket-1").click();
    await screen.getByTestId("station-fcu-1").click();
    await expect.element(screen.getByTestId("contact-fcu-1.b.N")).toBeVisible();
    drag("contact-socket-1.d.N", "contact-fcu-1.d.N");
    drag("entry-socket-1.c", "entry-fcu-1.b");
    expect(sent).toEqual([
      { name: "plug", command: { contactA: "socket-1.d.N", contactB: "fcu-1.d.N" } },
      { name: "plug-cable", command: { entryA: "socket-1.c", entryB: "fcu-1.b", csaMm2: 1 } },
    ]);
  });

  it("closes the station that was opened first when a third is opened", async () => {
    const { screen } = await showBench({ view: sampleView("workshop") });
    await screen.getByTestId("key-face").click();
    await screen.getByTestId("station-socket-1").click();
    await screen.getByTestId("station-fcu-1").click();
    await screen.getByTestId("key-close-socket-1").click();
    await screen.getByTestId("station-way-1").click();
    await expect.element(screen.getByTestId("entry-fcu-1.a")).toBeVisible();
    await expect.element(screen.getByTestId("entry-way-1.a")).toBeVisible();
    expect(document.querySelector("[data-testid='entry-socket-1.a']")).toBeNull();
  });

  it("pulls a single lead", async () => {
    const { sent, screen } = await showBench({ view: sampleView("ring") });
    await screen.getByTestId("key-face").click();
    await screen.getByTestId("station-socket-2").click();
    await screen.getByTestId("contact-socket-2.a.E").click();
    await screen.getByTestId("key-pull-lead").click();
    expect(sent).toEqual([
      { name: "pull", command: { what: "lead", contactA: "socket-2.a.E", contactB: "socket-1.b.E" } },
    ]);
  });

  it("tells a contact that cannot be read from a free one in words", async () => {
    const { screen } = await showBench({ view: sampleView("marks") });
    await screen.getByTestId("key-face").click();
    await screen.getByTestId("station-socket-2").click();
    await expect
      .element(screen.getByTestId("contact-socket-2.b.N"))
      .toHaveAccessibleName(/cannot read this contact/);
  });
});

describe("parts and sizes", () => {
  it("a new cable is asked for its size, the size it had before first", async () => {
    const { sent, screen } = await showBench({ view: sampleView("marks") });
    await expect.element(screen.getByTestId("say")).toHaveTextContent("What size is the new cable?");
    const keys = [...byId("ask-size").querySelectorAll("button")].map((key) => key.textContent?.trim());
    expect(keys).toEqual(["2.5", "1.5"]);
    await screen.getByTestId("key-size-2.5").click();
    expect(sent).toEqual([
      { name: "declare", command: { subject: "socket-1.c~socket-3.a", key: "csaMm2", value: 2.5 } },
    ]);
  });

  it("a fuse is chosen at its station", async () => {
    const { sent, screen } = await showBench({ view: sampleView("workshop"), width: 1280, height: 800 });
    await screen.getByTestId("station-fcu-1").click();
    await screen.getByTestId("station-fcu-1").click();
    await screen.getByTestId("key-change-fuseRatingA").click();
    await screen.getByTestId("key-set-fuseRatingA-3").click();
    expect(sent).toEqual([{ name: "declare", command: { subject: "fcu-1", key: "fuseRatingA", value: 3 } }]);
  });

  it("the board is cleared only after a yes, and undo takes one step back", async () => {
    const { sent, screen } = await showBench({ view: sampleView("ring") });
    await screen.getByTestId("key-undo").click();
    await screen.getByTestId("key-menu").click();
    await screen.getByTestId("key-clear").click();
    expect(sent).toEqual([{ name: "undo", command: {} }]);
    await screen.getByTestId("key-yes").click();
    expect(sent.at(-1)).toEqual({ name: "pull", command: { what: "all" } });
  });

  it("what was found there is ticked off as it comes in, and can be matched at one touch", async () => {
    const { sent, screen } = await showBench({ view: sampleView("marks") });
    await screen.getByTestId("key-menu").click();
    await screen.getByTestId("key-as-found").click();
    const rows = [...byId("dialog-as-found").querySelectorAll("li")].map((row) => row.textContent ?? "");
    expect(rows.map((row) => row.includes("not in yet"))).toEqual([false, false, true]);
    await screen.getByTestId("key-match").click();
    expect(sent).toEqual([{ name: "match-as-found", command: {} }]);
  });
});

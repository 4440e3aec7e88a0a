import axe from "axe-core";
import { describe, expect, inject, it, vi } from "vitest";
import { userEvent } from "vitest/browser";
import type { ContactId } from "../../shared/board/ids.ts";
import { byId, panels, showBench } from "./show-bench.ts";
import { partOf } from "../part-of.ts";
import { attempt, bench, sampleView, viewNames } from "./views.ts";

describe("when something around the work goes wrong", () => {
  it("a lost server is told in plain words, and what is on the screen can no longer be touched", async () => {
    const { screen, show } = await showBench({ view: sampleView("ring") });
    await show({ isLost: true });
    await expect.element(screen.getByTestId("link-lost")).toHaveTextContent("your work is kept");
    expect(byId("station-socket-1").closest("[inert]")).not.toBeNull();
    await show({ isLost: false });
    await expect.element(screen.getByTestId("station-socket-1")).toBeVisible();
    expect(byId("station-socket-1").closest("[inert]")).toBeNull();
  });

  it.each([
    { kind: "board-lost", says: /call the trainer/i },
    { kind: "disk-full", says: /call the technician/i },
    { kind: "clock-unset", says: /tell the trainer/i },
    { kind: "log-damaged", says: /call the technician/i },
    { kind: "changed-while-off", says: /clear it or match it/i },
  ] as const)("$kind says who should do what", async ({ kind, says }) => {
    const { screen } = await showBench({
      view: bench({ attempt: attempt(), banners: [{ kind, facts: {} }] }),
    });
    await expect.element(screen.getByTestId(`banner-${kind}`)).toHaveTextContent(says);
  });

  it("an unhealthy line is named by station and contact", async () => {
    const { screen } = await showBench({ view: sampleView("marks") });
    await expect.element(screen.getByTestId("banner-board-fault")).toHaveTextContent("Socket outlet 2 b N");
  });

  it("a probe that cannot be read is named, and both contacts that are tied together", async () => {
    const fault = (fault: "no-answer" | "outputs-tied", contacts: string[], facts = {}) =>
      bench({
        attempt: attempt(),
        banners: [{ kind: "board-fault", fault, contacts: contacts as ContactId[], facts }],
      });
    const { screen, show } = await showBench({ view: fault("no-answer", [], { probe: "red" }) });
    await expect.element(screen.getByTestId("banner-board-fault")).toHaveTextContent("at Red probe");
    await show({ view: fault("outputs-tied", ["socket-1.a.L", "socket-2.b.N"]) });
    await expect
      .element(screen.getByTestId("banner-board-fault"))
      .toHaveTextContent("Two contacts at Socket outlet 1 a L, Socket outlet 2 b N");
  });

  it.each([
    { language: "en", says: /technician: add the account .* gpio group/i, pin: "It is pin BCM 17." },
    { language: "pl", says: /technik: dodaj konto .* grupy gpio/i, pin: "To wyprowadzenie BCM 17." },
  ] as const)(
    "a missing board tells the technician what to do, in $language",
    async ({ language, says, pin }) => {
      const view = bench({
        state: "no-board",
        person: null,
        language,
        noBoard: { key: "no-board.no-rights", facts: { bcm: 17 } },
      });
      const { screen } = await showBench({ view });
      await expect.element(screen.getByTestId("no-board-remedy")).toHaveTextContent(says);
      await expect.element(screen.getByTestId("no-board-remedy")).toHaveTextContent(pin);
    },
  );

  it("being off the waiting list is said, with the key that puts one on it again", async () => {
    const view = bench({ attempt: attempt(), banners: [{ kind: "ready-lost", facts: {} }] });
    const { screen } = await showBench({ view });
    await expect.element(screen.getByTestId("banner-ready-lost")).toHaveTextContent(/off the waiting list/);
    await expect.element(screen.getByTestId("banner-ready-lost")).toHaveTextContent(/Ready for check/);
  });

  it("a missing board leaves a reason and a remedy on the screen", async () => {
    const { screen } = await showBench({ view: sampleView("no-board") });
    await expect
      .element(screen.getByTestId("screen-no-board"))
      .toHaveTextContent("not allowed to use the pins");
    await expect.element(screen.getByTestId("screen-no-board")).toHaveTextContent("Call the technician");
  });
});

describe("an idle bench", () => {
  it("in practice warns with 30 seconds and one large key, then locks; the key keeps it open", async () => {
    vi.useFakeTimers();
    try {
      const { sent } = await showBench({ view: sampleView("ring"), idleMs: 60_000 });
      await vi.advanceTimersByTimeAsync(60_100);
      expect(byId("dialog-idle").textContent).toContain("30 s");
      byId("key-stay").click();
      await vi.advanceTimersByTimeAsync(40_000);
      expect(sent).toEqual([]);
      await vi.advanceTimersByTimeAsync(60_100);
      expect(sent).toEqual([{ name: "sign-out", command: {} }]);
    } finally {
      vi.useRealTimers();
    }
  });

  it("does not lock while hands work on the board, nor on who waits for a check", async () => {
    vi.useFakeTimers();
    try {
      const { sent, show } = await showBench({ view: sampleView("wire"), idleMs: 60_000 });
      await vi.advanceTimersByTimeAsync(50_000);
      await show({ view: sampleView("ring") });
      await vi.advanceTimersByTimeAsync(50_000);
      expect(document.querySelector("[data-testid='dialog-idle']")).toBeNull();
      await vi.advanceTimersByTimeAsync(10_100);
      expect(byId("dialog-idle").textContent).toContain("30 s");
      await show({ view: sampleView("wire") });
      expect(document.querySelector("[data-testid='dialog-idle']")).toBeNull();
      await show({ view: bench({ attempt: attempt({ status: "ready" }) }) });
      await vi.advanceTimersByTimeAsync(600_000);
      expect(document.querySelector("[data-testid='dialog-idle']")).toBeNull();
      expect(sent).toEqual([]);
    } finally {
      vi.useRealTimers();
    }
  });

  it("in assessed work never ends by itself", async () => {
    vi.useFakeTimers();
    try {
      const { sent } = await showBench({ view: sampleView("assessed"), idleMs: 60_000 });
      await vi.advanceTimersByTimeAsync(600_000);
      expect(document.querySelector("[data-testid='dialog-idle']")).toBeNull();
      expect(sent).toEqual([]);
    } finally {
      vi.useRealTimers();
    }
  });

  it.each(partOf(inject("run"), viewNames, 3))(
    "asks for no animation frame and runs no animation on the screen %s",
    async (name) => {
      await showBench({ view: sampleView(name) });
      await new Promise((done) => setTimeout(done, 150));
      const frames = vi.spyOn(window, "requestAnimationFrame");
      await new Promise((done) => setTimeout(done, 250));
      expect(frames).not.toHaveBeenCalled();
      expect(document.getAnimations()).toEqual([]);
      frames.mockRestore();
    },
  );
});

describe("without a finger", () => {
  it("a cable is run with the keyboard alone, and the focus can be seen", async () => {
    const { sent } = await showBench({ view: sampleView("wire"), width: 1280, height: 800 });
    byId("station-socket-1").focus();
    await userEvent.keyboard("{Enter}");
    byId("station-socket-3").focus();
    await userEvent.keyboard("{Enter}");
    expect(sent.map(({ name }) => name)).toEqual(["plug-cable"]);
    byId("station-socket-1").focus();
    await userEvent.keyboard("{Tab}");
    const focused = document.activeElement;
    expect(focused?.matches(":focus-visible")).toBe(true);
    expect(focused && Number.parseFloat(getComputedStyle(focused).outlineWidth)).toBeGreaterThan(2);
  });

  it("Tab goes from the steps to the work to the floor, in the order things stand", async () => {
    await showBench({ view: sampleView("ring") });
    const order: string[] = [];
    byId("step-plan").focus();
    for (let turn = 0; turn < 40; turn += 1) {
      order.push(document.activeElement?.getAttribute("data-testid") ?? "");
      await userEvent.keyboard("{Tab}");
      if (document.activeElement === byId("key-check")) break;
    }
    order.push("key-check");
    const at = (id: string) => order.indexOf(id);
    expect(at("step-hand-in")).toBeLessThan(at("station-way-1"));
    expect(at("station-way-1")).toBeLessThan(at("cable-socket-1.a~way-1.a"));
    expect(at("cable-socket-1.a~way-1.a")).toBeLessThan(at("key-undo"));
    expect(at("key-undo")).toBeGreaterThan(0);
    expect(at("key-undo")).toBeLessThan(at("key-menu"));
    expect(at("key-menu")).toBeLessThan(at("key-notes"));
  });

  it.each(panels)("axe finds nothing to object to on any screen, on a $panel panel", async (panel) => {
    const { width, height } = panel;
    for (const name of partOf(inject("run"), viewNames, panels.length, panels.indexOf(panel))) {
      const { frame } = await showBench({ view: sampleView(name), width, height });
      const { violations } = await axe.run(frame);
      expect([name, violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)]).toEqual([name, []]);
    }
  });

  it.each([
    { open: ["key-menu"], view: "ring" },
    { open: ["key-badge"], view: "sign-in" },
    { open: ["key-hand-in"], view: "hand-in" },
    { open: ["key-notes", "finding-ring-open"], view: "ring-fault" },
    { open: ["key-face", "station-socket-1", "station-fcu-1"], view: "workshop" },
    { open: ["station-fcu-1", "station-fcu-1", "key-change-fuseRatingA"], view: "workshop" },
  ] as const)("axe finds nothing to object to with $open open", async ({ open, view }) => {
    const { frame, screen } = await showBench({ view: sampleView(view) });
    for (const id of open) await screen.getByTestId(id).click();
    const { violations } = await axe.run(frame);
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  });
});

describe("language and letters", () => {
  it("can be changed at any time", async () => {
    const { sent, screen, show } = await showBench({ view: sampleView("ring") });
    await screen.getByTestId("key-menu").click();
    await screen.getByTestId("key-language-pl").click();
    expect(sent).toEqual([{ name: "set-language", command: { language: "pl" } }]);
    await show({ view: sampleView("ring", { language: "pl" }) });
    await expect.element(screen.getByTestId("step-hand-in")).toHaveTextContent("Oddaj");
    expect(document.documentElement.lang).toBe("pl");
    await expect.element(screen.getByTestId("key-tray")).toHaveTextContent("1,5 mm²");
  });

  it("large letters are one tap away in the menu", async () => {
    const { sent, screen } = await showBench({ view: sampleView("ring") });
    await screen.getByTestId("key-menu").click();
    await screen.getByTestId("key-large").click();
    expect(sent).toEqual([{ name: "set-large", command: { isLarge: true } }]);
  });
});

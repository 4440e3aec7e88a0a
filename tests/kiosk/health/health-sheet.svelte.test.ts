import { describe, expect, it } from "vitest";
import { userEvent } from "vitest/browser";
import type { BoardFault } from "../../../shared/board/sensed-state.schema.ts";
import type { StaffRole } from "../../../shared/protocol/author.ts";
import { byId, sheetStands, showBench } from "../show-bench.ts";
import { bench } from "../views.ts";

const contacts = (...ids: string[]) => ids as BoardFault["contacts"];

/** The screen "Board health", opened from the menu. */
async function health(options: {
  faults?: BoardFault[];
  role?: StaffRole;
  answer?: Parameters<typeof showBench>[0]["answer"];
}) {
  const { faults = [], role, answer } = options;
  const plain = bench({});
  const me = role === undefined ? null : { name: "Ida Nowak", role };
  const view = bench({ boardHealth: { faults }, staff: { ...plain.staff, me } });
  const shown = await showBench({ view, ...(answer ? { answer } : {}) });
  await userEvent.click(byId("key-menu"));
  await userEvent.click(byId("key-board-health"));
  await sheetStands();
  return shown;
}

describe("the screen for the health of the board", () => {
  it("names the other end of a lead whose output does not pull: the fault may be there", async () => {
    const { screen } = await health({
      faults: [
        {
          kind: "dead-output",
          contacts: contacts("socket-1.a.L"),
          facts: { otherEnds: "way-1.a.L" },
        },
      ],
    });
    const fault = screen.getByTestId("board-fault-dead-output");
    await expect.element(fault).toHaveTextContent("Socket outlet 1 a L");
    await expect
      .element(fault)
      .toHaveTextContent(/the diode at the other end of the lead is bridged: Way 1 a L/);
  });

  it.each(["technician", "trainer"] as const)(
    "offers a %s to say that all leads are out where the check was refused",
    async (role) => {
      const { screen, sent } = await health({
        role,
        answer: { ok: false, code: "board-not-empty", facts: {} },
      });
      await userEvent.click(byId("key-start-self-check"));
      await userEvent.click(screen.getByTestId("key-leads-are-out"));
      expect(sent.map(({ name }) => name)).toEqual(["self-check", "self-check-cleared"]);
    },
  );

  it("does not offer it to a learner, and says who may", async () => {
    const { screen } = await health({ answer: { ok: false, code: "board-not-empty", facts: {} } });
    await userEvent.click(byId("key-start-self-check"));
    await expect.element(screen.getByText(/Trainer or technician: unlock/)).toBeVisible();
    expect(document.querySelector("[data-testid=key-leads-are-out]")).toBeNull();
  });
});

import type { Send } from "../link/send.ts";

/** What the plan asks for while a cable is laid on it, asked for as a visitor. Nothing else is for them. */
export const showSend =
  (send: Send): Send =>
  async (name, command) => {
    if (name !== "plug-cable") return { ok: false, code: "not-for-you", facts: {} };
    const { entryA, entryB } = command as Parameters<typeof send<"plug-cable">>[1];
    return send("show-act", { what: "plug-cable", entryA, entryB });
  };

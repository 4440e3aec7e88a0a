// A scanner child that does what it is told to: how a child can fail, without a board.
const say = (message) => process.send(message);
let revision = 0;
let groups = [];
const sense = () =>
  say({
    type: "sensed",
    state: {
      boardId: "test-small",
      revision: (revision += 1),
      monotonicMs: 0,
      groups,
      codes: [],
      unknown: [],
      probes: { red: null, black: null },
      faults: [],
      isSettled: true,
    },
  });

process.on("message", (message) => {
  switch (message.type) {
    case "open":
      if (message.lines === "gpio")
        return say({ type: "open-failed", code: "no-rights", facts: { path: "/sys" } });
      groups = message.groups ?? [];
      say({ type: "opened", lines: message.lines, lineCount: 24, hasCodes: false, hasProbes: false });
      return sense();
    case "plug":
      if (message.contactA === "way-1.a.E") return process.exit(7);
      if (message.contactA === "way-1.a.N") return undefined;
      if (message.contactA === "way-9.a.L")
        return say({
          type: "refused",
          request: message.request,
          code: "no-such-contact",
          facts: { contact: message.contactA },
        });
      groups = [...groups, [message.contactA, message.contactB]];
      sense();
      return say({ type: "done", request: message.request });
    case "walk-test":
      say({ type: "walk-test-touch", contact: "way-1.a.L", firstTime: true, leftCount: 23 });
      return say({ type: "done", request: message.request });
    case "test-lead":
      return say({
        type: "lead-result",
        request: message.request,
        joined: [["way-1.a.L", "socket-1.a.L"]],
        open: ["way-1.a.N", "way-1.a.E", "socket-1.a.N", "socket-1.a.E"],
        codes: [],
      });
    case "close":
      return process.disconnect();
  }
});

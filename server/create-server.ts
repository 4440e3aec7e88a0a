import { createServer as createHttpServer } from "node:http";
import type { AddressInfo } from "node:net";
import type { ScenarioCard } from "../shared/protocol/bench-view.ts";
import type { Health } from "../shared/protocol/socket-events.ts";
import { Bench } from "./bench/bench.ts";
import type { BenchParts } from "./bench/bench-core.ts";
import { ownRun } from "./bench/own-run.ts";
import { boardFace } from "./view/board-face.ts";
import { benchToShow } from "./view/bench-to-show.ts";
import { scenarioCards } from "./view/scenario-cards.ts";
import { viewFor } from "./view/view-for.ts";
import { attachSockets } from "./web/attach-sockets.ts";
import { createApp } from "./web/create-app.ts";

/** All a server works with. */
export interface ServerParts {
  bench: BenchParts;
  kioskFolder: string;
  isLoopbackOnly: boolean;
  lines: Health["lines"];
  hasGpioLibrary: boolean;
  /** What is known of the log's soundness. */
  logState: () => Health["log"];
}

/** A server that has been put together and not yet started. */
export interface SpurwiseServer {
  bench: Bench;
  health: () => Health;
  /** Starts the bench and listens; gives the port, which the system chooses where 0 is asked for. */
  listen: (port: number, host: string) => Promise<number>;
  /** Stops taking requests, then puts everything on the disk. What the parts opened is left to who opened it. */
  close: () => Promise<void>;
}

/** Puts a server together from its parts. It opens nothing before `listen`. */
export function createServer(parts: ServerParts): SpurwiseServer {
  const bench = new Bench(parts.bench);
  const { core } = bench;
  const { board, scenarios, clock, isSimulated } = parts.bench;
  const face = boardFace(board, isSimulated);
  let cards: ScenarioCard[] = [];
  const offered = (): ScenarioCard[] => {
    if (cards.length === 0 && scenarios.isRead) cards = scenarioCards(scenarios.kits, board);
    return cards;
  };

  const health = (): Health => {
    const { status, sensed } = core.board;
    const state = status.state === "ready" && !sensed ? "starting" : status.state;
    return {
      isReady: state === "ready" && scenarios.isRead,
      lines: parts.lines,
      hasGpioLibrary: parts.hasGpioLibrary,
      board: {
        id: board.id,
        state,
        ...(status.state === "no-board" ? { problem: status.code } : {}),
      },
      log: parts.logState(),
      clock: clock.state(),
      softwareVersion: parts.bench.softwareVersion,
      rulePackVersion: parts.bench.rulePackVersion,
    };
  };

  const app = createApp({
    kioskFolder: parts.kioskFolder,
    isLoopbackOnly: parts.isLoopbackOnly,
    health,
    wiring: () => {
      const run = ownRun(core, core.session.actor);
      return run && run.state.mode !== "assessed" ? run.judged().wiring : undefined;
    },
    note: parts.bench.note,
  });
  const http = createHttpServer(app);
  const io = attachSockets({
    http,
    isLoopbackOnly: parts.isLoopbackOnly,
    clock,
    sessions: { bench: core.session },
    view: (audience) => viewFor(audience, benchToShow(core, face, offered())),
    onPublish: (listener) => core.onPublish(listener),
    handle: (name, message, session) => bench.handle(name, message, session),
  });

  return {
    bench,
    health,
    listen: (port, host) =>
      new Promise((resolve, reject) => {
        http.once("error", reject);
        http.listen(port, host, () => {
          http.off("error", reject);
          bench.start();
          resolve((http.address() as AddressInfo).port);
        });
      }),
    close: async () => {
      await io.close();
      http.closeAllConnections();
      await bench.stop();
    },
  };
}

import {
  createServer as createHttpServer,
  type IncomingMessage,
  type RequestListener,
  type Server as HttpServer,
} from "node:http";
import type { AddressInfo } from "node:net";
import type { Author } from "../shared/protocol/author.ts";
import type { ScenarioCard } from "../shared/protocol/bench-view.ts";
import { showNamespace } from "../shared/protocol/show-view.ts";
import { benchNamespace, type Health } from "../shared/protocol/socket-events.ts";
import { type Actor, authorOf } from "./acts/actor.ts";
import { Bench } from "./bench/bench.ts";
import { isBenchFree } from "./bench/is-bench-free.ts";
import type { BenchParts } from "./bench/bench-core.ts";
import { ownRun } from "./bench/own-run.ts";
import { boardFace } from "./view/board-face.ts";
import { benchToShow } from "./view/bench-to-show.ts";
import { scenarioCards } from "./view/scenario-cards.ts";
import { filterOf } from "./desk/attempt-query.ts";
import { tieToLead } from "./lead/lead-end.ts";
import type { Staff } from "./people/person.ts";
import { evidenceSource } from "./evidence/evidence-source.ts";
import { DeskTasks, type KeepingParts } from "./keeping/desk-tasks.ts";
import type { Due } from "./keeping/due.ts";
import type { MachineParts } from "./keep/machine-view.ts";
import { storyView } from "./show/story-view.ts";
import { showViewFor } from "./view/show-view.ts";
import { viewFor } from "./view/view-for.ts";
import { attachSockets, type LinkSession, type ScreenSession } from "./web/attach-sockets.ts";
import { createApp } from "./web/create-app.ts";
import { type Door, ownDoor, RemoteSession, staffAt } from "./web/door.ts";
import { isOwnOrigin, networkHosts } from "./web/origin.ts";
import { idOfCookie } from "./web/session-cookie.ts";
import { noteSignIn } from "./bench/note-sign-in.ts";

/** All a server works with. */
export interface ServerParts {
  bench: BenchParts;
  kioskFolder: string;
  /** The door on the network; undefined where nobody has let the network in. */
  network: NetworkDoor | undefined;
  lines: Health["lines"];
  hasGpioLibrary: boolean;
  /** How many years a centre keeps a learner who no longer comes. */
  keepYears: number;
  machine: MachineParts;
  keeping: KeepingParts;
  /** Whose time to be kept is over. */
  due: () => Due[];
  /** What is known of the log's soundness. */
  logState: () => Health["log"];
  /** What became of the last nightly back-up. */
  backUpState?: () => Health["backUp"];
  /** How far the log is at the centre. */
  outboxState?: () => Health["centre"];
}

/** Where the bench listens to the network, and by which names it is known there beside its own. */
export interface NetworkDoor {
  host: string;
  port: number;
  names: readonly string[];
  /** Undefined where there is no certificate: then the link is not encrypted. */
  tls: { cert: Buffer; key: Buffer } | undefined;
}

/** A server that has been put together and not yet started. */
export interface SpurwiseServer {
  bench: Bench;
  health: () => Health;
  /**
   * Starts the bench and listens on loopback, and on the network where it was let in; gives the ports, which the system
   * chooses where 0 is asked for.
   */
  listen: (port: number) => Promise<{ ownPort: number; networkPort?: number }>;
  /** Stops taking requests, then puts everything on the disk. What the parts opened is left to who opened it. */
  close: () => Promise<void>;
}

/** Puts a server together from its parts. It opens nothing before `listen`. */
export function createServer(parts: ServerParts): SpurwiseServer {
  const bench = new Bench(parts.bench);
  const { core } = bench;
  const { board, scenarios, clock, isSimulated } = parts.bench;
  const face = boardFace(board, isSimulated);
  let made: { of: typeof scenarios.kits; cards: ScenarioCard[] } | undefined;
  const offered = (): ScenarioCard[] => {
    if (!scenarios.isRead) return [];
    const { kits } = scenarios;
    if (made?.of !== kits) made = { of: kits, cards: scenarioCards(kits, board) };
    return made.cards;
  };

  const health = (): Health => {
    const { status, state } = core.board;
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
      backUp: parts.backUpState?.(),
      centre: parts.outboxState?.(),
      clock: clock.state(),
      softwareVersion: parts.bench.softwareVersion,
      rulePackVersion: parts.bench.rulePackVersion,
    };
  };

  const isFree = (): boolean => isBenchFree(core);
  const tasks = new DeskTasks({
    ...parts.keeping,
    softwareVersion: parts.bench.softwareVersion,
    clock,
    isFree,
    isBoardReady: () => core.board.isReady,
  });
  const sessions = parts.bench.webSessions;
  const openDoor = (door: Door, makeHttp: (app: RequestListener) => HttpServer): OpenDoor => {
    const staffOf = ({ headers }: IncomingMessage): Staff | undefined =>
      door.kind === "own-screen" ? (core.session.staff ?? undefined) : staffAt(door, headers);
    const actorOf = ({ headers }: IncomingMessage): Actor =>
      door.kind === "own-screen"
        ? core.session.actor
        : new RemoteSession(sessions, idOfCookie(headers.cookie, door.names.scheme) ?? "").actor;
    const author = (request: IncomingMessage): Author => authorOf(actorOf(request));
    const app = createApp({
      kioskFolder: parts.kioskFolder,
      door,
      signIn: {
        people: parts.bench.people,
        language: () => core.session.memory.language,
        signedIn: (staff, { logId }, by) => noteSignIn(core, staff, logId, by, "network"),
      },
      health,
      publicText: { facts: { keepYears: parts.keepYears }, language: () => core.session.memory.language },
      story: (language) => storyView(language, parts.bench.judge),
      anchor: () => parts.bench.records?.log.anchor,
      wiring: () => {
        const run = ownRun(core, core.session.actor);
        return run && run.state.mode !== "assessed" ? run.judged().wiring : undefined;
      },
      evidence: {
        staffOf,
        source: () => evidenceSource(core),
        filterOf: (query) => filterOf(query, parts.bench.people),
        shown: bench.core.shown,
        authorOf: author,
        wallMs: () => parts.bench.clock.wallMs(),
      },
      lead: { core, staffOf },
      desk: { core, staffOf, authorOf: author, isAtBench: door.kind === "own-screen" },
      keep: {
        core,
        health,
        machine: parts.machine,
        keeping: {
          tasks,
          passphrase: parts.keeping.passphrase,
          canUpdate: parts.keeping.update !== undefined,
          isFree,
        },
        keepYears: parts.keepYears,
        due: parts.due,
        staffOf,
        actorOf,
        isAtBench: door.kind === "own-screen",
      },
      note: parts.bench.note,
    });
    const sessionOf = ({ headers }: IncomingMessage): ScreenSession | undefined => {
      if (door.kind === "own-screen") return core.session;
      const id = idOfCookie(headers.cookie, door.names.scheme);
      return id !== undefined && sessions.staffOf(id) ? new RemoteSession(sessions, id) : undefined;
    };
    const onShow = showSession(door.kind === "network");
    const http = limited(makeHttp(app));
    const sockets = attachSockets({
      http,
      clock,
      // Whoever may not see the bench may see the show: who stands behind a link is asked for each kind of screen.
      mayEnter: ({ headers }) => isOwnOrigin(headers, door.names),
      screens: [
        {
          namespace: benchNamespace,
          open: (request) => {
            const session = sessionOf(request);
            if (!session) return undefined;
            const view = () => viewFor(session.audience, benchToShow(core, face, offered(), session.staff));
            return { session, view };
          },
        },
        {
          namespace: showNamespace,
          open: () => ({
            session: onShow,
            view: () => showViewFor(core, face),
            closed: core.show.watch(),
          }),
          takes: ["show-act"],
        },
      ],
      onPublish: (listener) => core.onPublish(listener),
      handle: (name, message, session) => bench.handle(name, message, session),
      note: parts.bench.note,
    });
    return { http, sockets };
  };
  let untie: () => void = () => undefined;
  const own = openDoor(ownDoor, createHttpServer);
  const open = [own];

  return {
    bench,
    health,
    listen: async (port) => {
      const ownPort = await listenAt(own.http, port, loopback);
      bench.start();
      const { lead } = parts.bench;
      if (lead) {
        untie = tieToLead(
          { core, handle: (name, message, session) => bench.handle(name, message, session) },
          face,
          lead.link,
          lead.packs,
        );
        await lead.workshop.start();
      }
      const { network } = parts;
      if (!network) return { ownPort };
      const { tls, names } = network;
      const door: Door = {
        kind: "network",
        names: { scheme: tls ? "https" : "http", hosts: () => networkHosts(names) },
        sessions,
      };
      // Loaded where there is a certificate: a bench without one is spared the memory.
      const https = tls && (await import("node:https"));
      const made = openDoor(door, (app) =>
        https && tls ? https.createServer(tls, app) : createHttpServer(app),
      );
      open.push(made);
      try {
        return { ownPort, networkPort: await listenAt(made.http, network.port, network.host) };
      } catch (error) {
        // Whoever stands at the bench can work without the network.
        parts.bench.note(
          `the network is not let in: ${error instanceof Error ? error.message : String(error)}`,
        );
        return { ownPort };
      }
    },
    close: async () => {
      untie();
      parts.bench.lead?.link.stop();
      parts.bench.lead?.workshop.stop();
      await parts.bench.lead?.names?.close();
      for (const { http, sockets } of open) {
        const closed = sockets.close();
        http.closeAllConnections();
        await closed;
      }
      await bench.stop();
    },
  };
}

const loopback = "127.0.0.1";

/** More connections than all browsers of a workshop make; one on which nothing happens ends. */
const mostConnections = 200;
const idleConnectionMs = 60_000;

function limited(http: HttpServer): HttpServer {
  http.maxConnections = mostConnections;
  return http.setTimeout(idleConnectionMs);
}

/** Whoever stands before the show is nobody; on the network they only look. */
const showSession = (isRemote: boolean): LinkSession => ({
  actor: { kind: "nobody", learner: null, session: null, ...(isRemote ? { isRemote: true as const } : {}) },
});

interface OpenDoor {
  http: HttpServer;
  sockets: ReturnType<typeof attachSockets>;
}

/** Listens; gives the port, which the system chooses where 0 is asked for. */
const listenAt = (http: HttpServer, port: number, host: string): Promise<number> =>
  new Promise((resolve, reject) => {
    http.once("error", reject);
    http.listen(port, host, () => {
      http.off("error", reject);
      resolve((http.address() as AddressInfo).port);
    });
  });

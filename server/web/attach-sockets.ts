import type { IncomingMessage, Server as HttpServer } from "node:http";
import { Server, type Socket } from "socket.io";
import type { ActName } from "../../shared/protocol/acts.ts";
import { changeOf, type ViewChange } from "../../shared/protocol/view-change.ts";
import type { ActorSession } from "../acts/actor.ts";
import { acts } from "../acts/acts.ts";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { fieldName } from "../../shared/reading/problem.ts";
import type { FromBench, ToBench } from "../../shared/protocol/socket-events.ts";
import type { Staff } from "../people/person.ts";
import type { Clock } from "../clock/clock.ts";
import { refuse } from "../refusal.ts";
import type { Audience } from "../view/view-for.ts";
import { LinkGuard, type RawLink } from "./link-guard.ts";
import { RateBucket } from "./rate-bucket.ts";
import { RateByAddress } from "./rate-by-address.ts";
import type { Reply } from "../../shared/protocol/reply.ts";

export interface SocketParts {
  http: HttpServer;
  clock: Clock;
  /** True where a request may open a link. */
  mayEnter: (request: IncomingMessage) => boolean;
  screens: readonly Screens[];
  /** Calls back whenever there is something new to show. Gives what ends it. */
  onPublish: (listener: () => void) => () => void;
  /** Does an act whose form has been checked. */
  handle: (name: ActName, message: never, session: ActorSession) => Promise<Reply>;
  note: (sentence: string) => void;
}

/** Whoever stands behind a socket. */
export interface LinkSession extends ActorSession {
  /** False once it has ended. */
  readonly isLive?: boolean;
}

/** Whoever stands behind the socket of a bench screen, and what they may see. */
export interface ScreenSession extends LinkSession {
  readonly audience: Audience;
  /** Who of the staff it is; null where it is none of them. */
  readonly staff: Staff | null;
}

/** One kind of screen: where it is found, who stands behind it, what they may see and ask for. */
export interface Screens {
  namespace: string;
  /** Who stands behind a link, with what they may see now; undefined where nobody does any more. */
  open: (request: IncomingMessage) => Opened | undefined;
  /** The acts it may send; all of them where left out. */
  takes?: readonly ActName[];
}

interface Opened {
  session: LinkSession;
  view: () => object;
  /** Called when the screen is gone. */
  closed?: () => void;
}

type BenchSocket = Socket<FromBench, ToScreen>;

/** What any screen is sent: a whole view on connect, and after that what changes in it. */
interface ToScreen {
  view: (view: object) => void;
  change: ToBench["change"];
}

const largestBytes = 64 * 1024;
const burst = 60;
const perSecond = 30;
/** Of all the links of one address together. */
const addressBurst = 120;
const addressPerSecond = 60;
/** A dead link is noticed within a few seconds, on both ends. */
const pingIntervalMs = 2000;
const pingTimeoutMs = 3000;
/** Whoever opens a link and asks for no view is not kept. */
const connectTimeoutMs = 5000;
/** Of links that were dropped so many are noted at once, and then so many a second. */
const noted = { burst: 10, perSecond: 1 / 60 } as const;

const isAct = (name: unknown): name is ActName => typeof name === "string" && Object.hasOwn(acts, name);

/** An answer is not as long as what was asked. */
const longestText = 200;
const cut = (text: string): string => (text.length > longestText ? `${text.slice(0, longestText)}…` : text);

/**
 * The live link to the screens. Each socket has a session of its audience; it gets the whole view at once, and
 * after that what changed in it. Each act is checked by its schema, done and answered. What has not the form of an
 * act is answered with what is wrong and where, and changes nothing.
 */
export function attachSockets(parts: SocketParts): { close: () => Promise<void> } {
  const nowMs = (): number => parts.clock.monotonicMs();
  const notes = new RateBucket(noted.burst, noted.perSecond, nowMs);
  const guard = new LinkGuard(parts.clock, (fault, address) => {
    const why = fault === "backlog" ? "it does not read what it is sent" : "it sends without end";
    if (notes.take()) parts.note(`a link from ${address} was dropped: ${why}`);
  });
  const ofAddress = new RateByAddress(addressBurst, addressPerSecond, nowMs);
  const io = new Server<FromBench, ToScreen>(parts.http, {
    serveClient: false,
    // What waits for whoever asks again and again cannot be seen and dropped.
    transports: ["websocket"],
    connectTimeout: connectTimeoutMs,
    maxHttpBufferSize: largestBytes,
    pingInterval: pingIntervalMs,
    pingTimeout: pingTimeoutMs,
    allowRequest: (request, decide) => decide(null, parts.mayEnter(request) && guard.admits(request)),
  });
  io.engine.on("connection", (link: RawLink) => guard.watch(link));
  const screens = new Set<Screen>();
  const joined = new WeakSet<object>();
  for (const { namespace, open, takes } of parts.screens)
    io.of(namespace).on("connection", (socket: BenchSocket) => {
      // A whole view is worked out for each that joins: a link joins once.
      if (joined.has(socket.conn)) return void socket.disconnect(true);
      joined.add(socket.conn);
      const opened = open(socket.request);
      if (!opened) return void socket.disconnect(true);
      const screen = new Screen(socket, opened);
      const address = socket.request.socket.remoteAddress ?? "";
      serve(screen, parts, takes, () => ofAddress.take(address));
      screens.add(screen);
      socket.on("disconnect", () => {
        screens.delete(screen);
        opened.closed?.();
      });
      screen.show(opened.view());
    });
  // What changes in one turn of the program is one view, sent after the answers to the acts of that turn.
  let isDue = false;
  parts.onPublish(() => {
    if (isDue) return;
    isDue = true;
    setImmediate(() => {
      isDue = false;
      const views = new Map<LinkSession, object>();
      for (const { opened, socket, show } of screens) {
        const { session } = opened;
        if (session.isLive === false) {
          socket.disconnect(true);
          continue;
        }
        const view = views.get(session) ?? opened.view();
        views.set(session, view);
        show(view);
      }
    });
  });
  return {
    close: async () => {
      const closed = io.close();
      guard.endAll();
      await closed;
    },
  };
}

/** True where nothing is shown otherwise: only the count of what was published has gone on. */
const isOnlyCounted = (change: ViewChange): boolean =>
  "of" in change && !change.gone && Object.keys(change.of).every((key) => key === "revision");

/** One screen at the far end of a socket, and what it was last sent. */
class Screen {
  readonly socket: BenchSocket;
  readonly opened: Opened;
  #sent: object | undefined;

  constructor(socket: BenchSocket, opened: Opened) {
    this.socket = socket;
    this.opened = opened;
  }

  readonly show = (view: object): void => {
    const before = this.#sent;
    const change = before && changeOf(before, view);
    if (before && (!change || isOnlyCounted(change))) return;
    this.#sent = view;
    if (change) this.socket.emit("change", change);
    else this.socket.emit("view", view);
  };
}

function serve(
  { socket, opened: { session } }: Screen,
  parts: SocketParts,
  takes: Screens["takes"],
  mayAddress: () => boolean,
): void {
  const bucket = new RateBucket(burst, perSecond, () => parts.clock.monotonicMs());
  socket.onAny((name: unknown, ...rest: unknown[]) => {
    const reply = rest.at(-1);
    const answer = (given: Reply): void => {
      if (typeof reply === "function") (reply as (given: Reply) => void)(given);
    };
    if (!bucket.take() || !mayAddress()) return answer(refuse("too-fast"));
    if (session.isLive === false) {
      answer(refuse("not-signed-in"));
      return void socket.disconnect(true);
    }
    if (!isAct(name) || takes?.includes(name) === false)
      return answer(refuse("bad-message", { where: cut(String(name)), what: "no such act" }));
    const parsed = parseSafely<object>(acts[name].schema, rest[0]);
    if (!parsed.success) {
      const [issue] = parsed.issues;
      const where = `${name}: ${fieldName(issue?.path ?? [])}`;
      return answer(refuse("bad-message", { where: cut(where), what: cut(issue?.message ?? "") }));
    }
    void parts.handle(name, parsed.data as never, session).then(answer, () => answer(refuse("server-error")));
  });
}

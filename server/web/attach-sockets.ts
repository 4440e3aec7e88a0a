import type { Server as HttpServer } from "node:http";
import { Server, type Socket } from "socket.io";
import type { BenchView } from "../../shared/protocol/bench-view.ts";
import type { ActName } from "../../shared/protocol/acts.ts";
import { acts } from "../acts/acts.ts";
import { fieldName } from "../../shared/reading/problem.ts";
import type { Answer, FromBench, ToBench } from "../../shared/protocol/socket-events.ts";
import type { Clock } from "../clock/clock.ts";
import { refuse } from "../refusal.ts";
import { isOwnOrigin } from "./origin.ts";
import { RateBucket } from "./rate-bucket.ts";

export interface SocketParts {
  http: HttpServer;
  isLoopbackOnly: boolean;
  clock: Clock;
  /** What a bench screen may see now. */
  view: () => BenchView;
  /** Calls back whenever there is something new to show. */
  onPublish: (listener: () => void) => void;
  /** Does an act whose form has been checked. */
  handle: (name: ActName, message: never) => Promise<Answer>;
}

type BenchSocket = Socket<FromBench, ToBench>;

const largestBytes = 64 * 1024;
const burst = 60;
const perSecond = 30;
/** A dead link is noticed within a few seconds, on both ends. */
const pingIntervalMs = 2000;
const pingTimeoutMs = 3000;

const isAct = (name: unknown): name is ActName => typeof name === "string" && Object.hasOwn(acts, name);

/**
 * The live link to the screens: each gets the whole view at once and after every change; each act is
 * checked by its schema, done and answered. What has not the form of an act is answered with what is
 * wrong and where, and changes nothing.
 */
export function attachSockets(parts: SocketParts): Server<FromBench, ToBench> {
  const io = new Server<FromBench, ToBench>(parts.http, {
    serveClient: false,
    maxHttpBufferSize: largestBytes,
    pingInterval: pingIntervalMs,
    pingTimeout: pingTimeoutMs,
    allowRequest: (request, decide) => decide(null, isOwnOrigin(request.headers, parts.isLoopbackOnly)),
  });
  io.on("connection", (socket) => serve(socket, parts));
  // What changes in one turn of the program is one view, sent after the answers to the commands of that turn.
  let isDue = false;
  parts.onPublish(() => {
    if (isDue) return;
    isDue = true;
    setImmediate(() => {
      isDue = false;
      if (io.sockets.sockets.size > 0) io.emit("view", parts.view());
    });
  });
  return io;
}

function serve(socket: BenchSocket, parts: SocketParts): void {
  const bucket = new RateBucket(burst, perSecond, () => parts.clock.monotonicMs());
  socket.onAny((name: unknown, ...rest: unknown[]) => {
    const reply = rest.at(-1);
    const answer = (given: Answer): void => {
      if (typeof reply === "function") (reply as (given: Answer) => void)(given);
    };
    if (!bucket.take()) return answer(refuse("too-fast"));
    if (!isAct(name)) return answer(refuse("bad-message", { where: String(name), what: "no such act" }));
    const parsed = acts[name].schema.safeParse(rest[0]);
    if (!parsed.success) {
      const [issue] = parsed.error.issues;
      const where = `${name}: ${fieldName(issue?.path ?? [])}`;
      return answer(refuse("bad-message", { where, what: issue?.message ?? "" }));
    }
    void parts.handle(name, parsed.data as never).then(answer);
  });
  socket.emit("view", parts.view());
}

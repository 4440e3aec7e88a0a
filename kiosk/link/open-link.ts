import { io, type Socket } from "socket.io-client";
import type { BenchView } from "../../shared/protocol/bench-view.ts";
import { benchNamespace } from "../../shared/protocol/socket-events.ts";
import { followView } from "./follow-view.ts";
import type { NoReply, Send } from "./send.ts";
import type { Reply } from "../../shared/protocol/reply.ts";

const replyWithinMs = 5_000;
const noReply: NoReply = { ok: false, code: "link", facts: {} };

interface Ears<View> {
  onView: (view: View) => void;
  onLost: () => void;
}

/**
 * Opens the link to the server it was loaded from. A whole view comes with every connection, so nothing is kept
 * for later: a command given while the link is down is refused at once and not sent when it comes back.
 */
export const openLink = <View = BenchView>(
  { onView, onLost }: Ears<View>,
  namespace = benchNamespace,
): { send: Send; close: () => void } => {
  const socket: Socket = io(namespace, { transports: ["websocket"] });
  followView(socket, onView);
  socket.on("disconnect", onLost);
  socket.on("connect_error", onLost);
  const send: Send = async (name, command) => {
    if (!socket.connected) return noReply;
    try {
      // The map of events is generic over the name; the library's types cannot follow it.
      const emit = socket.timeout(replyWithinMs) as unknown as {
        emitWithAck: (event: string, body: unknown) => Promise<Reply>;
      };
      return await emit.emitWithAck(name, command);
    } catch {
      return noReply;
    }
  };
  return { send, close: () => socket.close() };
};

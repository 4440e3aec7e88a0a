import type { ActMessage, ActName } from "../../shared/protocol/acts.ts";
import type { Reply } from "../../shared/protocol/reply.ts";

/** No reply came: the link to the server is lost. */
export interface NoReply {
  ok: false;
  code: "link";
  facts: Record<string, never>;
}

/** Sends a command to the server and gives its reply. Never throws: a lost link is told as well. */
export type Send = <Name extends ActName>(name: Name, command: ActMessage<Name>) => Promise<Reply | NoReply>;

import type { ActMessage, ActName } from "../../shared/protocol/acts.ts";
import type { Answer } from "../../shared/protocol/socket-events.ts";

/** Sends a command to the server and gives its answer. Never throws: a lost link is an answer too. */
export type Send = <Name extends ActName>(name: Name, command: ActMessage<Name>) => Promise<Answer>;

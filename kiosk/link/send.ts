import type { BenchCommand, BenchCommandName } from "../../shared/protocol/commands.schema.ts";
import type { Answer } from "../../shared/protocol/socket-events.ts";

/** Sends a command to the server and gives its answer. Never throws: a lost link is an answer too. */
export type Send = <Name extends BenchCommandName>(
  name: Name,
  command: BenchCommand<Name>,
) => Promise<Answer>;

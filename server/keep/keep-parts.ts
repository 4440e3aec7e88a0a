import type { NextFunction, Request, Response } from "express";
import type { StaffRole } from "../../shared/protocol/author.ts";
import type { Health } from "../../shared/protocol/socket-events.ts";
import type { Actor } from "../acts/actor.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import type { DeskTasks } from "../keeping/desk-tasks.ts";
import type { Due } from "../keeping/due.ts";
import type { Staff } from "../people/person.ts";
import type { MachineParts } from "./machine-view.ts";

export interface KeepParts {
  core: BenchCore;
  health: () => Health;
  machine: MachineParts;
  keeping: {
    tasks: DeskTasks;
    /** What back-ups are sealed with where nothing else is typed. */
    passphrase: string | undefined;
    /** A key of who publishes updates is set. */
    canUpdate: boolean;
    /** Nobody's work would be lost by a start now. */
    isFree: () => boolean;
  };
  /** How many years a centre keeps a learner who no longer comes. */
  keepYears: number;
  /** Whose time to be kept is over. */
  due: () => Due[];
  /** Who of the staff asks; undefined where nobody of them does. */
  staffOf: (request: Request) => Staff | undefined;
  actorOf: (request: Request) => Actor;
  /** The door is that of the bench's own screen. */
  isAtBench: boolean;
}

/** Lets those of the staff pass who have one of these roles. */
export type OnlyFor = (
  ...roles: readonly StaffRole[]
) => (request: Request, response: Response, next: NextFunction) => void;

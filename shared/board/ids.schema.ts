import { z } from "zod";
import {
  type CableId,
  type ContactId,
  contactIdPattern,
  endsOfCable,
  type EntryId,
  entryIdPattern,
  roles,
  type StationId,
  stationIdPattern,
} from "./ids.ts";

export const stationIdSchema = z
  .string()
  .regex(stationIdPattern, "a station id is lower-case words joined by dashes, such as socket-3")
  .transform((text) => text as StationId);

export const entryIdSchema = z
  .string()
  .regex(entryIdPattern, "an entry id is a station and a letter, such as socket-3.b")
  .transform((text) => text as EntryId);

export const contactIdSchema = z
  .string()
  .regex(contactIdPattern, "a contact id is an entry and a conductor position, such as socket-3.b.L")
  .transform((text) => text as ContactId);

export const cableIdSchema = z
  .string()
  .refine(
    (text) => {
      const [a, b, ...rest] = endsOfCable(text as CableId);
      return (
        rest.length === 0 && entryIdPattern.test(a) && b !== undefined && entryIdPattern.test(b) && a <= b
      );
    },
    { message: "a cable id is its two entries in order, such as socket-1.a~socket-3.b" },
  )
  .transform((text) => text as CableId);

export const roleSchema = z.enum(roles);

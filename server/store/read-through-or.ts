import { StoreError } from "./store-error.ts";

/** What is read of the records; something else where they are damaged. */
export function readThroughOr<Of, Else>(otherwise: Else, read: () => Of): Of | Else {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    return otherwise;
  }
}

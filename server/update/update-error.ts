/** Why an update is not taken. */
export type UpdateErrorCode =
  "no-update" | "wrong-signature" | "damaged-file" | "not-newer" | "other-packages" | "not-healthy";

/** An update that is not taken; nothing has changed then. */
export class UpdateError extends Error {
  readonly code: UpdateErrorCode;
  /** Which file, which version, or what was wrong with its health. */
  readonly reason: string;

  constructor(code: UpdateErrorCode, reason: string) {
    super(`${code}: ${reason}`);
    this.code = code;
    this.reason = reason;
  }
}

/** The kernel's name of what went wrong in a system call (`EBUSY`, `EACCES`), or "" where it was something else. */
export function errnoOf(error: unknown): string {
  const code = error instanceof Error && "code" in error ? error.code : undefined;
  return typeof code === "string" ? code : "";
}

import { createServer } from "./create-server.ts";
import { EnvironmentError, readEnvironment } from "./environment.ts";
import { UnusableFileError } from "./library.ts";
import { openParts } from "./parts.ts";
import { StoreError } from "./store/store-error.ts";

const note = (sentence: string): void => void process.stderr.write(`Spurwise: ${sentence}\n`);

/** What stands in the way of a start, in one sentence, where it is something the one who starts can see to. */
function sentenceFor(error: unknown): string | undefined {
  if (error instanceof EnvironmentError || error instanceof UnusableFileError) return error.message;
  if (error instanceof StoreError) {
    const { code, facts } = error;
    if (code === "newer-than-program")
      return `the log ${String(facts["path"])} was written by a newer version (${facts["found"]}, this one knows ${facts["known"]}). It was not touched. Update Spurwise.`;
    if (code === "in-use")
      return `the data folder ${String(facts["path"])} is in use by another Spurwise. Stop that one, or set SPURWISE_DATA to another folder.`;
    return `the log ${String(facts["path"])} cannot be opened (${code}: ${String(facts["reason"] ?? "")}).`;
  }
  const code = error instanceof Error && "code" in error ? error.code : undefined;
  if (code === "EADDRINUSE")
    return "the port is in use. Stop the other program, or set SPURWISE_PORT to another port.";
  if (code === "EACCES") return "the port or the data folder may not be used by this user.";
  return undefined;
}

async function main(): Promise<void> {
  const environment = readEnvironment(process.env);
  const opened = openParts(environment, note);
  const server = createServer(opened.parts);
  let isClosing = false;
  const close = async (): Promise<void> => {
    if (isClosing) return;
    isClosing = true;
    await server.close();
    opened.close();
  };
  for (const signal of ["SIGTERM", "SIGINT"] as const)
    process.on(signal, () => void close().then(() => process.exit(0)));
  try {
    const port = await server.listen(environment.port, environment.host);
    const host = environment.host.includes(":") ? `[${environment.host}]` : environment.host;
    process.stdout.write(`Spurwise: http://${host}:${port}\n`);
    opened.ready();
  } catch (error) {
    await close();
    throw error;
  }
  await opened.readScenarios();
  server.bench.core.publish();
  if (!isClosing) opened.startLogCheck(() => server.bench.core.health.markDamaged());
}

main().catch((error: unknown) => {
  note(sentenceFor(error) ?? (error instanceof Error ? (error.stack ?? error.message) : String(error)));
  process.exit(1);
});

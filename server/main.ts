import { createServer } from "./create-server.ts";
import { readEnvironment } from "./environment.ts";
import { doorSentences } from "./door-sentences.ts";
import { openParts } from "./parts.ts";
import { sentenceFor } from "./start-sentence.ts";

const note = (sentence: string): void => void process.stderr.write(`Spurwise: ${sentence}\n`);

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
    const { ownPort, networkPort } = await server.listen(environment.port);
    process.stdout.write(`Spurwise: http://127.0.0.1:${ownPort}\n`);
    for (const sentence of doorSentences(opened.parts, environment.host, networkPort)) note(sentence);
    opened.ready();
  } catch (error) {
    await close();
    throw error;
  }
  await opened.readScenarios();
  server.bench.core.publish();
  if (!isClosing) opened.startProvingLog(() => server.bench.core.health.markDamaged());
}

main().catch((error: unknown) => {
  note(sentenceFor(error) ?? (error instanceof Error ? (error.stack ?? error.message) : String(error)));
  process.exit(1);
});

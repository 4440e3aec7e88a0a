import { createServer } from "./create-server.ts";
import { readEnvironment } from "./environment.ts";
import { doorSentences } from "./door-sentences.ts";
import { dataFolder, folders } from "./folders.ts";
import type { StartAgain } from "./keeping/desk-tasks.ts";
import { openParts } from "./parts.ts";
import { sentenceFor } from "./start-sentence.ts";
import { systemTimers } from "./clock/system-clock.ts";
import { isOnTrial } from "./update/programs.ts";
import { watchTrial } from "./update/trial-watch.ts";

const note = (sentence: string): void => void process.stderr.write(`Spurwise: ${sentence}\n`);

let close = (): Promise<void> => Promise.resolve();
for (const signal of ["SIGTERM", "SIGINT"] as const)
  process.on(signal, () => void close().then(() => process.exit(0)));

/** Opens and serves the bench; ends when it is to start again, with everything closed. */
async function serve(): Promise<StartAgain> {
  const environment = readEnvironment(process.env);
  let startAgain: (what: StartAgain) => void = () => undefined;
  const ended = new Promise<StartAgain>((resolve) => (startAgain = resolve));
  const opened = openParts(environment, note, (what) => startAgain(what));
  const server = createServer(opened.parts);
  let isClosing = false;
  let endWatch: () => void = () => undefined;
  close = async () => {
    if (isClosing) return;
    isClosing = true;
    endWatch();
    await server.close();
    opened.close();
  };
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
  const { core } = server.bench;
  if (!isClosing)
    opened.startBesides({ damaged: () => core.health.markDamaged(), changed: () => core.publish() });
  const data = dataFolder(environment.data);
  if (isOnTrial(data, folders.root))
    endWatch = watchTrial({
      data,
      timers: systemTimers,
      health: server.health,
      failed: () => {
        note("this program is not healthy: the one before is to be started again");
        startAgain("program");
      },
    });
  const what = await ended;
  await close();
  return what;
}

async function main(): Promise<void> {
  while ((await serve()) === "records") note("the bench starts again");
  // The service starts what was chosen; nobody does where it was started by hand.
  if (process.env["INVOCATION_ID"] === undefined) note("start it again: another program was chosen");
  process.exit(0);
}

main().catch((error: unknown) => {
  note(sentenceFor(error) ?? (error instanceof Error ? (error.stack ?? error.message) : String(error)));
  process.exit(1);
});

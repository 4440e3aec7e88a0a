// Waits until the bench's health address says that it is ready, so that the screen never opens on an error page.
// usage: SPURWISE_PORT=8080 node wait-until-ready.mjs [most seconds]
const address = `http://127.0.0.1:${process.env["SPURWISE_PORT"] ?? "8080"}/health`;
const mostS = Number(process.argv[2] ?? "150");
const endMs = performance.now() + mostS * 1000;

const isReady = async () => {
  try {
    const answer = await fetch(address, { signal: AbortSignal.timeout(2000) });
    return answer.ok && (await answer.json()).isReady === true;
  } catch {
    return false;
  }
};

while (!(await isReady())) {
  if (performance.now() > endMs) {
    console.error(`Spurwise: the bench was not ready at ${address} within ${mostS} s; see \`journalctl -u spurwise\`.`);
    process.exit(1);
  }
  await new Promise((resolve) => setTimeout(resolve, 250));
}

// Waits until the bench's health address says that it is ready, so that the screen never opens on an error page.
// A bench whose board cannot be had has a page that says so and what to do: that is to be seen, too.
// usage: SPURWISE_PORT=4710 node wait-until-ready.mjs [most seconds]
const address = `http://127.0.0.1:${process.env["SPURWISE_PORT"] ?? "4710"}/health`;
const mostS = Number(process.argv[2] ?? "150");
const endMs = performance.now() + mostS * 1000;

const hasPage = async () => {
  try {
    const answer = await fetch(address, { signal: AbortSignal.timeout(2000) });
    const { isReady, board } = await answer.json();
    return answer.ok && (isReady === true || board?.state === "no-board");
  } catch {
    return false;
  }
};

while (!(await hasPage())) {
  if (performance.now() > endMs) {
    console.error(
      `Spurwise: the bench was not ready at ${address} within ${mostS} s; see \`journalctl -u spurwise\`.`,
    );
    process.exit(1);
  }
  await new Promise((resolve) => setTimeout(resolve, 250));
}

import { afterEach, describe, expect, it, vi } from "vitest";
import { SavedFile } from "../../../kiosk/desk/saved-file.svelte.ts";
import { lineCountHeader } from "../../../shared/protocol/desk-view.ts";

const said = (text: string) => new TextEncoder().encode(text);

/** The bench sends a file of four lines, a piece at a time, as it is told to; it ends where nobody takes it any more. */
function sending() {
  let pipe: ReadableStreamDefaultController<Uint8Array> | undefined;
  const kept: string[] = [];
  vi.stubGlobal("fetch", (_address: string, { signal }: RequestInit) => {
    const body = new ReadableStream<Uint8Array>({
      start: (controller) => {
        pipe = controller;
        signal?.addEventListener("abort", () => controller.error(signal.reason));
      },
    });
    return Promise.resolve(new Response(body, { headers: { [lineCountHeader]: "4" } }));
  });
  vi.spyOn(HTMLAnchorElement.prototype, "click").mockImplementation(function (this: HTMLAnchorElement) {
    kept.push(this.download);
  });
  return { kept, piece: (text: string) => pipe?.enqueue(said(text)), end: () => pipe?.close() };
}
afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

describe("a file of evidence on its way from the bench", () => {
  it("says how far it has come, by its lines, and is kept under its own name once all of it is there", async () => {
    const bench = sending();
    const file = new SavedFile();
    const saving = file.save("/evidence/attempts.csv?mode=assessed");
    await vi.waitFor(() => expect(file.state).toBe("going"));
    bench.piece("a,b\n1,2\n");
    await vi.waitFor(() => expect(file.share).toBe(0.5));
    expect(file.takenBytes).toBe(8);
    expect(bench.kept).toEqual([]);
    bench.piece("3,4\n5,6\n");
    bench.end();
    await saving;
    expect(file).toMatchObject({ state: "saved", share: 1, takenBytes: 16 });
    expect(bench.kept).toEqual(["attempts.csv"]);
  });

  it("is stopped by whoever asked for it, and nothing of it is kept", async () => {
    const bench = sending();
    const file = new SavedFile();
    const saving = file.save("/evidence/archive.jsonl");
    bench.piece("{}\n");
    await vi.waitFor(() => expect(file.takenBytes).toBe(3));
    file.stop();
    await saving;
    expect(file.state).toBe("stopped");
    expect(bench.kept).toEqual([]);
  });
});

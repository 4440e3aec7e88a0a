import { lineCountHeader } from "../../shared/protocol/desk-view.ts";

const lineEnd = 10;

/** A file of evidence on its way from the bench: how far it has come, and what stops it. */
export class SavedFile {
  state = $state<"idle" | "going" | "saved" | "stopped" | "failed">("idle");
  takenBytes = $state(0);
  /** How much of it is there, 0 to 1; undefined where the bench does not know how long it will be. */
  share = $state<number>();
  #stopping: AbortController | undefined;

  /** Takes the file and gives it to the browser to keep. */
  async save(href: string): Promise<void> {
    this.stop();
    const stopping = new AbortController();
    this.#stopping = stopping;
    [this.state, this.takenBytes, this.share] = ["going", 0, undefined];
    try {
      const answer = await fetch(href, { signal: stopping.signal });
      if (!answer.ok || !answer.body) throw new Error(String(answer.status));
      const pieces = await this.#taken(answer.body, Number(answer.headers.get(lineCountHeader) ?? 0));
      const [path = ""] = href.split("?");
      keepFile(new Blob(pieces), path.slice(path.lastIndexOf("/") + 1));
      this.state = "saved";
    } catch {
      if (this.#stopping === stopping) this.state = stopping.signal.aborted ? "stopped" : "failed";
    }
  }

  stop(): void {
    this.#stopping?.abort();
  }

  async #taken(body: ReadableStream<Uint8Array<ArrayBuffer>>, lineCount: number) {
    const pieces: Uint8Array<ArrayBuffer>[] = [];
    let lines = 0;
    const reader = body.getReader();
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return pieces;
      pieces.push(value);
      this.takenBytes += value.length;
      lines += value.reduce((count, byte) => count + (byte === lineEnd ? 1 : 0), 0);
      if (lineCount > 0) this.share = Math.min(1, lines / lineCount);
    }
  }
}

/** Gives something to the browser to keep under a name. */
export function keepFile(blob: Blob, name: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  // The browser takes it up after the click.
  window.setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

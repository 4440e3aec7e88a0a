import type { KeepingView } from "../../../shared/protocol/keep-view.ts";
import { fetchKeep } from "../fetch-keep.ts";

/** What is being done is looked at again after this long. */
const lookAgainMs = 700;

/** Back-ups and the program as the bench tells of them, looked at again for as long as something is done. */
export class KeepingTasks {
  view = $state.raw<KeepingView | null>(null);
  /** The folder that is looked at; empty for the one that was chosen in the settings. */
  folder = $state("");
  /** Why the last thing asked for was not begun; empty where it was. */
  refused = $state("");
  /** Whoever asked for a back-up to be brought back is asked whether they are sure. */
  isAsking = $state(false);
  #timer: number | undefined;

  async look(): Promise<void> {
    const found = await fetchKeep<KeepingView>(`/keeping?folder=${encodeURIComponent(this.folder)}`);
    if (found.ok) this.view = found.data;
    else if (this.view?.task?.state !== "going") this.refused = "no-answer";
    window.clearTimeout(this.#timer);
    if (this.view?.task?.state === "going")
      this.#timer = window.setTimeout(() => void this.look(), lookAgainMs);
  }

  /** Asks for something at an address below that of the records. */
  async ask(path: string, body: object): Promise<void> {
    this.isAsking = false;
    const answer = await fetchKeep(`/keeping${path}`, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(body),
    });
    this.refused = answer.ok ? "" : answer.said || "no-answer";
    await this.look();
  }

  end(): void {
    window.clearTimeout(this.#timer);
  }
}

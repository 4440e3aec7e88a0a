import { getContext, setContext } from "svelte";
import { leadData, type LeadView } from "../../../shared/protocol/lead-view.ts";
import { changed, type ViewChange } from "../../../shared/protocol/view-change.ts";

const tickMs = 1000;

/** What goes on in the workshop, as the lead tells it. */
export class LeadWatch {
  view = $state.raw<LeadView | null>(null);
  isLost = $state(false);
  /** The lead's clock, to the second. */
  nowWallMs = $state(0);
  #heardMs = 0;
  #toldWallMs = 0;

  /** Watches until the function it gives is called. The browser asks again by itself where the link breaks. */
  watch(): () => void {
    const source = new EventSource(`${leadData}/stream`);
    source.addEventListener("view", ({ data }) => this.#take(JSON.parse(String(data)) as LeadView));
    source.addEventListener("change", ({ data }) => {
      if (this.view) this.#take(changed(this.view, JSON.parse(String(data)) as ViewChange) as LeadView);
    });
    source.addEventListener("error", () => (this.isLost = true));
    const timer = window.setInterval(() => this.#tick(), tickMs);
    return () => {
      source.close();
      window.clearInterval(timer);
    };
  }

  #take(view: LeadView): void {
    this.isLost = false;
    if (view.nowWallMs !== this.#toldWallMs) this.#heardMs = performance.now();
    this.#toldWallMs = view.nowWallMs;
    this.view = view;
    this.#tick();
  }

  #tick(): void {
    this.nowWallMs = this.#toldWallMs + performance.now() - this.#heardMs;
  }
}

const watch = Symbol("lead-watch");
export const provideLeadWatch = (made: LeadWatch): LeadWatch => setContext(watch, made);
export const useLeadWatch = (): LeadWatch => getContext<LeadWatch>(watch);

import { afterAll, beforeEach, vi } from "vitest";
import { cleanup } from "vitest-browser-svelte/pure";

// All files of component checks share one page. The library clears up for the file alone that loads it first.
beforeEach(() => cleanup());

afterAll(() => {
  cleanup();
  vi.useRealTimers();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
  document.body.replaceChildren();
  document.documentElement.lang = "en";
  localStorage.clear();
  sessionStorage.clear();
});

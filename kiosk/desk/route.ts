/** The pages of what keeps a bench and its people; they are loaded when they are first opened. */
export const keepPages = ["people", "debrief", "prepare", "machine", "workshop", "projector"] as const;
export type KeepPage = (typeof keepPages)[number];
export type Page = "live" | "attempts" | "attempt" | "sample" | KeepPage;

/** Which page the address names, and what it asks of it: each page can be linked to. */
export interface Route {
  page: Page;
  /** The attempt of its page. */
  id: string;
  query: URLSearchParams;
}

const pages: readonly Page[] = ["live", "attempts", "attempt", "sample", ...keepPages];

/** Reads what stands behind the `#` of an address, as `#/attempt/0198?at=4`. */
export function routeOf(hash: string): Route {
  const [path = "", query = ""] = hash.replace(/^#\/?/, "").split("?");
  const [name, id = ""] = path.split("/");
  return { page: pages.find((page) => page === name) ?? "live", id, query: new URLSearchParams(query) };
}

/** The address of a page; what is empty is left out. */
export function hrefOf(page: Page, id = "", query: Record<string, string> = {}): string {
  const asked = new URLSearchParams(Object.entries(query).filter(([, value]) => value !== ""));
  const text = asked.toString();
  return `#/${page}${id === "" ? "" : `/${id}`}${text === "" ? "" : `?${text}`}`;
}

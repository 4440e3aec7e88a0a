import { keepData } from "../../shared/protocol/keep-view.ts";
import { fetchJson } from "./fetch-json.ts";

/** What an address of what keeps the bench answers with, as `fetchJson` gives it. */
export const fetchKeep = <Of>(path: string, init?: RequestInit) => fetchJson<Of>(keepData + path, init);

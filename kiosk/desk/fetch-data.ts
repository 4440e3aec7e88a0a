import { deskData } from "../../shared/protocol/desk-view.ts";
import { fetchJson } from "./fetch-json.ts";

/** What an address of the desk's data answers with, as `fetchJson` gives it. */
export const fetchData = <Of>(path: string) => fetchJson<Of>(deskData + path);

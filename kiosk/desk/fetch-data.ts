import { deskData } from "../../shared/protocol/desk-view.ts";

/** What an address of the desk's data answers with, or the status that it is refused with; 0 where nothing answers. */
export async function fetchData<Of>(
  path: string,
): Promise<{ ok: true; data: Of } | { ok: false; status: number }> {
  try {
    const answer = await fetch(deskData + path);
    return answer.ok ? { ok: true, data: (await answer.json()) as Of } : { ok: false, status: answer.status };
  } catch {
    return { ok: false, status: 0 };
  }
}

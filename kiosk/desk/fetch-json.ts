/** What an address answers with, or the status and the text it is refused with; 0 where nothing answers. */
export async function fetchJson<Of>(
  address: string,
  init?: RequestInit,
): Promise<{ ok: true; data: Of } | { ok: false; status: number; said: string }> {
  try {
    const answer = await fetch(address, init);
    if (answer.ok) return { ok: true, data: (await answer.json()) as Of };
    return { ok: false, status: answer.status, said: (await answer.text()).trim() };
  } catch {
    return { ok: false, status: 0, said: "" };
  }
}

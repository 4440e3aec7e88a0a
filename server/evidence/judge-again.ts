import { readBoard } from "../../shared/board/read-board.ts";
import type { Verdict } from "../../shared/rules/verdict.ts";
import type { Wiring } from "../../shared/wiring/wiring.schema.ts";
import { eventOfRow } from "../attempt/load-attempt.ts";
import { pictureOf } from "../attempt/picture-of.ts";
import { stateAt } from "../desk/replay.ts";
import { scenarioKit } from "../library.ts";
import { eventOfBytes } from "../store/event-bytes.ts";
import { isSignatureOf } from "../store/log-signer.ts";
import { hashOfBytes, hashOfRow, hexOf } from "../store/row-hash.ts";
import type { AppealsPack } from "./appeals-pack.schema.ts";

/** What comes of judging a pack again; `changed` names the first thing that is not as it was written. */
export type JudgedAgain =
  | { changed: string }
  | { cannot: string }
  | {
      wiring: Wiring;
      stored: Verdict;
      again: Verdict;
      /** The verdict of now is that of then, byte for byte. */
      isSame: boolean;
      rulePackVersion: string;
      sealCount: number;
    };

/** The first record or document of a pack that is not as it was written, in words. */
function changedIn({ rows, documents, publicKey }: AppealsPack): string | undefined {
  for (const row of rows) {
    const name = `event ${row.sequence} of boot ${row.boot} (${row.type})`;
    if (hexOf(hashOfRow(row)) !== hexOf(row.hash)) return `${name}: its content is not what was written`;
    if (row.type !== "sealed") continue;
    const { head, signature } = eventOfBytes(row.bytes).content as { head?: unknown; signature?: unknown };
    const isSealed =
      publicKey !== null &&
      head === hexOf(row.previousHash) &&
      typeof signature === "string" &&
      isSignatureOf(publicKey, hexOf(row.previousHash), signature);
    if (!isSealed) return `${name}: its signature is not the bench's`;
  }
  // A seal stands right behind what it seals; where only that one was made anew with its hash, this finds it.
  const broken = rows.find(({ type, previousHash }, at) => {
    const before = rows[at - 1];
    return type === "sealed" && (!before || hexOf(before.hash) !== hexOf(previousHash));
  });
  if (broken)
    return `event ${broken.sequence} of boot ${broken.boot} (sealed): what it seals is another record`;
  const lost = documents.find(({ hash, bytes }) => hexOf(hashOfBytes(bytes)) !== hash);
  return lost && `document ${lost.hash}: its content is not what was written`;
}

/** Proves a pack against its hashes and signatures, and judges what was handed in again with the rules of this program. */
export function judgeAgain(pack: AppealsPack, judge: (wiring: Wiring) => Verdict): JudgedAgain {
  const changed = changedIn(pack);
  if (changed !== undefined) return { changed };
  const { rows, documents, attemptId } = pack;
  const started = rows.map(eventOfRow).find((event) => event?.type === "attempt-started");
  const at = rows.findLastIndex(({ type }) => type === "handed-in");
  const handIn = rows[at];
  if (started?.type !== "attempt-started" || !handIn) return { cannot: "it was not handed in" };
  const { scenario, scenarioHash, board: boardId, boardHash, rulePackVersion } = started.content;
  const bytesOf = (asked: string) => documents.find(({ hash }) => hash === asked)?.bytes;
  const [kitBytes, boardBytes] = [bytesOf(scenarioHash), bytesOf(boardHash)];
  if (!kitBytes || !boardBytes) return { cannot: "the scenario or the board is not in it" };
  const kit = scenarioKit(kitBytes, `${scenario}.json`);
  const board = readBoard(Buffer.from(boardBytes).toString("utf8"), `${boardId}.json`);
  const state = stateAt(attemptId, rows, at);
  if ("problems" in kit || !board.ok || !state)
    return { cannot: "its scenario or board is not in a form that this program reads" };
  const { wiring, verdict } = pictureOf({ kit, board: board.value, judge }, state.plugged, state).judged();
  const { verdict: stored } = eventOfBytes(handIn.bytes).content as { verdict: Verdict };
  return {
    wiring,
    stored,
    again: verdict,
    isSame: JSON.stringify(stored) === JSON.stringify(verdict),
    rulePackVersion,
    sealCount: rows.filter(({ type }) => type === "sealed").length,
  };
}

import { describe, expect, it } from "vitest";
import { faultPlace } from "../../../kiosk/health/fault-place.ts";
import { boardHealthEn } from "../../../kiosk/text/board-health-en.ts";
import { Words } from "../../../kiosk/text/words.svelte.ts";
import type { ContactId, StationId } from "../../../shared/board/ids.ts";
import { type BoardFault, boardFaultKinds } from "../../../shared/board/sensed-state.schema.ts";
import { smallFace } from "../faces.ts";

const placeOf = (fault: Omit<BoardFault, "kind">) => faultPlace(fault, smallFace, new Words());
const contacts = (...ids: string[]) => ids as ContactId[];

describe("the place of a board fault", () => {
  it("is its contacts by name, each station said once", () => {
    expect(placeOf({ contacts: contacts("socket-1.a.L") })).toBe("Socket outlet 1 a L");
    expect(placeOf({ contacts: contacts("socket-1.a.L", "socket-1.b.N", "socket-2.a.L") })).toBe(
      "Socket outlet 1 a L, b N, Socket outlet 2 a L",
    );
  });

  it("counts what would be too long to read", () => {
    const nine = ["a", "b", "c"].flatMap((letter) =>
      ["E", "L", "N"].map((role) => `socket-1.${letter}.${role}`),
    );
    expect(placeOf({ contacts: contacts(...nine) })).toBe(
      "Socket outlet 1 a E, a L, a N, b E, b L, b N and 3 more",
    );
    const two = { contacts: contacts("socket-1.a.L", "socket-1.b.N", "socket-2.a.L") };
    expect(faultPlace(two, smallFace, new Words(), 1)).toBe("Socket outlet 1 a L and 2 more");
  });

  it("is a probe, a station or the whole board where there are no contacts", () => {
    expect(placeOf({ contacts: [], facts: { probe: "red" } })).toBe("Red probe");
    expect(placeOf({ contacts: [], station: "socket-2" as StationId })).toBe("Socket outlet 2");
    expect(placeOf({ contacts: [] })).toBe("Whole board");
  });
});

describe("every kind of board fault", () => {
  it.each(boardFaultKinds)("%s has a meaning, and a remedy that says who does what", (kind) => {
    expect(boardHealthEn[`health.${kind}`].length).toBeGreaterThan(20);
    expect(boardHealthEn[`health.${kind}.remedy`]).toMatch(/Trainer|Technician|Learner/);
  });
});

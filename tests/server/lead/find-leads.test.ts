import { describe, expect, it, onTestFinished } from "vitest";
import { LeadNames } from "../../../server/lead/find-leads.ts";

describe("a lead on the network", () => {
  it("is found by its name, with where it is called, and no more once it leads no longer", async () => {
    const notes: string[] = [];
    const [lead, bench] = [0, 1].map(() => new LeadNames((note) => void notes.push(note), "127.0.0.1")) as [
      LeadNames,
      LeadNames,
    ];
    onTestFinished(() => lead.close());
    onTestFinished(() => bench.close());
    await lead.publish("Spurwise a1b2", 4712);
    expect(await bench.find()).toEqual([
      { name: "Spurwise a1b2", address: expect.stringMatching(/:4712$/) as string },
    ]);
    await lead.hide();
    expect(await bench.find()).toEqual([]);
    expect(notes).toEqual([]);
  });
});

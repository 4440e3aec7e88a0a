import { describe, expect, it, onTestFinished } from "vitest";
import { fitComplaints } from "./fit-check.ts";

const measure = { captionPx: 14, leastKeyPx: 44 };
const key = "width:120px;height:60px;font-size:16px;padding:0;border:0";

/** A screen of that markup, in the corner of the window, and what is complained of. */
function complaintsOf(markup: string): string[] {
  const root = document.createElement("div");
  root.style.cssText = "position:fixed;inset:0;font:16px/1.2 sans-serif";
  root.innerHTML = markup;
  document.body.append(root);
  onTestFinished(() => root.remove());
  return fitComplaints(root, measure);
}

describe("what is complained of in a layout", () => {
  it("is nothing where all can be read and touched", () => {
    expect(complaintsOf(`<p>Read me</p><button style="${key}">Go</button>`)).toEqual([]);
  });

  it.each([
    { flaw: "text too small", markup: `<p style="font-size:9px">tiny</p>`, says: "small text" },
    {
      flaw: "text wider than its key",
      markup: `<button style="${key};white-space:nowrap;width:50px">A long word on a small key</button>`,
      says: "leaves its key",
    },
    {
      flaw: "text beyond the side of the window",
      markup: `<p style="position:absolute;left:100vw;white-space:nowrap">gone</p>`,
      says: "leaves at the side",
    },
    {
      flaw: "text below the window",
      markup: `<p style="position:absolute;top:calc(100vh + 20px)">gone</p>`,
      says: "leaves the window",
    },
    {
      flaw: "a box that cuts off at the side",
      markup: `<div style="width:60px;overflow-x:hidden"><div style="width:200px;height:10px"></div></div>`,
      says: "is cut off at the side",
    },
    {
      flaw: "a box that cuts off below",
      markup: `<div style="height:20px;overflow:hidden"><div style="height:200px"></div></div>`,
      says: "is cut off below",
    },
    { flaw: "a key too small", markup: `<button style="${key};height:20px">Go</button>`, says: "by 20 px" },
    {
      flaw: "a key outside the window",
      markup: `<button style="${key};position:absolute;top:calc(100vh + 90px)"></button>`,
      says: "is outside the window",
    },
    {
      flaw: "a key under something else",
      markup: `<button style="${key}"></button><div style="position:absolute;inset:0"></div>`,
      says: "lies under",
    },
  ])("names $flaw", ({ markup, says }) => {
    expect(complaintsOf(markup)).toContainEqual(expect.stringContaining(says));
  });

  it("leaves out what is hidden on purpose", () => {
    expect(complaintsOf(`<p class="visually-hidden" style="font-size:9px">tiny</p>`)).toEqual([]);
    expect(complaintsOf(`<p style="font-size:9px;visibility:hidden">tiny</p>`)).toEqual([]);
  });
});

import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";

/** Pieces of a word in other letters stand apart for a reader: what is said is told by its letters alone. */
export const letters = (text: string): string => text.replace(/\s+/g, "");

/** What a reader of PDF that is not ours finds: the text of all pages, what is drawn on them, and how they are told. */
export async function readPdf(bytes: Uint8Array) {
  const pdf = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const pages: string[] = [];
  const drawn: string[][] = [];
  const roles = new Set<string>();
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    const { items } = await page.getTextContent();
    pages.push(letters(items.map((item) => ("str" in item ? item.str : "")).join(" ")));
    const { fnArray, argsArray } = await page.getOperatorList();
    drawn.push(
      fnArray.flatMap((name, at) => (name === OPS.constructPath ? [JSON.stringify(argsArray[at])] : [])),
    );
    const gather = (node: object): void => {
      if ("role" in node) roles.add(String(node.role));
      if ("children" in node) (node.children as object[]).forEach(gather);
    };
    const tree = await page.getStructTree();
    if (tree) gather(tree);
  }
  const { info } = await pdf.getMetadata();
  await pdf.destroy();
  return { text: pages.join(""), pages, drawn, roles, info: info as Record<string, unknown> };
}

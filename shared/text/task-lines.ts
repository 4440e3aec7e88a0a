const numbered = /^(\d+)\. (.+)$/;

/** A task's text: what is said of the house, and what is asked for, each with its number. */
export interface TaskLines {
  opening: string;
  asks: { number: number; text: string }[];
}

/** Takes a task's text apart: lines that begin with a number and a full stop are what it asks for. */
export function taskLines(text: string): TaskLines {
  const opening: string[] = [];
  const asks: TaskLines["asks"] = [];
  for (const line of text.split("\n")) {
    const [, number, said] = numbered.exec(line) ?? [];
    if (number !== undefined && said !== undefined) asks.push({ number: Number(number), text: said });
    else opening.push(line);
  }
  return { opening: opening.join(" "), asks };
}

/** A name after a letter of the page's keyboard, which has capitals alone: each word begins with one and goes on small. */
export function nameAfter(name: string, letter: string): string {
  if (letter === " " && (name === "" || name.endsWith(" "))) return name;
  return name + (/(^|[\s-])$/.test(name) ? letter : letter.toLowerCase());
}

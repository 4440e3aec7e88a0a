/**
 * The scripts and styles a page loads at first, by their addresses in it: its own, and what it has loaded ahead for them.
 * What a later screen fetches when it opens is not among them.
 */
export const firstLoadFiles = (html: string): string[] =>
  [...html.matchAll(/<(?:script|link)\b[^>]*>/gu)].flatMap(([tag]) => {
    const isLoaded = /^<script\b/u.test(tag) || /\brel="(?:modulepreload|stylesheet)"/u.test(tag);
    const address = /\b(?:src|href)="([^"]+)"/u.exec(tag)?.[1];
    return isLoaded && address !== undefined ? [address] : [];
  });

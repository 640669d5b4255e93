/** Control, format and unassigned characters, ends of lines, and others that nobody sees: two texts that differ by one look the same. */
const unseen = /[\p{C}\p{Zl}\p{Zp}\p{Default_Ignorable_Code_Point}\u2800]/u;

/** The first character of a text that nobody sees, as it can be said: its code point and its place, from 1; undefined where there is none. */
export function unseenIn(text: string): string | undefined {
  const at = [...text].findIndex((each) => unseen.test(each));
  const point = [...text][at]?.codePointAt(0);
  return point === undefined ? undefined : `U+${point.toString(16).toUpperCase().padStart(4, '0')}, character ${at + 1}`;
}

/** What is wanted instead of a text with such a character. */
export const wantedSeen = (found: string): string => `a text without characters that nobody sees (${found})`;

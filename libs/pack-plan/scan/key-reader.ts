/** A reader types faster than fingers do, milliseconds between two keys. */
const readerGapMs = 60;
const fewestKeys = 3;

/**
 * Tells a reader that types (a keyboard wedge) from fingers: keys that follow one another quickly and end with Enter are a code. Gives the code with that
 * Enter, null with every other key. `at`: by any clock that does not go back, milliseconds.
 */
export function keyReader(gapMs: number = readerGapMs): (key: string, at: number) => string | null {
  let text = '';
  let last = -Infinity;
  return (key, at) => {
    const isQuick = at - last <= gapMs;
    last = at;
    if (key === 'Enter') {
      const code = isQuick && text.length >= fewestKeys ? text : null;
      text = '';
      return code;
    }
    // Shift and the like are pressed between letters and are none.
    if ([...key].length > 1) {
      if (!isQuick) text = '';
      return null;
    }
    text = isQuick ? text + key : key;
    return null;
  };
}

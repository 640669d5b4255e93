import { onePersonLine } from '#drawings';
import { useOnePerson } from '../platform/me.js';

/** On what is printed from a screen that is no sheet. */
export function OnePersonLine() {
  const line = onePersonLine(useOnePerson());
  return line && <p className="printonly">◐ {line}</p>;
}

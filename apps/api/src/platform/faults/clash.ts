import { shownValue } from '#editions';

/** Of a field that two people gave different values: what the second is told, who then decides. */
export interface Clash {
  readonly was: unknown;
  readonly yours: unknown;
  readonly onFile: unknown;
}

const shown = (value: unknown): string => {
  const text = shownValue(value) ?? '';
  return text === '' ? 'nothing' : `“${text}”`;
};

export const clashInWords = ({ was, yours, onFile }: Clash): string =>
  `one of two: meanwhile somebody wrote ${shown(onFile)}, where you read ${shown(was)} and wrote ${shown(yours)}; saving again puts yours in its place`;

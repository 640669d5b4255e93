import { type InputPart, keyOfPart, partOfKey } from '#trade';

/** Parts of the inputs as plans up to version 0.1 named them. */
const landedParts: Readonly<Record<string, InputPart>> = {
  'the dates, trucks and freight of the tour': { code: 'tour' },
  'the spares wanted and the losses counted': { code: 'spares' },
  'the other shows of the tour': { code: 'other-shows' },
  'the venue, dates and rule of the show': { code: 'show' },
  'the examination rules': { code: 'examination-rules' },
  'the load rules': { code: 'load-rules' },
  'the rigging systems': { code: 'systems' },
  'promises to other tours': { code: 'bookings' },
  'which items are on file': { code: 'register' },
  'the loading wishes of the show': { code: 'loading' },
};

const hang = /^the hang (.+)$/s;
const model = /^the model (.+) \((\w+)\)$/s;
const item = /^(box|cart|grid|hoist|shackle|sling|pin|loom|case|truck) (.+)$/s;

function landedPart(key: string): InputPart | undefined {
  const [aHang, aModel, anItem] = [hang.exec(key), model.exec(key), item.exec(key)];
  if (aHang) return { code: 'hang', id: aHang[1]! };
  if (aModel) return { code: 'model', of: aModel[2]!, id: aModel[1]! };
  return anItem ? { code: 'item', of: anItem[1]!, id: anItem[2]! } : landedParts[key];
}

/** A fingerprint with the keys of today, whatever it was kept with; a part that nobody knows any more is left out. */
export const wholeFingerprint = (kept: Readonly<Record<string, string>>): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Object.entries(kept).flatMap(([key, hash]) => {
      const part = partOfKey(key) ?? landedPart(key);
      return part ? [[keyOfPart(part), hash]] : [];
    }),
  );

/** The key under which plans up to version 0.1 kept an item or the list of items; undefined for other parts. */
export function landedKeyOf(part: InputPart): string | undefined {
  if (part.code === 'item') return `${part.of} ${part.id}`;
  return Object.keys(landedParts).find((key) => landedParts[key]!.code === part.code);
}

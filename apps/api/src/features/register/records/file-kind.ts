interface Kind {
  readonly name: string;
  readonly bytes: readonly number[];
  /** Whether a file that begins so has a picture in it. */
  readonly isPicture?: (file: Buffer) => boolean;
}

/** What a report may be handed in as, and how a file of each begins (ISO 32000-2, 7.5.2; ISO/IEC 10918-1, B.1.1.3; PNG Specification, 5.2). */
const beginnings: Readonly<Record<string, Kind>> = {
  'application/pdf': { name: 'PDF', bytes: [0x25, 0x50, 0x44, 0x46, 0x2d] },
  'image/jpeg': { name: 'JPEG', bytes: [0xff, 0xd8, 0xff], isPicture: isJpegPicture },
  'image/png': { name: 'PNG', bytes: [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a], isPicture: isPngPicture },
};

/** Why a file is not taken as a report; null: it is what it says. */
export function reportFileFault(type: string, bytes: unknown): { field: string; value: string; wanted: string } | null {
  const known = Object.hasOwn(beginnings, type) ? beginnings[type] : undefined;
  if (!known) return { field: 'file', value: type, wanted: `a file of type ${Object.keys(beginnings).join(', ')}` };
  if (!Buffer.isBuffer(bytes) || bytes.length === 0) return { field: 'file', value: 'empty', wanted: `a ${known.name} that is not empty` };
  if (bytes.subarray(0, known.bytes.length).equals(Buffer.from(known.bytes)))
    return known.isPicture && !known.isPicture(bytes)
      ? {
          field: 'file',
          value: `${bytes.length} bytes`,
          wanted: `a ${known.name} with a picture in it: its head names no width and height`,
        }
      : null;
  const really = Object.values(beginnings).find((each) => bytes.subarray(0, each.bytes.length).equals(Buffer.from(each.bytes)));
  return { field: 'file', value: really?.name ?? 'something else', wanted: `a file that is ${known.name}, as it says` };
}

/** Its first chunk says how wide and how high it is, and another follows (PNG Specification, 11.2.1). */
function isPngPicture(file: Buffer): boolean {
  if (file.length < 45 || file.readUInt32BE(8) !== 13 || file.toString('latin1', 12, 16) !== 'IHDR') return false;
  return file.readUInt32BE(16) > 0 && file.readUInt32BE(20) > 0;
}

/** From marker to marker to the frame, which says how high and how wide it is; C4, C8 and CC begin no frame (ISO/IEC 10918-1, B.1.1.3 and B.2.2). */
function isJpegPicture(file: Buffer): boolean {
  let at = 2;
  while (at + 9 <= file.length && file[at] === 0xff) {
    const marker = file[at + 1] ?? 0;
    if (marker === 0xff) {
      at++;
      continue;
    }
    if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker))
      return file.readUInt16BE(at + 5) > 0 && file.readUInt16BE(at + 7) > 0;
    if (marker === 0xda || marker === 0xd9) return false;
    at += 2 + Math.max(2, file.readUInt16BE(at + 2));
  }
  return false;
}

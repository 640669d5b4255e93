/** What a report may be handed in as, and how a file of each begins (ISO 32000-2, 7.5.2; ISO/IEC 10918-1, B.1.1.3; PNG Specification, 5.2). */
const beginnings: Readonly<Record<string, { readonly name: string; readonly bytes: readonly number[] }>> = {
  'application/pdf': { name: 'PDF', bytes: [0x25, 0x50, 0x44, 0x46, 0x2d] },
  'image/jpeg': { name: 'JPEG', bytes: [0xff, 0xd8, 0xff] },
  'image/png': { name: 'PNG', bytes: [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a] },
};

/** Why a file is not taken as a report; null: it is what it says. */
export function reportFileFault(type: string, bytes: unknown): { field: string; value: string; wanted: string } | null {
  const known = Object.hasOwn(beginnings, type) ? beginnings[type] : undefined;
  if (!known) return { field: 'file', value: type, wanted: `a file of type ${Object.keys(beginnings).join(', ')}` };
  if (!Buffer.isBuffer(bytes) || bytes.length === 0) return { field: 'file', value: 'empty', wanted: `a ${known.name} that is not empty` };
  if (bytes.subarray(0, known.bytes.length).equals(Buffer.from(known.bytes))) return null;
  const really = Object.values(beginnings).find((each) => bytes.subarray(0, each.bytes.length).equals(Buffer.from(each.bytes)));
  return { field: 'file', value: really?.name ?? 'something else', wanted: `a file that is ${known.name}, as it says` };
}

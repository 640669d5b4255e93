/** A PNG of one grey pixel, whole (PNG Specification, 5). */
export const tinyPng = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==',
  'base64',
);

/** The head of a JPEG of 8 by 16 pixels up to its frame (ISO/IEC 10918-1, B.2.2). */
export const tinyJpeg = Buffer.from([
  ...[0xff, 0xd8, 0xff, 0xe0, 0, 4, 0, 0],
  ...[0xff, 0xc0, 0, 11, 8, 0, 16, 0, 8, 1, 1, 0x11, 0],
  ...[0xff, 0xda, 0, 8, 1, 1, 0, 0, 0x3f, 0],
]);

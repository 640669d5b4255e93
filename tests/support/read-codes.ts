import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { PNG } from 'pngjs';
import { type ReadInputBarcodeFormat, prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';

prepareZXingModule({ overrides: { wasmBinary: bytesOf(new URL(import.meta.resolve('zxing-wasm/reader/zxing_reader.wasm'))) } });

function bytesOf(file: URL): ArrayBuffer {
  const bytes = readFileSync(fileURLToPath(file));
  return bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength);
}

/** What an independent decoder (a port of ZXing) reads in a picture, be it pixels or a PNG file, which it unpacks itself; by symbology. */
export async function readCodes(picture: PNG | Uint8Array, formats: ReadInputBarcodeFormat[]): Promise<{ format: string; text: string }[]> {
  const read = picture instanceof Uint8Array ? picture : pixelsOf(picture);
  const found = await readBarcodes(read, { formats, tryHarder: true, maxNumberOfSymbols: 255 });
  return found.filter((each) => each.isValid).map((each) => ({ format: each.format, text: each.text }));
}

function pixelsOf({ data, width, height }: PNG) {
  return { data: new Uint8ClampedArray(data), width, height, colorSpace: 'srgb' };
}

/** Each pixel the mean of those around it, `radius` pixels each way: along rows, then along columns. A picture in grey. */
export function blurred(picture: PNG, radius: number): PNG {
  const { width, height } = picture;
  const grey = Float64Array.from({ length: width * height }, (_, index) => picture.data[index * 4] ?? 0);
  const far = Math.ceil(radius);
  const weights = Float64Array.from({ length: 2 * far + 1 }, (_, at) => Math.max(0, Math.min(1, radius + 0.5 - Math.abs(at - far))));
  const soft = meansAlong(meansAlong(grey, weights, [width, 1], [height, width]), weights, [height, width], [width, 1]);
  const made = new PNG({ width, height });
  for (let index = 0; index < soft.length; index++)
    made.data.fill(soft[index] ?? 0, index * 4, index * 4 + 3).fill(255, index * 4 + 3, index * 4 + 4);
  return made;
}

/** Weighted means along lines; of what lies in a line and of the lines, how many and how far from one to the next. No global is named inside: in a test that is slow. */
function meansAlong(
  of: Float64Array,
  weights: Float64Array,
  [length, stride]: readonly [number, number],
  [lines, lineStride]: readonly [number, number],
): Float64Array {
  const out = new Float64Array(of.length);
  const far = (weights.length - 1) / 2;
  for (let line = 0; line < lines; line++)
    for (let at = 0; at < length; at++) {
      let [sum, whole] = [0, 0];
      for (let by = -far; by <= far; by++) {
        if (at + by < 0 || at + by >= length) continue;
        const weight = weights[by + far] ?? 0;
        sum += weight * (of[line * lineStride + (at + by) * stride] ?? 0);
        whole += weight;
      }
      out[line * lineStride + at * stride] = sum / whole;
    }
  return out;
}

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { PNG } from 'pngjs';
import { type ReadInputBarcodeFormat, prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';

prepareZXingModule({ overrides: { wasmBinary: bytesOf(new URL(import.meta.resolve('zxing-wasm/reader/zxing_reader.wasm'))) } });

function bytesOf(file: URL): ArrayBuffer {
  const bytes = readFileSync(fileURLToPath(file));
  return bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength);
}

/** What an independent decoder (a port of ZXing) reads in a picture, by symbology. */
export async function readCodes(picture: PNG, formats: ReadInputBarcodeFormat[]): Promise<{ format: string; text: string }[]> {
  const pixels = { data: new Uint8ClampedArray(picture.data), width: picture.width, height: picture.height, colorSpace: 'srgb' };
  const found = await readBarcodes(pixels, { formats, tryHarder: true, maxNumberOfSymbols: 255 });
  return found.filter((each) => each.isValid).map((each) => ({ format: each.format, text: each.text }));
}

/** Each pixel the mean of those around it, `radius` pixels each way: along rows, then along columns. A picture in grey. */
export function blurred(picture: PNG, radius: number): PNG {
  const { width, height } = picture;
  const grey = Float64Array.from({ length: width * height }, (_, index) => picture.data[index * 4] ?? 0);
  const pass = (of: Float64Array, stride: number, length: number, lines: number, lineStride: number) => {
    const out = new Float64Array(of.length);
    for (let line = 0; line < lines; line++)
      for (let at = 0; at < length; at++) {
        let [sum, weights] = [0, 0];
        for (let by = -Math.ceil(radius); by <= Math.ceil(radius); by++) {
          const weight = Math.max(0, Math.min(1, radius + 0.5 - Math.abs(by)));
          if (at + by < 0 || at + by >= length) continue;
          sum += weight * (of[line * lineStride + (at + by) * stride] ?? 0);
          weights += weight;
        }
        out[line * lineStride + at * stride] = sum / weights;
      }
    return out;
  };
  const soft = pass(pass(grey, 1, width, height, width), width, height, width, 1);
  const made = new PNG({ width, height });
  soft.forEach((value, index) => made.data.set([value, value, value, 255], index * 4));
  return made;
}

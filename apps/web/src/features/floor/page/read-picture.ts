import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import program from 'zxing-wasm/reader/zxing_reader.wasm?url';

let isPrepared = false;

/** Codes of a picture, however many and however turned, where the browser has no detector of its own. The decoder comes from this house. */
export async function readPicture(picture: ImageData): Promise<readonly string[]> {
  if (!isPrepared)
    prepareZXingModule({ overrides: { locateFile: (path: string, prefix: string) => (path.endsWith('.wasm') ? program : prefix + path) } });
  isPrepared = true;
  const found = await readBarcodes(picture, { formats: ['QRCode', 'Code128', 'DataMatrix'], tryHarder: true, maxNumberOfSymbols: 8 });
  return found.filter((each) => each.isValid).map((each) => each.text);
}

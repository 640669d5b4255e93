import { writeFileSync } from 'node:fs';
import { generate } from 'lean-qr';

const [width, height] = [640, 480];

/** Writes what a camera sees: one code after another for so many pictures each, then a grey wall, at ten pictures a second (YUV4MPEG2, 4:2:0). */
export function writeFilm(path: string, codes: readonly string[], picturesEach: number): void {
  const header = Buffer.from(`YUV4MPEG2 W${width} H${height} F10:1 Ip A1:1 C420jpeg\n`);
  const frame = Buffer.from('FRAME\n');
  const colour = Buffer.alloc((width * height) / 2, 128);
  const wall = Buffer.alloc(width * height, 150);
  const shots = [...codes.map(pictureOf), wall].flatMap((picture) => Array.from({ length: picturesEach }, () => picture));
  writeFileSync(path, Buffer.concat([header, ...shots.flatMap((picture) => [frame, picture, colour])]));
}

/** A QR code on a grey wall, six dots a module. */
function pictureOf(text: string): Buffer {
  const picture = Buffer.alloc(width * height, 150);
  const code = generate(text);
  const module = 6;
  const side = (code.size + 8) * module;
  const [left, top] = [Math.floor((width - side) / 2), Math.floor((height - side) / 2)];
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++)
      picture[(top + y) * width + left + x] = code.get(Math.floor(x / module) - 4, Math.floor(y / module) - 4) ? 25 : 235;
  return picture;
}

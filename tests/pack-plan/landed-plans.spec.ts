import { readFileSync, readdirSync } from 'node:fs';
import { wholePlan } from '#pack-plan';
import { missingInPrint, printedText } from '../support/printed-text.js';

const folder = 'tests/pack-plan/landed-plans';
const shapes = readdirSync(folder).filter((each) => each.endsWith('.json'));

/** One plan of each shape that was ever kept, as it was written then; released plans are never rewritten, so each has to be read for ever. */
describe.each(shapes)('a plan of the landed shape %s', (file) => {
  const written = JSON.parse(readFileSync(`${folder}/${file}`, 'utf8'));
  const context = { plan: wholePlan(written), revision: 'A' };

  it('prints every finding in the words with which it was released', () => {
    const said = written.findings.filter((each: any) => each.weight !== 'agrees' && each.section !== 'inputs');
    expect(said.length).toBeGreaterThan(3);
    expect(
      missingInPrint(
        context,
        said.map((each: any) => each.sentence),
      ),
    ).toEqual([]);
  });

  it('prints its carts, boxes, moves, hoists, rows and examinations', () => {
    const words = [
      ...written.carts.loads.flatMap((load: any) => [load.cart, load.hang, ...load.boxes.map((box: any) => box.serial)]),
      ...written.carts.moves.flatMap((move: any) => [move.box, move.from, move.to, move.why]),
      ...written.picks.hangs.flatMap((hang: any) => [hang.grid, ...hang.picks.map((pick: any) => pick.hole)]),
      ...(written.picks.hangs[0].runningOrder?.goingUp ?? []).map((step: any) => step.text),
      ...written.hardware.lines.map((line: any) => line.model),
      ...written.truck.trucks.flatMap((truck: any) => [truck.id, ...truck.loadingOrder]),
      ...written.due.items.map((item: any) => item.item),
      ...[written.hardware, written.truck, written.due].map((result) => result.caution),
      written.show.name,
      written.show.venue,
    ].filter((each) => each !== null);
    expect(words.length).toBeGreaterThan(60);
    expect(missingInPrint(context, words)).toEqual([]);
  });

  it('leaves no hole in the print', () => {
    expect(printedText(context).match(/.{0,60}(undefined|NaN|\[object|\bnull\b)/g)).toBeNull();
    expect(missingInPrint(context, ['Revision A'])).toEqual([]);
  });
});

import { readFileSync } from 'node:fs';
import { pointRows } from '#drawings';
import { liftMoments } from '#pack-plan';
import { demoTour } from '../support/demo-tour.js';
import { plannedShow } from '../support/planned-show.js';
import { valueOf } from '../support/arithmetic.js';

const page = readFileSync('tests/reference/demo-points-by-hand.md', 'utf8');
const lines = page.split('\n');
/** Half of the last digit that is written, and what the digits before it that were rounded may make. */
const lastDigit = (written: string): number => 10 ** -(written.split('.')[1]?.length ?? 0);
const cellsOf = (line: string): readonly string[] =>
  line
    .slice(1, -1)
    .split('|')
    .map((each) => each.trim());

/** Every table of bodies: rows of one table follow one another. */
const tables = page
  .split('| body |')
  .slice(1)
  .map((part) =>
    part
      .split('\n')
      .slice(
        2,
        part.split('\n').findIndex((each) => each.startsWith('| together')),
      )
      .map(cellsOf),
  );
const together = lines.filter((each) => each.startsWith('| together')).map(cellsOf);

describe('the point sheet of the demo, done by hand', () => {
  it('adds up line by line', () => {
    const sums = lines.flatMap((line) => /^[^|].*?: (.*) = (-?[\d.]+)$/.exec(line)?.slice(1) ?? []);
    expect(sums.length / 2).toBeGreaterThan(80);
    for (let at = 0; at < sums.length; at += 2) {
      const [written, value] = [sums[at]!, sums[at + 1]!];
      expect({ written, off: Math.abs(valueOf(written) - Number(value)) <= 0.51 * lastDigit(value) }).toEqual({ written, off: true });
    }
  });

  it('has tables whose bodies hang one below the other as the models are, and whose columns make their sums', () => {
    const { boxes, grids } = demoTour().catalogue;
    expect(tables).toHaveLength(6);
    tables.forEach((rows, number) => {
      const hang = demoTour().tour.shows[0]!.hangs[number < 3 ? 0 : 2]!;
      expect(rows).toHaveLength(hang.boxes.length + 1);
      rows.forEach((cells, index) => {
        const [angle, px, pz, cx, cz, kg, product] = cells.slice(1).map(Number) as [number, number, number, number, number, number, number];
        const [s, c] = [Math.sin((angle * Math.PI) / 180), Math.cos((angle * Math.PI) / 180)];
        const box = index === 0 ? null : boxes.find((each) => each.model === hang.boxes[index - 1]!.model)!;
        const { cgBehindMm: b } = box ?? grids[0]!;
        const below = box ? box.cgBelowMm : -grids[0]!.cgAboveMm;
        expect(Math.hypot(cx - (px - b * c - below * s), cz - (pz + b * s - below * c))).toBeLessThan(0.03);
        expect(product).toBeCloseTo((kg * cx) / 1000, 2);
        const next = rows[index + 1];
        if (next && box)
          expect(Math.hypot(Number(next[2]) - (px - box.frontHeightMm * s), Number(next[3]) - (pz - box.frontHeightMm * c))).toBeLessThan(
            0.03,
          );
        // Angles by the splays of the hang; one joint of the load that is swung back is closed.
        if (index > 0 && Math.abs(angle - Number(rows[index - 1]![1]) - hang.boxes[index - 1]!.splayDeg) > 1e-9)
          expect([number % 3, index, angle - Number(rows[index - 1]![1])]).toEqual([2, number < 3 ? 21 : 9, 0]);
      });
      const sum = (column: number) => rows.reduce((total, cells) => total + Number(cells[column]), 0);
      expect(sum(6)).toBeCloseTo(Number(together[number]![6]), 6);
      expect(sum(7)).toBeCloseTo(Number(together[number]![7]), 3);
    });
  });

  it('has the kick of a link that is drawn coming down, as the stages of the hang have it', () => {
    const part = page.split('## ').find((each) => each.startsWith('Centre: coming down'))!;
    const written = (label: string) => Number(new RegExp(`^${label}: .* = (-?[\\d.]+)$`, 'm').exec(part)![1]);
    const hang = plannedShow().picks.hangs[2]!;
    const stage = hang.stages.find((each) => each.name === 'Centre 9-12, coming down, rear link drawn')!;
    const pins = liftMoments(hang).find((each) => each.name === stage.name)!.joints[8]!.frontPinsN;
    expect(Math.abs(pins - written('Pulled at the front pins of joint 9'))).toBeLessThan(2);
    for (const { hole, reactionN } of stage.picks) {
      expect(Math.abs(reactionN - written(`Reaction at ${hole}`))).toBeLessThan(2);
      // It is not the worst of the hang.
      expect(hang.picks.find((each) => each.hole === hole)!.worst!.pointLoadN).toBeGreaterThan(written(`Point ${hole}`));
    }
  });

  it('is the point sheet', () => {
    const { picks } = plannedShow();
    const [head, ...rows] = pointRows(picks);
    const byHand = lines.filter((each) => /^\| (Main|Centre)/.test(each)).map(cellsOf);
    expect(byHand.map((cells) => cells[0])).toEqual(rows.map((row) => row[0]));
    byHand.forEach((cells, index) => {
      const of = (column: string) => rows[index]![head!.indexOf(column)] as number;
      const figures = ['x_mm', 'y_mm', 'rest_n', 'worst_n', 'dynamic_n', 'horizontal_n'].map(of);
      // A millimetre, and two newtons of what was rounded on the way.
      figures.forEach((figure, at) => expect(Math.abs(figure - Number(cells[at + 1]))).toBeLessThan(at < 2 ? 0.2 : 2));
      expect(of('worst_at')).toBe(cells[7]);
    });
    const truss = Number(/^Front truss.* = ([\d.]+)$/m.exec(page)![1]);
    expect(Math.abs(picks.site!.beams[0]!.worstDynamicN - truss)).toBeLessThan(10);
  });
});

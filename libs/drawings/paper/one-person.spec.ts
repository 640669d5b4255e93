import { node, renderMarkup } from '../tree/index.js';
import { onePersonLine, withOnePersonLine } from './one-person.js';

const time = { since: '2027-02-01T08:00:00Z', until: '2027-02-20T08:00:00Z', by: 'Ines Aldous', reason: 'the second officer is ill' };

describe('the line of one person', () => {
  it('stands on everything while it holds', () => {
    expect(onePersonLine([{ ...time, until: null }])).toBe(
      'One person only judges what is released, accepted and signed in this company since 2027-02-01: Ines Aldous, the second officer is ill. No second person has looked.',
    );
  });

  it('stands afterwards on what was released meanwhile, and on nothing else', () => {
    expect(onePersonLine([time], '2027-02-10T12:00:00Z')).toContain('this was not looked at anew');
    expect(onePersonLine([time], '2027-02-21T12:00:00Z')).toBeNull();
    expect(onePersonLine([time], '2027-01-31T12:00:00Z')).toBeNull();
    expect(onePersonLine([time])).toBeNull();
    expect(onePersonLine([])).toBeNull();
  });

  it('comes under the head of a sheet, once, and changes no drawing', () => {
    const sheet = node('section', { class: 'sheetpage' }, node('div', { class: 'top' }, 'head'), node('p', {}, 'rest'));
    expect(renderMarkup(withOnePersonLine(sheet, 'Alone.'))).toBe(
      '<section class="sheetpage"><div class="top">head</div><p class="stop">◐ Alone.</p><p>rest</p></section>',
    );
    const paged = node('section', { class: 'sheetpage numbered' }, node('table', {}));
    expect(renderMarkup(withOnePersonLine(paged, 'Alone.'))).toMatch(/^<section class="sheetpage numbered"><p/);
    const drawing = node('svg', {});
    expect(withOnePersonLine(drawing, 'Alone.')).toBe(drawing);
    expect(withOnePersonLine(sheet, null)).toBe(sheet);
  });
});

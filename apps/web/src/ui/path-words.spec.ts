import { pathInWords } from './path-words.js';

describe('where a fault is, in words', () => {
  it.each([
    ['tour.shows[0].hangs[0].boxes[0].model', 'show 1, hang 1, box 1, model'],
    ['catalogue.boxes[2].massKg', 'box 3, mass kg'],
    ['items[41].depot', 'item 42, depot'],
    ['depot', 'depot'],
    ['bodyHeightMm', 'body height mm'],
    ['[3]', '4'],
    ['tour', 'tour'],
  ])('%s is %s', (path, words) => expect(pathInWords(path)).toBe(words));
});

import { tour } from '#tour-file';
import { wholeValue } from '../../../../../../tests/support/whole-value.js';
import { changedShow, showOf, typedOfShow } from './changed-show.js';

const show = tour.shape.shows.element;

// The values are made from the schema: a field that is new there fails here until the form holds or keeps it.
describe('a show that is saved unchanged from its form', () => {
  const saved = (onFile: ReturnType<typeof show.parse>) => showOf(onFile, changedShow.parse(typedOfShow(onFile, '')));

  it.each(Array.from({ length: 8 }, (_, turn) => turn))('loses nothing of what a show may hold (%i)', (turn) => {
    const whole = show.parse(wholeValue(show, turn));
    expect(Object.keys(whole).sort()).toEqual(Object.keys(show.shape).sort());
    expect(saved(whole)).toEqual(whole);
  });

  it.each(Object.keys(show.shape).filter((key) => show.shape[key as 'outdoor'].safeParse(undefined).success))('adds no %s', (key) => {
    const { [key as 'outdoor']: _left, ...rest } = show.parse(wholeValue(show, 1));
    const whole = show.parse(rest);
    expect(saved(whole)).toEqual(whole);
  });
});

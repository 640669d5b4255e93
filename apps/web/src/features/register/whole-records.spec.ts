import { examination, loadRule, riggingSystem } from '#tour-file';
import { wholeValue } from '../../../../../tests/support/whole-value.js';
import { recordOf, typedOf } from './examined/examination-fields.js';
import { regimeFrom, regimeText } from './regime-text.js';
import { systemFrom, systemText } from './system-text.js';

const turns = Array.from({ length: 24 }, (_, turn) => turn);
/** As it is sent. */
const sent = (value: object): unknown => JSON.parse(JSON.stringify(value));
/** Every key of the schema's own object, whatever is nested. */
const keysOf = (schema: { shape: object }) => Object.keys(schema.shape).sort();

// The values are made from the schemas: a field that is new there fails here until its form holds it.
describe('a record that is saved unchanged from its form', () => {
  const rule = loadRule.omit({ unaccepted: true });
  it.each(turns)('loses nothing of a load rule with every section (%i)', (turn) => {
    const whole = rule.parse(wholeValue(rule, turn));
    expect(Object.keys(whole).sort()).toEqual(keysOf(rule));
    expect(sent(regimeFrom(regimeText(whole)))).toEqual(whole);
  });

  it.each(keysOf(rule).filter((key) => rule.shape[key as 'hoisting'].safeParse(undefined).success))(
    'adds nothing to a load rule without %s',
    (key) => {
      const { [key as 'hoisting']: _left, ...rest } = rule.parse(wholeValue(rule, 1));
      expect(sent(regimeFrom(regimeText(rest)))).toEqual(rest);
    },
  );

  it('keeps a semicolon in the name of a class of hoists and of an element', () => {
    const whole = rule.parse(wholeValue(rule, 2));
    const source = { source: 'a text', status: 'house rule' } as const;
    const named = {
      ...whole,
      hoistClasses: {
        ...source,
        classes: [
          { hoistClass: 'first;second; third', holdOverPersons: 'allowed', moveOverPersons: false, usableShareWithPersonsBelow: 0.5 },
        ],
      },
      useCases: {
        ...source,
        cases: [
          { useCase: 'hold; no. 2', people: 'held over', usableShare: 0.5, hoistClasses: ['first;second; third', 'X'] },
          { useCase: 'move', people: 'moved over', usableShare: 0.25 },
        ],
      },
      wear: { ...source, limits: [{ element: 'chain; links', lossShare: 0.1 }] },
    } as const;
    expect(sent(regimeFrom(regimeText(rule.parse(named))))).toEqual(named);
  });

  const system = riggingSystem.omit({ approved: true });
  it.each(turns)('loses nothing of a rigging system with every field (%i)', (turn) => {
    const whole = system.parse(wholeValue(system, turn));
    expect(Object.keys(whole).sort()).toEqual(keysOf(system));
    expect(sent(systemFrom(systemText(whole), false))).toEqual(whole);
  });

  it.each(keysOf(system).filter((key) => system.shape[key as 'closing'].safeParse(undefined).success))(
    'adds nothing to a rigging system without %s',
    (key) => {
      const { [key as 'closing']: _left, ...rest } = system.parse(wholeValue(system, 1));
      expect(sent(systemFrom(systemText(rest), false))).toEqual(rest);
    },
  );

  it.each(turns)('loses nothing of an examination with every field of its report (%i)', (turn) => {
    const whole = wholeValue(examination, turn) as Parameters<typeof typedOf>[0] & object;
    const defects = (whole.particulars?.defects ?? []).map((each, at) => ({ id: String(at), ...each }));
    const typed = defects as unknown as Parameters<typeof recordOf>[1];
    expect(sent(recordOf(typedOf(whole), typed, whole.reportFile, whole))).toEqual(whole);
  });
});

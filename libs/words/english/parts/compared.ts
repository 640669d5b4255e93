import type { SteelLine } from '#trade';
import { type ComparisonFactByCode, type Words, tell } from '../../table/index.js';
import { degrees, number } from './format.js';

const ofLine: Record<SteelLine, string> = {
  pick: '',
  'bridle leg': ' of the bridle leg that carries most',
  'pull-back': ' of the pull-back',
  secondary: '',
};
const secondary = (line: SteelLine): string => (line === 'secondary' ? 'secondary ' : '');

export const parts: Words['parts'] = {
  hoist: ({ model }) => `hoist ${model}`,
  'hoist-while-lifting': ({ model, hole }) => `hoist ${model} at hole ${hole} while lifting`,
  'hoist-class': ({ model }) => `class of hoist ${model}`,
  sling: ({ model, line }) => `${secondary(line)}sling ${model}${ofLine[line]}`,
  shackle: ({ model, line }) => `${secondary(line)}shackle ${model}${ofLine[line]}`,
  'shackle-side-load': ({ line }) => `side load of the shackles${ofLine[line]}`,
  'leg-angle': () => 'angle of the bridle legs',
  grid: ({ model, hole }) => `grid ${model} at hole ${hole}`,
  structure: ({ point }) =>
    point === undefined ? 'structure above this point' : `structure above the point ${point}, which several picks share`,
  'leg-anchor': ({ leg }) => `structure at leg ${leg} of the bridle`,
  anchor: () => 'anchor of the pull-back',
  beam: ({ beam }) => `${beam} with everything that hangs on it`,
  'rear-link': ({ model }) => `rear link of ${model}`,
  'front-pin': ({ model }) => `front pin of ${model}`,
  'as-called': ({ name }) => name,
};

export const factors: Words['factors'] = {
  coefficient: ({ personsBelow, nobodyBelow }) => `persons below: coefficient ${personsBelow} instead of ${nobodyBelow}`,
  'persons-below': () => 'persons below',
  'side-load': ({ angleDeg }) => `side load at ${Math.round(angleDeg * 10) / 10}°`,
  'one-pick-slack': () => 'while the other pick is slack',
  'hoist-class': ({ hoistClass }) => `persons below a hoist of class ${hoistClass}`,
};

export const stages: Words['stages'] = {
  'at-trim': () => 'at trim',
  'line-taken-up': () => 'at trim, the pull-back taken up',
  'other-slack': () => 'with the other pick slack',
  lifting: ({ load, name = load, moment }) => `${name}, ${moment}`,
};

type Fact = ComparisonFactByCode;
const what = (fact: Fact): string => tell(parts, fact.part);
const amount = (value: number, { unit }: Fact): string => `${number(value)} ${unit}`;

function allowed(fact: Fact): string {
  const factored = fact.factors.map((each) => `${Number(each.factor.toFixed(4))}, ${tell(factors, each.cause)}`).join(' × ');
  const reduced = fact.factors.length === 0 ? '' : ` (${fact.rated!.value} ${fact.rated!.unit} × ${factored})`;
  return `${amount(fact.limit!, fact)}${reduced}`;
}

/** Where a figure is the worst of all stages it says at which. */
function at(fact: Fact, sentence: string): string {
  return fact.worstAt
    ? `${sentence} (${fact.worstAt.position === undefined ? '' : `joint above box ${fact.worstAt.position}, `}${tell(stages, fact.worstAt.stage)}).`
    : `${sentence}.`;
}

const model = (fact: Fact): string => ('model' in fact.part ? fact.part.model : '');
const hoist = (fact: Fact): string => `${model(fact)}, class ${fact.use?.hoistClass}`;
const flattest = (fact: Fact): string => `The flattest leg stands at ${degrees(fact.value)} from the horizontal`;
const lineOf = ({ part }: Fact): string => ('line' in part ? ofLine[part.line] : '');

export const comparisons: Words['comparisons'] = {
  within: (fact) =>
    at(fact, `${what(fact)}: ${amount(fact.value, fact)} of ${allowed(fact)}, ${Math.round((1 - fact.value / fact.limit!) * 100)} % left`),
  over: (fact) => at(fact, `${what(fact)} would carry ${amount(fact.value, fact)}, more than ${allowed(fact)}. Do not lift like this`),
  'would-be-pushed': (fact) =>
    at(fact, `${what(fact)} would be pushed with ${amount(-fact.value, fact)} and cannot push. Do not lift like this`),
  'no-rated-value': (fact) =>
    at(fact, `No rated value on file for ${what(fact)}: ${amount(fact.value, fact)} cannot be compared. Ask the maker`),
  'side-load-forbidden': (fact) =>
    `${what(fact)} is pulled aside by ${Math.round(fact.value * 10) / 10}°, which the regime does not permit.`,
  'side-load-without-rule': (fact) =>
    `The shackles${lineOf(fact)} are pulled aside by ${degrees(fact.value)}, and the regime has no rule for side load. Ask the maker.`,
  'legs-steep-enough': (fact) => `${flattest(fact)}; the regime asks for ${fact.limit}° or more.`,
  'legs-too-flat': (fact) => `${flattest(fact)}; the regime asks for ${fact.limit}° or more.`,
  'legs-without-rule': (fact) => `${flattest(fact)}, and the regime has no rule for it.`,
  'class-without-rule': () => 'The regime has no rule on what a class of hoist may do over people.',
  'class-not-on-file': (fact) => `${model(fact)} has no class on file: whether it may hold over people is not known.`,
  'class-not-in-rule': (fact) =>
    `${model(fact)} has the class ${fact.use?.hoistClass}, of which the regime says nothing: whether it may hold over people is not known.`,
  'class-must-not-move': (fact) => `${hoist(fact)}, must not move a load over people. Clear the area, or take another hoist.`,
  'class-must-not-hold': (fact) => `${hoist(fact)}, must not hold a load over people.`,
  'class-wants-secondary': (fact) => `${hoist(fact)}, holds over people only with a secondary suspension, and the hang has none.`,
  'class-may-hold': (fact) =>
    `${hoist(fact)}: may hold over people${fact.use?.needsSecondary ? ' with the secondary suspension of this hang' : ''}${fact.use?.movesOverPersons ? ' and move over them' : ''}.`,
};

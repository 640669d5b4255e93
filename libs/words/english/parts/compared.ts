import type { BelowPublished, SteelLine, UsePeople } from '#trade';
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
  'use-case': ({ model }) => `use case of hoist ${model}`,
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
  'use-case': ({ useCase }) => `use case ${useCase}`,
  'rated-for': ({ kind, name, already, asked }) =>
    `the rated load on file is for the ${kind} ${name} already, ${already} of the maker’s; ${asked} is asked`,
  'hoist-class': ({ hoistClass }) => `persons below a hoist of class ${hoistClass}`,
};

const share = (value: number): string => String(Number(value.toFixed(4)));
const lessStrict = (what: string, { source }: BelowPublished): string => `Less strict than published: the load rule ${what} (${source}).`;

export const belowPublished: Words['belowPublished'] = {
  share: (fact) =>
    lessStrict(`leaves ${share(fact.figure)} of a rated load with persons below, where at most ${fact.published} is published`, fact),
  element: (fact) =>
    lessStrict(
      `leaves ${share(fact.figure)} of the rated load of ${fact.element} with persons below, where at most ${fact.published} is published`,
      fact,
    ),
  legs: (fact) =>
    lessStrict(
      `lets bridle legs stand at ${degrees(fact.figure)} from the horizontal, where angles near ${degrees(fact.published)} are called extremely hazardous`,
      fact,
    ),
};

export const stages: Words['stages'] = {
  'at-trim': () => 'at trim',
  'line-half-taken-up': () => 'at trim, the pull-back half taken up',
  'line-taken-up': () => 'at trim, the pull-back taken up',
  'other-slack': () => 'with the other pick slack',
  lifting: ({ load, name = load, moment }) => `${name}, ${moment}`,
  'coming-down': ({ name, moment }) => `${name}, coming down, ${moment}`,
};

type Fact = ComparisonFactByCode;
const what = (fact: Fact): string => tell(parts, fact.part);
const amount = (value: number, { unit }: Fact): string => `${number(value)} ${unit}`;

function allowed(fact: Fact): string {
  const factored = fact.factors.map((each) => `${share(each.factor)}, ${tell(factors, each.cause)}`).join(' × ');
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

const people: Readonly<Record<UsePeople, string>> = {
  'nobody below': 'nobody below',
  'held over': 'loads held over people',
  'moved over': 'loads moved over people',
};
const caseOf = (fact: Fact): string => fact.use?.useCase?.name ?? 'none';
const peopleOf = (fact: Fact, of: 'people' | 'casePeople'): string => people[fact.use?.useCase?.[of] ?? 'held over'];
const classesOf = (fact: Fact): string => (fact.use?.useCase?.classes ?? []).join(', ');
const onFile = (fact: Fact): string => fact.use?.hoistClass ?? 'none on file';

/** What the use case of a show asks of a hoist: only ever what was compared with what. */
const useCases = {
  'use-case-without-rule': (fact: Fact) => `The show names the use case ${caseOf(fact)}, and its regime has no use cases.`,
  'use-case-not-in-rule': (fact: Fact) =>
    fact.use?.useCase?.name
      ? `The show names the use case ${caseOf(fact)}, of which its regime says nothing.`
      : `The regime has no use case for this show: ${peopleOf(fact, 'people')}.`,
  'use-case-not-said': (fact: Fact) =>
    `Several use cases of the regime are for ${peopleOf(fact, 'people')}: ${(fact.use?.useCase?.several ?? []).join(', ')}. The show names none; the least share of them is compared with.`,
  'use-case-other-people': (fact: Fact) =>
    `The show names the use case ${caseOf(fact)}, which is for ${peopleOf(fact, 'casePeople')}; on file of the show is: ${peopleOf(fact, 'people')}. Put one of them right.`,
  'use-case-wants-class': (fact: Fact) =>
    `${model(fact)}, class ${onFile(fact)}: the use case ${caseOf(fact)} asks for ${classesOf(fact)}. Take another hoist.`,
  'use-case-class-unknown': (fact: Fact) =>
    `${model(fact)} has no class on file; the use case ${caseOf(fact)} asks for ${classesOf(fact)}: it cannot be compared.`,
  'rated-for-without-rule': (fact: Fact) =>
    `${model(fact)} is rated for the use case ${fact.use?.useCase?.ratedForUseCase}, of which the regime says nothing: what is reduced in its rated load already is not known, and it is reduced once more.`,
  'use-case-as-asked': (fact: Fact) =>
    `${model(fact)}, class ${onFile(fact)}: compared with the use case ${caseOf(fact)}, ${peopleOf(fact, 'people')}${classesOf(fact) === '' ? '' : `, which asks for ${classesOf(fact)}`}.`,
} satisfies Partial<Words['comparisons']>;

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
  'class-without-rule': () => 'The regime has no rule on classes of hoists over people: nothing to compare with.',
  'class-not-on-file': (fact) => `${model(fact)} has no class on file: it cannot be compared with what the regime asks over people.`,
  'class-not-in-rule': (fact) =>
    `${model(fact)} has the class ${fact.use?.hoistClass}, of which the regime says nothing: it cannot be compared with what is asked over people.`,
  'class-must-not-move': (fact) =>
    `${hoist(fact)}: by the regime loads are not moved over people with this class. Clear the area, or take another hoist.`,
  'class-must-not-hold': (fact) => `${hoist(fact)}: by the regime loads are not held over people with this class.`,
  'class-wants-secondary': (fact) => `${hoist(fact)}: the regime asks for a secondary suspension over people, and the hang has none.`,
  'class-may-hold': (fact) =>
    `${hoist(fact)}: compared with what the regime asks for loads ${fact.use?.movesOverPersons ? 'held and moved' : 'held'} over people${fact.use?.needsSecondary ? ', with the secondary suspension of this hang' : ''}.`,
  ...useCases,
};

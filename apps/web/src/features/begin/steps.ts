/** What a house has of what a first plan is made from. */
export interface Counts {
  readonly officers: number;
  readonly warehouse: number;
  readonly examinationRules: number;
  readonly loadRules: number;
  readonly systems: number;
  readonly approvedSystems: number;
  readonly models: readonly { readonly kind: string; readonly count: number }[];
  readonly items: readonly { readonly kind: string; readonly count: number }[];
  /** Proposals that the safety officer has not answered. */
  readonly waiting: number;
  readonly tours: number;
  readonly hangs: number;
  readonly plans: number;
}

export interface Step {
  readonly title: string;
  readonly isDone: boolean;
  readonly stands: string;
  /** Who may do it. */
  readonly by: string;
  readonly ways: readonly { readonly to: string; readonly word: string }[];
}

const countOf = (all: Counts['models'], kind: string): number => all.find((each) => each.kind === kind)?.count ?? 0;
const missingOf = (all: Counts['models'], kinds: readonly string[]): string[] => kinds.filter((kind) => countOf(all, kind) === 0);

const modelKinds = ['pins', 'boxes', 'grids', 'hoists', 'shackles', 'carts', 'cases', 'trucks'];
const itemKinds = ['box', 'grid', 'hoist', 'shackle', 'pin', 'cart', 'case', 'truck'];

const stands = (all: Counts['models'], missing: readonly string[]): string => {
  const held = all.filter((each) => each.count > 0).map((each) => `${each.count} ${each.kind}`);
  const there = held.length === 0 ? 'Nothing is on file.' : `On file: ${held.join(', ')}.`;
  return missing.length === 0 ? there : `${there} Still without: ${missing.join(', ')}.`;
};

/** The way to a first plan, in the order in which each step needs the ones before it. */
export const stepsOf = (counts: Counts): readonly Step[] => [...stepsOfRules(counts), ...stepsOfKit(counts), ...stepsOfTour(counts)];

function stepsOfRules(counts: Counts): Step[] {
  return [
    {
      title: 'People',
      isDone: counts.officers > 0 && counts.warehouse > 0,
      stands: [
        counts.officers > 0
          ? 'The safety officer has signed in.'
          : 'The safety officer has not signed in yet: the first password holds for one day.',
        counts.warehouse > 0 ? 'The warehouse has somebody.' : 'Nobody of the warehouse is on file.',
      ].join(' '),
      by: 'system tech',
      ways: [{ to: '/people', word: 'Add people' }],
    },
    {
      title: 'A load rule',
      isDone: counts.loadRules > 0,
      stands:
        counts.loadRules > 0
          ? `${counts.loadRules} on file.`
          : 'None is on file. A tour needs one: the factor on point loads and what may be used of a rated load.',
      by: 'system tech or safety officer',
      ways: [{ to: '/rules', word: 'Make a load rule' }],
    },
    {
      title: 'Examination rules',
      isDone: counts.examinationRules > 0,
      stands:
        counts.examinationRules > 0
          ? `${counts.examinationRules} on file.`
          : 'None is on file: nothing runs out until there is one. There are sets to begin with, each rule with its source.',
      by: 'safety officer',
      ways: [{ to: '/rules', word: 'Choose or make them' }],
    },
    {
      title: 'A rigging system',
      isDone: counts.systems > 0 && counts.approvedSystems === counts.systems,
      stands:
        counts.systems === 0
          ? 'None is on file. Every model of a box and a grid belongs to one; it is written from the maker’s manual.'
          : `${counts.systems} on file, ${counts.approvedSystems} approved by the safety officer. One that is not approved prints “example, not for use”.`,
      by: 'system tech or safety officer; approved by the safety officer',
      ways: [{ to: '/rules', word: 'Make or approve one' }],
    },
  ];
}

function stepsOfKit(counts: Counts): Step[] {
  const models = missingOf(counts.models, modelKinds);
  const items = missingOf(counts.items, itemKinds);
  return [
    {
      title: 'Models',
      isDone: models.length === 0,
      stands: stands(counts.models, models),
      by: 'warehouse or system tech',
      ways: [
        { to: '/register', word: 'One by one, in the register' },
        { to: '/import', word: 'From CSV files' },
      ],
    },
    {
      title: 'Items',
      isDone: items.length === 0,
      stands: stands(counts.items, items),
      by: 'warehouse or system tech',
      ways: [
        { to: '/import', word: 'From CSV files' },
        { to: '/register', word: 'One by one, in the register' },
      ],
    },
    {
      title: 'What waits for the safety officer',
      isDone: counts.waiting === 0,
      stands:
        counts.waiting === 0
          ? 'Nothing waits.'
          : `${counts.waiting} ${counts.waiting === 1 ? 'thing waits' : 'things wait'}. Rules, models, items and records that others brought are used once the safety officer accepts them.`,
      by: 'safety officer',
      ways: [{ to: '/waiting', word: 'Look at what waits' }],
    },
  ];
}

function stepsOfTour(counts: Counts): Step[] {
  return [
    {
      title: 'A tour with its first show',
      isDone: counts.tours > 0,
      stands: counts.tours > 0 ? `${counts.tours} on file.` : 'No tour yet.',
      by: 'system tech',
      ways: [{ to: '/tours', word: 'Make a tour' }],
    },
    {
      title: 'Hangs, trucks and freight',
      isDone: counts.hangs > 0,
      stands:
        counts.hangs > 0
          ? `${counts.hangs} ${counts.hangs === 1 ? 'hang has' : 'hangs have'} boxes.`
          : 'No hang has boxes yet. Tick the trucks and cases of the tour there as well.',
      by: 'system tech',
      ways: [{ to: '/tours', word: 'Open the tour, then its show' }],
    },
    {
      title: 'A plan',
      isDone: counts.plans > 0,
      stands: counts.plans > 0 ? `${counts.plans} made.` : 'Open the show and press “Make the plan”.',
      by: 'warehouse or system tech',
      ways: [{ to: '/tours', word: 'Open the show' }],
    },
  ];
}

import type { RegimeText } from '../register/regime-text.js';

const head: RegimeText['head'] = {
  id: '',
  jurisdiction: '',
  title: '',
  edition: '',
  source: '',
  status: 'house rule',
  dynamicFactor: '',
  usableShareWithPersonsBelow: '',
};

/** What a new load rule begins with: nothing, or one section that stands in a published text. */
export const regimeStarts: readonly { readonly title: string; readonly text: RegimeText }[] = [
  { title: 'nothing filled in', text: { head, sections: {} } },
  {
    title: 'working coefficients of DGUV Information 215-313, section 2.1, table 1',
    text: {
      head,
      sections: {
        workingCoefficients: {
          source: 'DGUV Information 215-313 sec. 2.1, Table 1',
          status: 'found',
          values: [
            'steel wire; 5; 10',
            'round sling with steel core; 5; 10',
            'textile; 7; 14',
            'chain; 4; 8',
            'shackle; 5; 10',
            'other metal; 4; 8',
          ].join('\n'),
        },
      },
    },
  },
];

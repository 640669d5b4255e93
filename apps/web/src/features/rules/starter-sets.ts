import type { ExaminationRule } from '#tour-file';

/** Examination rules of a jurisdiction to begin with, and what they leave open. Nothing holds until the safety officer puts it on file. */
export interface StarterSet {
  readonly title: string;
  readonly rules: readonly ExaminationRule[];
  readonly open: readonly string[];
}

/** Both were read in the text; the last paragraphs of the list were not, and say so where they are asked for. */
const lolerReport = {
  mayExamine: ['competent person'],
  record: { list: 'LOLER 1998 Schedule 1' as const, source: 'LOLER 1998 Schedule 1', status: 'found' as const },
  retention: {
    ...{ atLeast: 'P2Y', untilNextReport: true },
    ...{
      source: 'LOLER 1998 reg. 11: a report under reg. 9(3) until the next one or for two years, whichever is later',
      status: 'found' as const,
    },
  },
};

/**
 * Only what was read: `found` where the text of the law or rule itself was, `house rule` where it is a reading of it, or where only a copy by somebody
 * else was seen: the company decides whether it holds.
 */
export const starterSets: readonly StarterSet[] = [
  {
    title: 'United Kingdom: LOLER 1998',
    rules: [
      {
        jurisdiction: 'GB',
        kinds: ['shackle', 'sling'],
        intervals: ['P6M'],
        who: 'competent person',
        ...lolerReport,
        source: 'LOLER 1998 reg. 9(3)(a)(i): accessories for lifting',
        status: 'found',
      },
      {
        jurisdiction: 'GB',
        kinds: ['hoist'],
        intervals: ['P12M'],
        who: 'competent person',
        ...lolerReport,
        source: 'LOLER 1998 reg. 9(3)(a)(ii): other lifting equipment',
        status: 'found',
      },
      {
        jurisdiction: 'GB',
        kinds: ['grid', 'pin'],
        intervals: ['P6M'],
        who: 'competent person',
        ...lolerReport,
        source: 'LOLER 1998 reg. 2 and 9(3)(a)(i), grids and pins read as accessories for lifting; ask the examiner',
        status: 'house rule',
      },
    ],
    open: [
      'An examination scheme (reg. 9(3)(a)(iii)) takes the place of these intervals: write it with the item.',
      'Equipment for lifting persons: every 6 months, whatever it is.',
    ],
  },
  {
    title: 'Germany: DGUV Vorschrift 54 and 17, BetrSichV',
    rules: [
      {
        jurisdiction: 'DE',
        kinds: ['hoist'],
        intervals: ['P1Y', 'P4Y'],
        who: 'Sachkundiger yearly, Sachverständiger every four years',
        source: 'DGUV Vorschrift 54 § 23 (1)(2); DGUV Vorschrift 17 § 34 (1)(2); BetrSichV Annex 3 sec. 3 Table 1',
        status: 'found',
      },
    ],
    open: [
      'Shackles, slings, grids and pins: no interval was read in the text of a law or rule. Write the one that your company works by.',
      'Flying equipment for persons: before each use, visually and with a moving load (DGUV Vorschrift 17 § 34 (3)).',
    ],
  },
  {
    title: 'United States: ASME B30, normal service',
    rules: [
      {
        jurisdiction: 'US',
        kinds: ['shackle'],
        intervals: ['P1Y'],
        who: 'designated person',
        source: 'ASME B30.26 26-1.8.3, normal service; seen in a copy by others, compare it with the standard',
        status: 'house rule',
      },
      {
        jurisdiction: 'US',
        kinds: ['hoist'],
        intervals: ['P1Y'],
        who: 'designated person',
        source: 'ASME B30.16 16-2.1.3, normal service; seen in a copy by others, compare it with the standard',
        status: 'house rule',
      },
    ],
    open: [
      'Heavy service: hoists every 6 months, severe: every 3 months (as quoted from ASME B30.16 16-2.1.3).',
      'Each day or shift before use, and monthly for hoists: frequent inspections are not kept here.',
      'Slings and grids: no interval was read in the text of a rule. Write the one that your company works by.',
    ],
  },
];

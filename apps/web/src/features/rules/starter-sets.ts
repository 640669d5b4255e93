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

const lifting = ['hoist', 'grid', 'frame', 'cell', 'shackle', 'sling', 'pin'] satisfies ExaminationRule['kinds'];

const germanRecords = {
  retention: {
    ...{
      whileInUse: true,
      source: 'BetrSichV Annex 3 sec. 3 no. 3.3: records for event equipment over the whole period of use',
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
        kinds: ['grid', 'frame', 'cell', 'pin'],
        intervals: ['P6M'],
        who: 'competent person',
        ...lolerReport,
        source: 'LOLER 1998 reg. 2 and 9(3)(a)(i), grids, frames, load cells and pins read as accessories for lifting; ask the examiner',
        status: 'house rule',
      },
      {
        jurisdiction: 'GB',
        kinds: lifting,
        intervals: [],
        basis: 'after an event',
        who: 'competent person',
        ...lolerReport,
        source: 'LOLER 1998 reg. 9(3)(a)(iv): after exceptional circumstances',
        status: 'found',
      },
      {
        jurisdiction: 'GB',
        kinds: ['hoist', 'grid', 'frame'],
        intervals: [],
        basis: 'after installation',
        who: 'competent person',
        mayExamine: ['competent person'],
        record: lolerReport.record,
        retention: {
          whileInUse: true,
          source: 'LOLER 1998 reg. 11: a report under reg. 9(2) while it is used at that place',
          status: 'found',
        },
        source: 'LOLER 1998 reg. 9(2): after installation and after assembly at each new site, where safety depends on it',
        status: 'found',
      },
    ],
    open: [
      'An examination scheme (reg. 9(3)(a)(iii)) takes the place of these intervals: write it with the item.',
      'Equipment for lifting persons: every 6 months, whatever it is.',
      'Before first use, unless new with a declaration of conformity not older than 12 months (reg. 9(1) and (4)): an item without a record or declaration is barred.',
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
        ...germanRecords,
        source: 'DGUV Vorschrift 54 § 23 (1)(2); DGUV Vorschrift 17 § 34 (1)(2); BetrSichV Annex 3 sec. 3 Table 1',
        status: 'found',
      },
      {
        jurisdiction: 'DE',
        kinds: ['hoist'],
        intervals: [],
        basis: 'after an event',
        who: 'Prüfsachverständiger',
        mayExamine: ['Prüfsachverständiger'],
        ...germanRecords,
        source: 'BetrSichV Annex 3 sec. 3 no. 3.2: at once after an exceptional event or a notifiable change',
        status: 'found',
      },
    ],
    open: [
      'Shackles, slings, grids, frames, load cells and pins: no interval was read in the text of a law or rule. Write the one that your company works by.',
      'Hoists before first use and after substantial change (DGUV Vorschrift 54 § 23 (1)): an item without a record is barred.',
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
        kinds: ['shackle', 'pin'],
        check: 'pre-use',
        intervals: [],
        basis: 'before use',
        who: 'user or designated person',
        source:
          'ASME B30.26 26-1.8.2: each day or shift before use, no record asked for; seen in a copy by others, compare it with the standard',
        status: 'house rule',
      },
      {
        jurisdiction: 'US',
        kinds: ['sling'],
        check: 'pre-use',
        intervals: [],
        basis: 'before use',
        who: 'competent person',
        source: '29 CFR 1910.184(d): each day before use',
        status: 'found',
      },
      {
        jurisdiction: 'US',
        kinds: ['hoist'],
        check: 'pre-use',
        intervals: ['P1M'],
        who: 'operator or designated person',
        source: 'ASME B30.16 16-2.1.2, frequent inspection in normal service; seen in a copy by others, compare it with the standard',
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
      'A hoist idle for more than a month is inspected as frequently, idle for more than a year as periodically, before use (seen in a copy by others).',
      'Slings, grids, frames and load cells: no interval was read in the text of a rule. Write the one that your company works by.',
    ],
  },
  {
    title: 'Australia: AS 1353.1, AS 4497.1, AS 4991',
    rules: [
      {
        jurisdiction: 'AU',
        kinds: ['sling'],
        intervals: ['P3M'],
        source: 'AS 1353.1 and AS 4497.1, flat and round textile slings; seen in a copy by others, compare it with the standard',
        status: 'house rule',
      },
      {
        jurisdiction: 'AU',
        kinds: ['grid'],
        intervals: ['P12M'],
        source: 'AS 4991-2004, lifting devices such as spreaders and grids; seen in a copy by others, compare it with the standard',
        status: 'house rule',
      },
    ],
    open: [
      'Chain slings go by lifts a week (AS 3775.1-2014, from a copy by others: 1 to 5 every 12 months, 6 to 25 every 6, 26 to 200 every 3, 201 and more every month).',
      'Hoists, shackles, frames, load cells and pins: no interval was read in the text of a rule. Write the one that your company works by.',
    ],
  },
];

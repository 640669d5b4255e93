import type { LoadRule } from '#tour-file';

type HeadKey = 'id' | 'jurisdiction' | 'title' | 'edition' | 'source' | 'status' | 'dynamicFactor' | 'usableShareWithPersonsBelow';
type SectionKey = Exclude<keyof LoadRule, HeadKey | 'unaccepted'>;

/** A regime as a form holds it: its values as lines of words and figures. */
export interface RegimeText {
  readonly head: Record<HeadKey, string>;
  readonly sections: Partial<Record<SectionKey, { readonly source: string; readonly status: string; readonly values: string }>>;
}

interface Section {
  readonly key: SectionKey;
  readonly title: string;
  readonly hint: string;
  readonly write: (rule: LoadRule) => string | undefined;
  /** What the lines say; figures that are none stay text, so that the refusal names them. */
  readonly read: (lines: readonly string[]) => object;
}

const figure = (text: string | undefined): number | string =>
  text !== undefined && text.trim() !== '' && Number.isFinite(Number(text)) ? Number(text) : (text ?? '');
const parts = (line: string): string[] => line.split(';').map((each) => each.trim());
/** A name, which may hold semicolons of its own, and the `count` parts after it. */
function namedParts(line: string, count: number): string[] {
  const all = line.split(';');
  const nameEnd = Math.max(1, all.length - count);
  return [all.slice(0, nameEnd).join(';'), ...all.slice(nameEnd)].map((each) => each.trim());
}

/** A case with the classes that lines of it ask for; the people in the middle tell the name, which may hold semicolons, from the class. */
function casesOf(lines: readonly string[]): object[] {
  const cases = new Map<string, { useCase: string; people: string; usableShare: number | string; hoistClasses: string[] | undefined }>();
  for (const line of lines) {
    const [, useCase, people, share, hoistClass] = /^(.*?); *(nobody below|held over|moved over) *;([^;]*)(?:;(.*))?$/.exec(line) ?? [];
    const [named = '', others = ''] = line.split(';');
    const read = { useCase: (useCase ?? named).trim(), people: people ?? others.trim(), usableShare: figure(share?.trim()) };
    const key = JSON.stringify(read);
    const known = cases.get(key) ?? { ...read, hoistClasses: undefined };
    cases.set(key, hoistClass === undefined ? known : { ...known, hoistClasses: [...(known.hoistClasses ?? []), hoistClass.trim()] });
  }
  return [...cases.values()];
}

export const regimeSections: readonly Section[] = [
  {
    key: 'hoisting',
    title: 'Class of hoisting, in place of the factor',
    hint: 'Least factor; more for each m/s; speed in m/s',
    write: ({ hoisting }) => hoisting && `${hoisting.least}; ${hoisting.perSpeedSPerM}; ${hoisting.speedMps}`,
    read: ([line = '']) => ({ least: figure(parts(line)[0]), perSpeedSPerM: figure(parts(line)[1]), speedMps: figure(parts(line)[2]) }),
  },
  {
    key: 'workingCoefficients',
    title: 'Working coefficients',
    hint: 'A line each: element; nobody below; persons below',
    write: ({ workingCoefficients }) =>
      workingCoefficients?.elements.map((each) => `${each.element}; ${each.nobodyBelow}; ${each.personsBelow}`).join('\n'),
    read: (lines) => ({
      elements: lines
        .map(parts)
        .map(([element, nobody, persons]) => ({ element, nobodyBelow: figure(nobody), personsBelow: figure(persons) })),
    }),
  },
  {
    key: 'sideLoad',
    title: 'Side load of shackles',
    hint: 'A line each: up to degrees; usable share',
    write: ({ sideLoad }) => sideLoad?.bands.map((each) => `${each.upToDeg}; ${each.share}`).join('\n'),
    read: (lines) => ({ bands: lines.map(parts).map(([upTo, share]) => ({ upToDeg: figure(upTo), share: figure(share) })) }),
  },
  {
    key: 'legAngle',
    title: 'Angle of bridle legs',
    hint: 'Least degrees from the horizontal',
    write: ({ legAngle }) => legAngle && String(legAngle.leastFromHorizontalDeg),
    read: ([line]) => ({ leastFromHorizontalDeg: figure(line) }),
  },
  {
    key: 'hoistClasses',
    title: 'Classes of hoists',
    hint: 'A line each: class; hold over people (allowed, with secondary suspension, not allowed); move over people (yes, no); usable share',
    write: ({ hoistClasses }) =>
      hoistClasses?.classes
        .map(
          (each) =>
            `${each.hoistClass}; ${each.holdOverPersons}; ${each.moveOverPersons ? 'yes' : 'no'}; ${each.usableShareWithPersonsBelow}`,
        )
        .join('\n'),
    read: (lines) => ({
      classes: lines
        .map((line) => namedParts(line, 3))
        .map(([hoistClass, holdOverPersons, move, share]) => ({
          hoistClass,
          holdOverPersons,
          moveOverPersons: move === 'yes' ? true : move === 'no' ? false : move,
          usableShareWithPersonsBelow: figure(share),
        })),
    }),
  },
  {
    key: 'useCases',
    title: 'Use cases of hoists',
    hint: 'A line each: use case; nobody below, held over or moved over; usable share; class asked for, where one is (a line for each class)',
    write: ({ useCases }) =>
      useCases?.cases
        .flatMap(({ useCase, people, usableShare, hoistClasses }) => {
          const line = `${useCase}; ${people}; ${usableShare}`;
          return hoistClasses?.map((each) => `${line}; ${each}`) ?? [line];
        })
        .join('\n'),
    read: (lines) => ({ cases: casesOf(lines) }),
  },
  {
    key: 'secondarySuspension',
    title: 'Secondary suspension whenever persons are below',
    hint: 'yes or no',
    write: ({ secondarySuspension }) => secondarySuspension && (secondarySuspension.whenPersonsBelow ? 'yes' : 'no'),
    read: ([line]) => ({ whenPersonsBelow: line === 'yes' ? true : line === 'no' ? false : line }),
  },
  {
    key: 'reserve',
    title: 'Reserve of each pick',
    hint: 'Share of the weight that each of two picks keeps',
    write: ({ reserve }) => reserve && String(reserve.share),
    read: ([line]) => ({ share: figure(line) }),
  },
  {
    key: 'onePickSlack',
    title: 'One of two picks gone slack',
    hint: 'Share of its rated load that each line may then carry',
    write: ({ onePickSlack }) => onePickSlack && String(onePickSlack.usableShare),
    read: ([line]) => ({ usableShare: figure(line) }),
  },
  {
    key: 'reading',
    title: 'Load cells',
    hint: 'Share by which a reading may differ',
    write: ({ reading }) => reading && String(reading.toleranceShare),
    read: ([line]) => ({ toleranceShare: figure(line) }),
  },
  {
    key: 'wear',
    title: 'Wear: taken out of use',
    hint: 'A line each: element; share of the dimension lost',
    write: ({ wear }) => wear?.limits.map((each) => `${each.element}; ${each.lossShare}`).join('\n'),
    read: (lines) => ({
      limits: lines.map((line) => namedParts(line, 1)).map(([element, loss]) => ({ element, lossShare: figure(loss) })),
    }),
  },
];

export function regimeText(rule: LoadRule): RegimeText {
  return {
    head: {
      id: rule.id,
      jurisdiction: rule.jurisdiction,
      title: rule.title,
      edition: rule.edition ?? '',
      source: rule.source,
      status: rule.status,
      dynamicFactor: String(rule.dynamicFactor),
      usableShareWithPersonsBelow: String(rule.usableShareWithPersonsBelow),
    },
    sections: Object.fromEntries(
      regimeSections.flatMap(({ key, write }) => {
        const section = rule[key];
        return section ? [[key, { source: section.source, status: section.status, values: write(rule)! }]] : [];
      }),
    ),
  };
}

/** What is sent: checked where it is kept, not here. */
export function regimeFrom({ head, sections }: RegimeText): object {
  const { edition, ...rest } = head;
  return {
    ...rest,
    ...(edition.trim() === '' ? {} : { edition: edition.trim() }),
    dynamicFactor: figure(head.dynamicFactor),
    usableShareWithPersonsBelow: figure(head.usableShareWithPersonsBelow),
    ...Object.fromEntries(
      regimeSections.flatMap(({ key, read }) => {
        const section = sections[key];
        const lines = (section?.values ?? '')
          .split('\n')
          .map((line) => line.trim())
          .filter((line) => line !== '');
        return section && lines.length > 0 ? [[key, { source: section.source, status: section.status, ...read(lines) }]] : [];
      }),
    ),
  };
}

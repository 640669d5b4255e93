import type { LoadRule } from '#tour-file';
import type { BelowPublished, RuleSubject } from '#trade';
import { ruleSubject } from './rule-subject.js';

/**
 * Published figures that were read in their source, which a regime is held against; nothing is computed from them. Shares with persons below: DGUV Information
 * 215-313 sec. 2.1 ("at most half of the capacity that the maker states") and the coefficients of its Table 1, each twice that of nobody below. Legs: NAVEDTRA
 * 14080, angles near 30 degrees from the horizontal are extremely hazardous.
 */
const half = { share: 0.5, source: 'DGUV Information 215-313 sec. 2.1' } as const;
const ofElements = { share: 0.5, source: 'DGUV Information 215-313 sec. 2.1, Table 1' } as const;
const legs = { deg: 30, source: 'NAVEDTRA 14080' } as const;

/** Where a regime lets more pass than those, with the field of it. */
export function belowPublished(rule: LoadRule): readonly { readonly fact: BelowPublished; readonly rule: RuleSubject }[] {
  const told = (field: string, fact: BelowPublished | null) => (fact === null ? [] : [{ fact, rule: ruleSubject(rule, field) }]);
  const over = (figure: number, published: number): boolean => figure > published + 1e-9;
  const share = rule.usableShareWithPersonsBelow;
  const flattest = rule.legAngle?.leastFromHorizontalDeg ?? legs.deg;
  return [
    ...told(
      'usableShareWithPersonsBelow',
      over(share, half.share) ? { code: 'share', figure: share, published: half.share, source: half.source } : null,
    ),
    ...(rule.workingCoefficients?.elements ?? []).flatMap(({ element, nobodyBelow, personsBelow }) => {
      const figure = nobodyBelow / personsBelow;
      const { share: published, source } = ofElements;
      const fact = over(figure, published) ? ({ code: 'element', element, figure, published, source } as const) : null;
      return told(`workingCoefficients.elements[${element}]`, fact);
    }),
    ...told('legAngle', over(legs.deg, flattest) ? { code: 'legs', figure: flattest, published: legs.deg, source: legs.source } : null),
  ];
}

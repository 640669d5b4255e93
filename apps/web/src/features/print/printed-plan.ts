import { useEffect } from 'react';
import { type NamedSheets, type Node, type Units, namedSheets } from '#drawings';
import type { PackPlan } from '#pack-plan';
import type { PlanInForce } from '../plan/use-show.js';

/** The sheets of a plan as the house has it: its revision, and whether it is stale. */
export function sheetsOf(
  plan: PackPlan,
  { revision, releasedDespite, changed }: PlanInForce,
  units: Units,
  codeOf: (text: string) => Node | null,
): readonly NamedSheets[] {
  const told = revision && releasedDespite ? `${revision}, released although it says stop: ${releasedDespite}` : (revision ?? null);
  return namedSheets({ plan, isStale: changed.length > 0, revision: told }, units, codeOf);
}

const state = ({ revision, changed }: PlanInForce): string =>
  `${revision ? `revision ${revision}` : 'draft, not released'}${changed.length > 0 ? ', stale' : ''}`;

/** What a PDF is called, so that whoever gets it by mail knows what it is: letters, figures and dashes of ASCII alone. */
export const fileName = (plan: PackPlan, shown: PlanInForce, what: string): string =>
  [plan.tour.name, plan.show.name, what, shown.revision ? `revision ${shown.revision}` : 'draft', plan.show.from]
    .map((each) =>
      each
        .normalize('NFD')
        .replaceAll(/[^\w-]+/g, '-')
        .replaceAll(/^-+|-+$/g, ''),
    )
    .filter((each) => each !== '')
    .join('_');

/** The margins of the pages stand as long as the sheets do. */
export function usePageRules(plan: PackPlan, shown: PlanInForce, paper: 'A4' | 'Letter' | null): void {
  useEffect(() => {
    const rules = new CSSStyleSheet();
    rules.replaceSync(pageRules(plan, shown, paper));
    document.adoptedStyleSheets.push(rules);
    return () => void (document.adoptedStyleSheets = document.adoptedStyleSheets.filter((each) => each !== rules));
  }, [plan, shown, paper]);
}

/** In the margin of every page, continued ones too: tour, show, its state and date, page n of m. */
function pageRules(plan: PackPlan, shown: PlanInForce, paper: 'A4' | 'Letter' | null): string {
  const head = `${plan.tour.name} · ${plan.show.name} · ${plan.show.from} · ${state(shown)}`;
  const quoted = `"${head.replaceAll(/["\\\n]/g, ' ')}"`;
  const size = paper === null ? '' : `size:${paper} portrait;`;
  const pages = '@bottom-right{content:"Page " counter(page) " of " counter(pages);font-size:9pt}';
  return `@page{${size}@top-left{content:${quoted};font-size:8pt;width:186mm;text-align:left}${pages}}`;
}

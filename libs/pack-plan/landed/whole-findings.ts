import type { Code, Section, Subject, Weight } from '#trade';
import type { CartLoad, CartsResult, DueItem, HardwareLine, PackPlan, ToldFinding } from '../contract/index.js';
import { axleNames } from './axle-names.js';

/** The things of a kept plan that a finding can be about. */
export interface NamedThings extends Pick<PackPlan, 'tour' | 'show' | 'uses'> {
  readonly due: { readonly items: readonly Pick<DueItem, 'item'>[] };
  readonly hardware: { readonly lines: readonly Pick<HardwareLine, 'item' | 'model' | 'size'>[] };
  readonly carts: Pick<CartsResult, 'floorBefore'> & { readonly loads: readonly Pick<CartLoad, 'id'>[] };
  readonly truck: { readonly trucks: readonly { readonly id: string; readonly axles: readonly { readonly axle: string }[] }[] };
  readonly picks: {
    readonly hangs: readonly {
      readonly hang: string;
      readonly system?: string;
      readonly picks: readonly { readonly hole: string }[];
      readonly joints: readonly { readonly position: number }[];
    }[];
  };
}

/** A finding as plans up to version 0.1 kept it. */
export interface KeptFinding {
  readonly code: string;
  readonly weight: Weight;
  readonly section: Section;
  readonly subject: string;
  readonly date: string | null;
  readonly sentence: string;
  readonly fact?: ToldFinding['fact'];
}

/** Kept findings in the shape of new ones: their words and weights as they were, what they are about looked up among the things of the plan. */
export function wholeFindings(kept: NamedThings & { readonly findings: readonly KeptFinding[] }): readonly ToldFinding[] {
  const subjects = subjectsByName(kept);
  return kept.findings.map(({ fact, code: written, ...finding }) => {
    const code = written as Code;
    const about = subjects.get(finding.subject);
    return { ...finding, code, fact: fact ?? { code, subjects: { about: about ? [about] : [] }, numbers: {}, date: finding.date } };
  });
}

/** Everything that a kept finding can be about, by the name that it was kept with. */
function subjectsByName(kept: NamedThings): ReadonlyMap<string, Subject> {
  const { tour, show, picks, hardware, truck, due, carts } = kept;
  const byName: [string, Subject][] = [
    ...kept.uses.map(({ item: id }): [string, Subject] => [id, { kind: 'item', id }]),
    ...due.items.map(({ item: id }): [string, Subject] => [id, { kind: 'item', id }]),
    ...hardware.lines.map(({ item, model, size }): [string, Subject] => [model, { kind: 'line', item, model, size }]),
    ...carts.floorBefore.carts.flatMap(({ cart, boxes }): [string, Subject][] => [
      [cart, { kind: 'cart', id: cart }],
      ...boxes.map((id): [string, Subject] => [id, { kind: 'item', id }]),
    ]),
    ...carts.loads.map(({ id }): [string, Subject] => [id, { kind: 'cart load', id, name: id }]),
    ...truck.trucks.flatMap(({ id, axles }): [string, Subject][] => [
      [id, { kind: 'truck', id }],
      ...axles.flatMap(({ axle }): [string, Subject][] => {
        const name = axleNames[axle];
        return name ? [[`${id} ${axle}`, { kind: 'axle', truck: id, axle: name }]] : [];
      }),
    ]),
    ...picks.hangs.flatMap(({ hang, system, picks: all, joints }): [string, Subject][] => [
      ...(system === undefined ? [] : [[system, { kind: 'system', id: system }] as [string, Subject]]),
      [hang, { kind: 'hang', id: hang, name: hang }],
      ...all.map(({ hole }): [string, Subject] => [`${hang} hole ${hole}`, { kind: 'pick', hang, name: hang, hole }]),
      ...joints.map(({ position }): [string, Subject] => [`${hang} joint ${position}`, { kind: 'joint', hang, name: hang, position }]),
    ]),
    ['structure', { kind: 'structure' }],
    [tour.name, { kind: 'tour', id: tour.id, name: tour.name }],
    [show.name, { kind: 'show', id: show.id, name: show.name }],
  ];
  return new Map(byName);
}

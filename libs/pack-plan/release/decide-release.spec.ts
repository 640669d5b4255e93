import type { PackPlan } from '../contract/index.js';
import { decideRelease } from './decide-release.js';

type Draft = Parameters<typeof decideRelease>[0];
const show = { id: 's', name: 'First night' } as PackPlan['show'];
const finding = (code: string, weight: string) => ({ code, weight }) as PackPlan['findings'][number];
const quiet: Draft = { show, findings: [finding('rule-from-memory', 'look')] };
const stopping: Draft = { show, findings: [...quiet.findings, finding('over-rated-load', 'stop'), finding('overdue', 'stop')] };
const barred: Draft = { show, findings: [...stopping.findings, finding('checker-disagrees', 'stop')] };

const bookings = { code: 'changed', part: { code: 'bookings' } } as const;
const tour = { code: 'changed', part: { code: 'tour' } } as const;
const floor = { code: 'floor-differs' } as const;
const clash = { item: 'B-1' } as unknown as Parameters<typeof decideRelease>[2];

describe('a draft', () => {
  it('without stops is released, and needs no reason', () => {
    expect(decideRelease(quiet, [], undefined, '', true)).toEqual({ releases: true, saysStop: false });
  });

  it('with stops is released by a reason of 1 to 300 letters, and by none else', () => {
    for (const despite of ['x', 'x'.repeat(300)])
      expect(decideRelease(stopping, [], undefined, despite, true)).toEqual({ releases: true, saysStop: true });
    for (const despite of ['', 'x'.repeat(301)])
      expect(decideRelease(stopping, [], undefined, despite, true)).toEqual({
        releases: false,
        refusal: { code: 'release-says-stop', stops: 2 },
        stops: stopping.findings.slice(1),
      });
  });

  it('with stops of dates or ratings wants the officer, whatever the reason; other stops do not', () => {
    expect(decideRelease(stopping, [], undefined, 'a reason', false)).toEqual({
      releases: false,
      refusal: { code: 'release-needs-officer', stops: 2 },
      stops: stopping.findings.slice(1),
    });
    const other: Draft = { show, findings: [finding('left-over', 'stop')] };
    expect(decideRelease(other, [], undefined, 'a reason', false)).toEqual({ releases: true, saysStop: true });
    const looked: Draft = { show, findings: [finding('over-rated-load', 'look')] };
    expect(decideRelease(looked, [], undefined, '', false)).toEqual({ releases: true, saysStop: false });
  });

  it('that its checker disagrees with is released by no reason', () => {
    expect(decideRelease(barred, [], undefined, 'the officer says so', true)).toEqual({
      releases: false,
      refusal: { code: 'release-barred' },
      stops: [finding('checker-disagrees', 'stop')],
    });
  });

  it('whose inputs changed is stale, the floor among them; other promises alone make none so', () => {
    expect(decideRelease(quiet, [bookings], undefined, '', true)).toEqual({ releases: true, saysStop: false });
    for (const change of [tour, floor])
      expect(decideRelease(quiet, [bookings, change], undefined, 'a reason', true)).toEqual({
        releases: false,
        refusal: { code: 'release-stale' },
        changed: [change],
      });
  });

  it('is refused for a clash first, then for age, then for what bars it', () => {
    expect(decideRelease(barred, [tour], clash, '', true)).toEqual({
      releases: false,
      refusal: { code: 'release-clashes', show: 'First night', clash },
    });
    expect(decideRelease(barred, [tour], undefined, '', true)).toMatchObject({ refusal: { code: 'release-stale' } });
    expect(decideRelease(barred, [], undefined, '', true)).toMatchObject({ refusal: { code: 'release-barred' } });
  });
});

import { readFileSync } from 'node:fs';
import type { PackPlan } from '#pack-plan';
import { type TourFile, readTourFile } from '#tour-file';

const written = JSON.parse(readFileSync('tests/examples/demo-tour.json', 'utf8')) as object;

/** The demo tour as it is written, with a change. */
export function writtenDemoTour(change: (file: any) => void = () => undefined): unknown {
  const copy = structuredClone(written);
  change(copy);
  return copy;
}

/** The demo tour, read; a change must leave it readable. */
export function demoTour(change: (file: any) => void = () => undefined): TourFile {
  const read = readTourFile(writtenDemoTour(change));
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

export const sentencesOf = (plan: PackPlan, code: string): string[] =>
  plan.findings.filter((each) => each.code === code).map((each) => each.sentence);

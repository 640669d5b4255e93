import { readFileSync, readdirSync } from 'node:fs';

const places = ['apps', 'libs', 'migrations', 'tests'];
const notes = places
  .flatMap((place) => readdirSync(place, { recursive: true, encoding: 'utf8' }).map((name) => `${place}/${name}`))
  .filter((name) => name.endsWith('.decision.md'))
  .sort();
const titleOf = (path: string): string => readFileSync(path, 'utf8').split('\n')[0]!.replace(/^# /, '');

describe('the decision notes', () => {
  it('are all in the index of DEVELOPERS.md, under their titles, and the index names no other', () => {
    const index = [...readFileSync('DEVELOPERS.md', 'utf8').matchAll(/^- \[(.+)\]\((.+\.decision\.md)\)$/gm)].map(([, title, path]) => ({
      title,
      path,
    }));
    expect(index).toEqual(notes.map((path) => ({ title: titleOf(path), path })));
    expect(notes.length).toBeGreaterThan(10);
  });

  it.each(notes)('%s says context, decision, what is preferred and what is discouraged, on one screen', (path) => {
    const text = readFileSync(path, 'utf8');
    const parts = [...text.matchAll(/^\*\*(Context|Decision|Preferred|Discouraged)\b/gm)].map((each) => each[1]);
    expect(parts).toEqual(['Context', 'Decision', 'Preferred', 'Discouraged']);
    expect(text.split('\n').length).toBeLessThan(50);
  });
});

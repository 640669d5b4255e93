import { readFileSync } from 'node:fs';
import { countryCodes, placeName } from '#trade';

// iso3166.tab of the time zone database (public domain), after ISO/TC 46 N1108 of 2023-04-05; beside it the region names of Unicode CLDR, by Intl.
describe('the list of countries', () => {
  const lines = readFileSync('tests/reference/places/iso3166.tab', 'utf8')
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => line.split('\t')[0]);

  it('is that of ISO 3166-1: 249 codes', () => {
    expect([...countryCodes]).toEqual(lines);
    expect(new Set(countryCodes).size).toBe(249);
  });

  it('has a name for each', () => {
    expect(countryCodes.filter((code) => placeName(code) === `${code} (${code})`)).toEqual([]);
  });
});

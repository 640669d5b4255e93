import { holdsAt, isPlaceCode, nearestPlace, placeCodeOf, placeName } from '#trade';

describe('codes of places', () => {
  it.each(['GB', 'DE', 'US-CA', 'GB-NIR'])('know %s', (code) => {
    expect(isPlaceCode(code)).toBe(true);
    expect(placeCodeOf(code)).toBe(code);
  });

  it.each(['', 'UK', 'gb', 'XX', 'GB-', 'US-CALI', 'England', 'G', 'GBR'])('do not know %j', (text) => {
    expect(isPlaceCode(text)).toBe(false);
  });

  it.each([
    ['UK', 'GB'],
    ['uk', 'GB'],
    ['England', 'GB'],
    [' united kingdom ', 'GB'],
    ['Germany', 'DE'],
    ['deutschland', 'DE'],
    ['de', 'DE'],
    ['us-ca', 'US-CA'],
    ['U.S.A.', 'US'],
    ['Nowhere', 'Nowhere'],
    ['', ''],
  ])('are read from %j as %j', (text, code) => {
    expect(placeCodeOf(text)).toBe(code);
  });

  it.each([
    ['Germny', 'DE'],
    ['Englnad', 'GB'],
    ['Frnace', 'FR'],
    ['US-CALIFORNIA', 'US'],
    ['Nroway', 'NO'],
  ])('offer for %j the nearest, %s', (text, code) => {
    expect(nearestPlace(text)).toBe(code);
  });

  it('are named, a part by its country', () => {
    expect(placeName('GB')).toBe('GB (United Kingdom)');
    expect(placeName('US-CA')).toBe('US-CA (part of United States)');
    expect(placeName('Nowhere')).toBe('Nowhere');
  });

  it('let a rule of a country hold in its parts, and a rule of a part there alone', () => {
    expect(holdsAt('US', 'US-CA')).toBe(true);
    expect(holdsAt('US-CA', 'US')).toBe(false);
    expect(holdsAt('US-CA', 'US-NV')).toBe(false);
    expect(holdsAt('GB', 'GB')).toBe(true);
  });
});

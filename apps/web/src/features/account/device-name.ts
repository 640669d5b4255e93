const browsers: readonly (readonly [RegExp, string])[] = [
  [/\bEdg(e|A|iOS)?\//, 'Edge'],
  [/\bFirefox\/|\bFxiOS\//, 'Firefox'],
  [/\bOPR\//, 'Opera'],
  [/\bChrom(e|ium)\/|\bCriOS\//, 'Chrome'],
  [/\bSafari\//, 'Safari'],
];
const machines: readonly (readonly [RegExp, string])[] = [
  [/\biPhone\b/, 'an iPhone'],
  [/\biPad\b/, 'an iPad'],
  [/\bAndroid\b/, 'Android'],
  [/\bWindows\b/, 'Windows'],
  [/\bMac OS X\b/, 'a Mac'],
  [/\bLinux\b|\bX11\b/, 'Linux'],
];

/** What a browser says of itself, as people would: "Firefox on Windows"; anything else is a program. */
export function deviceName(said: string): string {
  if (said === '') return 'A device';
  const find = (list: typeof browsers) => list.find(([pattern]) => pattern.test(said))?.[1];
  const [browser, machine] = [find(browsers), find(machines)];
  if (!browser && !machine) return 'A program';
  return [browser ?? 'A browser', ...(machine ? [`on ${machine}`] : [])].join(' ');
}

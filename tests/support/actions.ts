import type { Locator } from 'playwright-core';

type File = { readonly name: string; readonly mimeType: string; readonly buffer: Buffer };

/** What a person does on the screens, counted: a click, a field filled or chosen, a paste, files handed over together. */
export function countedActions() {
  const counts = new Map<string, number>();
  let part = '';
  const count = (): void => void counts.set(part, (counts.get(part) ?? 0) + 1);
  return {
    /** What follows is counted under this name. */
    part: (name: string): void => void (part = name),
    click: async (what: Locator): Promise<void> => {
      count();
      await what.click();
    },
    fill: async (what: Locator, text: string): Promise<void> => {
      count();
      await what.fill(text);
    },
    choose: async (what: Locator, value: string): Promise<void> => {
      count();
      await what.selectOption(value);
    },
    files: async (what: Locator, files: readonly File[]): Promise<void> => {
      count();
      await what.setInputFiles([...files]);
    },
    total: (): number => [...counts.values()].reduce((sum, each) => sum + each, 0),
    told: (): string => [...counts].map(([name, times]) => `${name} ${times}`).join(', '),
  };
}

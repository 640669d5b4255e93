import { chmodSync, existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Trouble, startEmbeddedDatabase } from '#runtime';

describe('the data folder', () => {
  const folders: string[] = [];
  const newFolder = () => {
    const folder = mkdtempSync(join(tmpdir(), 'cartwright-data-'));
    // A user without privileges has to reach it where the tests run as root.
    chmodSync(folder, 0o755);
    folders.push(folder);
    return folder;
  };
  const start = (folder: string) => startEmbeddedDatabase({ folder, durable: false, say: () => undefined });
  afterAll(() => folders.forEach((folder) => rmSync(folder, { recursive: true, force: true })));

  it('is never deleted where Cartwright did not make it', async () => {
    const folder = newFolder();
    mkdirSync(join(folder, 'postgres'));
    writeFileSync(join(folder, 'postgres', 'mine.txt'), 'mine');
    await expect(start(folder)).rejects.toThrow(/was not made by Cartwright: nothing in it was touched/);
    expect(existsSync(join(folder, 'postgres', 'mine.txt'))).toBe(true);
  });

  it('is made anew where an earlier start was cut off while making it', async () => {
    const folder = newFolder();
    mkdirSync(join(folder, 'postgres'));
    writeFileSync(join(folder, 'postgres', 'half'), '');
    writeFileSync(join(folder, 'postgres-being-made'), '');
    const database = await start(folder);
    await database.stop();
    expect(existsSync(join(folder, 'postgres', 'half'))).toBe(false);
  });

  it('refuses a second copy while one runs', async () => {
    const folder = newFolder();
    const database = await start(folder);
    try {
      await expect(start(folder)).rejects.toThrow(/already runs with this data folder/);
    } finally {
      await database.stop();
    }
  });

  it('that cannot be made is named in a sentence', async () => {
    const file = join(newFolder(), 'a-file');
    writeFileSync(file, '');
    await expect(start(join(file, 'data'))).rejects.toThrow(Trouble);
  });
});

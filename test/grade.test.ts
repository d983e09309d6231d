import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { inventCards } from '../bench/files/inventCards.ts';
import { asJpeg } from '../bench/photo/asJpeg.ts';
import { takePhotos } from '../bench/photo/takePhotos.ts';
import { writeCardFile } from '../src/formats/cardFile.ts';

interface Told {
  readonly found?: boolean;
  readonly cells?: readonly {
    readonly cell: string;
    readonly grade: string;
    readonly sure: number;
  }[];
  readonly remarks?: readonly { readonly code: string }[];
  readonly error?: { readonly code: string; readonly remedy: string };
}

const folder = mkdtempSync(join(tmpdir(), 'grade-'));
const at = (name: string): string => join(folder, name);
afterAll(() => rmSync(folder, { recursive: true }));

const grade = (
  ...args: readonly string[]
): { readonly status: number | null; readonly told: Told } => {
  const { status, stdout } = spawnSync(
    process.execPath,
    ['build/src/cli/main.js', 'grade', ...args],
    { encoding: 'utf8' },
  );
  return { status, told: JSON.parse(stdout) as Told };
};

describe('grade: a card read from photographs', () => {
  const card = inventCards(20, 4).find(
    ({ outline, trusted }) => outline === 'last' && trusted !== undefined,
  );
  if (card === undefined) throw new Error('no card');
  let truth: ReadonlyMap<string, string> = new Map();
  beforeAll(async () => {
    const { scene, front, back } = await takePhotos(card, 'fair', 77);
    truth = scene.grades;
    writeFileSync(at('card.json'), writeCardFile(card));
    writeFileSync(at('front.jpg'), await asJpeg(front, 90));
    writeFileSync(at('back.jpg'), await asJpeg(back, 90));
  }, 120_000);

  it('tells every shape of a card that was photographed from both sides', () => {
    const { status, told } = grade(
      '--card',
      at('card.json'),
      '--front',
      at('front.jpg'),
      '--back',
      at('back.jpg'),
    );
    expect(status).toBe(0);
    expect(told.found).toBe(true);
    expect(new Map(told.cells?.map((one) => [one.cell, one.grade]))).toEqual(truth);
    expect(told.remarks).toEqual([]);
  }, 60_000);

  it('asks for the back where the front alone leaves it open', () => {
    const { told } = grade('--card', at('card.json'), '--front', at('front.jpg'));
    const holes = (of: Iterable<readonly [string, string]>): readonly string[] =>
      [...of].filter(([, one]) => one === 'out').map(([cell]) => cell);
    expect(holes((told.cells ?? []).map((one) => [one.cell, one.grade] as const))).toEqual(
      holes(truth),
    );
    expect(told.remarks?.map(({ code }) => code)).toContain('photo-no-back');
  }, 60_000);

  it('finds no card on a bare sheet, none that is another, and says how to mend it', async () => {
    writeFileSync(
      at('bare.png'),
      await sharp({ create: { width: 900, height: 700, channels: 3, background: '#5577aa' } })
        .png()
        .toBuffer(),
    );
    const { status, told } = grade('--card', at('card.json'), '--front', at('bare.png'));
    expect([status, told.found, told.cells]).toEqual([0, false, []]);
    expect(told.remarks?.map(({ code }) => code)).toEqual(['photo-card-not-found']);

    const other = inventCards(20, 4).find(
      (one) => one.outline === 'last' && one.cells.length !== card.cells.length,
    );
    writeFileSync(at('other.json'), writeCardFile(other ?? card));
    expect(grade('--card', at('other.json'), '--front', at('front.jpg')).told.found).toBe(false);
  }, 60_000);

  it('says where the code is another card’s', () => {
    writeFileSync(at('alike.json'), writeCardFile({ ...card, code: 'ZZZZ' }));
    const { told } = grade(
      '--card',
      at('alike.json'),
      '--front',
      at('front.jpg'),
      '--back',
      at('back.jpg'),
    );
    expect(told.remarks?.map(({ code }) => code)).toEqual(['photo-code-unlike']);
  }, 60_000);

  it('counts how well a set that somebody judged is read', () => {
    const set = {
      ...{
        kind: 'throughcut-photos',
        version: 1,
        card: 'card.json',
        front: 'front.jpg',
        back: 'back.jpg',
      },
      grades: Object.fromEntries(truth),
    };
    writeFileSync(at('set.json'), JSON.stringify(set));
    const all = spawnSync(process.execPath, ['build/src/cli/main.js', 'grade', '--set', folder], {
      encoding: 'utf8',
    });
    expect(JSON.parse(all.stdout)).toMatchObject({
      cards: 1,
      found: 1,
      shapes: truth.size,
      right: truth.size,
      wrong: 0,
      mistakes: [],
    });
    writeFileSync(at('set.json'), JSON.stringify({ ...set, grades: { A1: 'fell' } }));
    expect(
      spawnSync(process.execPath, ['build/src/cli/main.js', 'grade', '--set', folder], {
        encoding: 'utf8',
      }).status,
    ).toBe(2);
    rmSync(at('set.json'));
  }, 60_000);

  it('refuses what is no photograph, and files that are not there', () => {
    writeFileSync(
      at('fake.png'),
      '<svg xmlns="http://www.w3.org/2000/svg" width="400" height="300"/>',
    );
    const fake = grade('--card', at('card.json'), '--front', at('fake.png'));
    expect([fake.status, fake.told.error?.code]).toEqual([2, 'photo-not-a-picture']);
    expect(fake.told.error?.remedy).not.toBe('');
    const gone = grade('--card', at('card.json'), '--front', at('gone.jpg'));
    expect([gone.status, gone.told.error?.code]).toEqual([2, 'file-not-found']);
  });
});

import { afterEach, describe, expect, test } from 'vitest';
import { createWavMaker } from '../../../server/wav/maker.ts';
import { soundFile, type SoundJob } from '../../../server/wav/sound-file.ts';
import { grooveById } from '../../../shared-theory/grooves.ts';
import { perform } from '../../../shared-theory/perform.ts';
import { STEEL } from '../../../shared-theory/sound/instrument.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { voice } from '../../../shared-theory/voice.ts';

const vamp = voice({ slots: parseVamp('Em', 4), groove: grooveById('driving-eighths'), tempo: 184, seed: 1 });
const job: SoundJob = { performance: perform(vamp), instrument: STEEL };

describe('sound made beside the room', () => {
  let maker = createWavMaker();
  afterEach(() => {
    maker.close();
    maker = createWavMaker();
  });

  test('is the sound that this process would make, one file after the other', async () => {
    const order: string[] = [];
    const first = maker.make(job).then((bytes) => (order.push('first'), bytes));
    const broken = maker.make({ ...job, performance: null } as unknown as SoundJob).catch((error: Error) => {
      order.push('broken');
      return error;
    });
    const third = maker.make(job).then((bytes) => (order.push('third'), bytes));
    const [made, error, again] = await Promise.all([first, broken, third]);
    const wanted = Buffer.from(soundFile(job));
    expect(Buffer.from(made).equals(wanted)).toBe(true);
    expect(Buffer.from(again).equals(wanted)).toBe(true);
    expect(order).toEqual(['first', 'broken', 'third']);
    // What went wrong in it is told, and does not end the next.
    expect(String(error)).toMatch(/ended with status 1 before it was done.*TypeError/s);
  });

  test('a maker that is closed ends what it makes and makes no more', async () => {
    const cut = maker.make(job);
    const next = maker.make(job);
    const told = Promise.allSettled([cut, next]);
    await new Promise((resolve) => setTimeout(resolve, 200));
    maker.close();
    expect((await told).map(({ status }) => status)).toEqual(['rejected', 'rejected']);
  });
});

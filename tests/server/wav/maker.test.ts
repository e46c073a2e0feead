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
    const told = Promise.allSettled([maker.make(job), maker.make(job)]);
    maker.close();
    const error = new Error('No sound is made any more: the server stops.');
    expect(await told).toEqual([
      { status: 'rejected', reason: error },
      { status: 'rejected', reason: error },
    ]);
  });

  test('what nobody waits for is not made, whether it has begun or not, and keeps nobody waiting', async () => {
    const [begun, waiting] = [new AbortController(), new AbortController()];
    const long = { ...job, performance: perform(vamp, { loops: 200 }) };
    const told = Promise.allSettled([maker.make(long, begun.signal), maker.make(long, waiting.signal)]);
    const wanted = maker.make(job);
    waiting.abort(new Error('left too'));
    await new Promise((resolve) => {
      setTimeout(resolve, 50);
    });
    begun.abort(new Error('left'));
    expect(await told).toEqual([
      { status: 'rejected', reason: new Error('left') },
      { status: 'rejected', reason: new Error('left too') },
    ]);
    expect(Buffer.from(await wanted).equals(Buffer.from(soundFile(job)))).toBe(true);
  });

  test('one that hangs is ended, so that the next can be made', async () => {
    const impatient = createWavMaker(1);
    await expect(impatient.make(job)).rejects.toThrow(/ended by SIGKILL before it was done/);
    impatient.close();
  });
});

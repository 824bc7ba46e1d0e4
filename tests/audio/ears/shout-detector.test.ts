import { describe, expect, it } from 'vitest';
import { ShoutDetector } from '../../../audio/ears/shout-detector.ts';
import { LEVEL_SAMPLES } from '../../../audio/ears/sound-format.ts';
import { whiteNoise } from './test-sounds.ts';

/** Plays blocks of these levels (dBFS) and says at which block a shout was reported, and which blocks it was. */
function shoutsIn(levelsDbfs: readonly number[]) {
  const detector = new ShoutDetector();
  return levelsDbfs.flatMap((dbfs, at) => {
    const shout = detector.take(whiteNoise(LEVEL_SAMPLES, 10 ** (dbfs / 20), at + 1));
    return shout === undefined ? [] : [{ at, from: at - shout.firstBack, to: at - shout.lastBack }];
  });
}

/** Our own voice as the microphone hears it: syllables from -45 to -35 dBFS. */
const echo = (blocks: number): number[] =>
  Array.from({ length: blocks }, (_, i) => (i % 3 === 0 ? -45 : -35));

describe('the shout detector', () => {
  it('finds a call over our own voice, and which blocks it was', () => {
    expect(shoutsIn([...echo(20), -20, -18, -22, -20, ...echo(10)])).toEqual([{ at: 26, from: 20, to: 23 }]);
  });

  it('keeps a call whole over a gap of two soft blocks, as between "stop" and "stop"', () => {
    expect(shoutsIn([...echo(20), -20, -45, -45, -20, ...echo(10)])).toEqual([{ at: 26, from: 20, to: 23 }]);
  });

  it('leaves our own voice alone, however long it speaks', () => {
    expect(shoutsIn(echo(300))).toEqual([]);
  });

  it('leaves alone a knock, a call no louder than the echo, and what goes on like a machine', () => {
    expect(shoutsIn([...echo(20), -10, ...echo(10)])).toEqual([]);
    expect(shoutsIn([...echo(20), -33, -33, -33, ...echo(10)])).toEqual([]);
    expect(shoutsIn([...echo(20), ...Array<number>(40).fill(-20)])).toEqual([]);
  });

  it('still hears a call after a machine has started', () => {
    const machine = Array<number>(40).fill(-25);
    expect(shoutsIn([...echo(20), ...machine, -8, -8, -8, ...machine])).toHaveLength(1);
  });

  it('learns the echo before it hears anything', () => {
    expect(shoutsIn([-60, -20, -20, -20, ...echo(10)])).toEqual([]);
  });

  it('hears a call over a voice that began late, at whatever block it began', () => {
    const call = [-18, -14, -18, -15, -13, -17, -14, -11, -12, -12, -14, -17];
    for (let room = 0; room <= 12; room += 1) {
      const began = [...Array<number>(room).fill(-60), -47];
      const heard = shoutsIn([...began, ...echo(12), ...call, ...echo(6)]);
      expect(heard.at(-1), `after ${room} blocks`).toMatchObject({ to: room + 24 });
      expect(heard).toHaveLength(1);
    }
  });
});

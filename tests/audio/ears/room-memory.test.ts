import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { RoomMemory } from '../../../audio/ears/room-memory.ts';

describe('the room memory', () => {
  it('holds the last samples in order, like an array cut at its front', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 70 }), { maxLength: 30 }), (lengths) => {
        const memory = new RoomMemory(3);
        let all: number[] = [];
        let next = 0;
        for (const length of lengths) {
          const block = Float32Array.from({ length }, () => next++);
          memory.add(block);
          all = [...all, ...block].slice(-48);
          expect([...memory.recall()]).toEqual(all);
          expect(memory.heldMs).toBe(all.length / 16);
        }
      }),
    );
  });

  it('gives a copy, and nothing after it was cleared', () => {
    const memory = new RoomMemory(1);
    memory.add(new Float32Array(16).fill(1));
    memory.recall().fill(9);
    expect(memory.recall()[0]).toBe(1);
    memory.clear();
    expect(memory.recall()).toHaveLength(0);
  });

  it('refuses a length of nothing', () => {
    expect(() => new RoomMemory(0)).toThrow(/length over 0 ms/);
  });
});

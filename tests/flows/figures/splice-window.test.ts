import fc from 'fast-check';
import { expect, test } from 'vitest';
import { nextBallChange, SPLICE_WINDOW_BALES } from '../../../flows/figures/splice-window.ts';

test('a ball runs through splice window, steady, change soon and out, in that order', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 300, max: 9000 }),
      fc.double({ min: 5, max: 15, noNaN: true }),
      (ballFt, ft) => {
        const order = ['splice window', 'steady', 'change soon', 'outran its length'];
        const { balesPerBall } = nextBallChange(ballFt, ft, 0);
        let last = 0;
        for (let since = 0; since <= balesPerBall + 2; since++) {
          const { stage, balesLeft } = nextBallChange(ballFt, ft, since);
          expect(order.indexOf(stage)).toBeGreaterThanOrEqual(last);
          last = order.indexOf(stage);
          expect(balesLeft).toBe(Math.max(0, balesPerBall - since));
        }
        expect(last).toBe(3);
      },
    ),
    { numRuns: 20 },
  );
});

test('the window is the first bales after the change and the warning comes ten before', () => {
  const stage = (since: number) => nextBallChange(4500, 9, since).stage;
  expect(stage(SPLICE_WINDOW_BALES)).toBe('splice window');
  expect(stage(SPLICE_WINDOW_BALES + 1)).toBe('steady');
  expect(stage(489)).toBe('steady');
  expect(stage(490)).toBe('change soon');
  expect(stage(500)).toBe('change soon');
  expect(stage(501)).toBe('outran its length');
});

test('impossible counts are refused', () => {
  expect(() => nextBallChange(4500, 9, -1)).toThrow('number of bales since the ball change');
  expect(() => nextBallChange(4500, 90, 1)).toThrow('twine a string');
});

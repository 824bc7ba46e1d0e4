import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hashOf, type Route, routeOf } from '../../../src/screens/route.ts';

const PLAIN = [
  'start',
  'new',
  'records',
  'machines',
  'settings',
  'learnt',
  'drill',
  'help',
  'welcome',
] as const;

describe('the address', () => {
  it('leads back to the route it was made from', () => {
    const anyRoute: fc.Arbitrary<Route> = fc.oneof(
      fc.constantFrom(...PLAIN).map((page) => ({ page })),
      fc.record({
        page: fc.constantFrom('job' as const, 'record' as const),
        jobId: fc.string({ minLength: 1 }),
      }),
    );
    fc.assert(
      fc.property(anyRoute, (route) => {
        expect(routeOf(hashOf(route))).toEqual(route);
      }),
    );
  });

  it.each(['', '#', '#/nowhere', '#/job', '#/job/', '#/job/a/b', '#/settings/x', 'garbage'])(
    'leads to the start from %j',
    (hash) => {
      expect(routeOf(hash)).toEqual({ page: 'start' });
    },
  );

  it('survives a stray percent sign', () => {
    expect(routeOf('#/job/100%')).toEqual({ page: 'job', jobId: '100%' });
  });
});

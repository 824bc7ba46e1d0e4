import { describe, expect, it } from 'vitest';
import { MOTIONS, STATIONS } from '../../flows/tying-cycle.ts';

describe('the tying cycle', () => {
  it('runs forward through one turn of the knotter shaft', () => {
    const degrees = STATIONS.map(({ deg }) => deg);
    expect(degrees).toEqual([...degrees].sort((a, b) => a - b));
    expect(degrees[0]).toBe(0);
    expect(degrees.at(-1)).toBe(360);
    for (const { fromDeg, toDeg } of MOTIONS) {
      expect(fromDeg).toBeGreaterThanOrEqual(0);
      expect(toDeg).toBeGreaterThan(fromDeg);
      expect(toDeg).toBeLessThanOrEqual(360);
    }
  });

  /** The knife cuts only after the tongue has closed on both strands (common practice, no source). */
  it('cuts only while the billhook is past its grip, and clamps before the billhook turns on', () => {
    const motion = (mover: string) => MOTIONS.find((each) => each.mover === mover);
    const [knife, billhook, disc] = [motion('knife'), motion('billhook'), motion('disc')];
    // The tongue takes the strands at about three quarters of the billhook's turn.
    const gripDeg = (billhook?.fromDeg ?? 0) + 0.75 * ((billhook?.toDeg ?? 0) - (billhook?.fromDeg ?? 0));
    expect(knife?.fromDeg).toBeGreaterThan(gripDeg);
    expect(disc?.toDeg).toBeLessThan(gripDeg);
  });

  it('shows each mover moving at the station that tells of it', () => {
    const at = (id: string) => STATIONS.find((station) => station.id === id)?.deg ?? Number.NaN;
    const isMoving = (mover: string, deg: number) =>
      MOTIONS.some((each) => each.mover === mover && deg >= each.fromDeg && deg <= each.toDeg);
    expect(isMoving('needle', at('needleUp'))).toBe(true);
    // A needle that rises without the plunger before it is struck (common practice, no source).
    expect(isMoving('plunger', at('needleUp'))).toBe(true);
    expect(isMoving('finger', at('across'))).toBe(true);
    expect(isMoving('disc', at('clamped'))).toBe(true);
    expect(isMoving('billhook', at('loop'))).toBe(true);
    expect(isMoving('knife', at('cut'))).toBe(true);
  });
});

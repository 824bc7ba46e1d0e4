import type { SystemVoid } from '../../flows/heard.ts';

/** A confirmed lockout does not outlast this much silence. Expert estimate. */
export const IDLE_LIMIT_MS = 15 * 60_000;
/** How often the watch looks at the clocks. */
export const LOOK_EVERY_MS = 5_000;
/** A tick this late means that the tablet slept. */
const SLEPT_MS = 30_000;
/** The wall clock may drift from the steady one by this much between two looks. */
const CLOCK_DRIFT_MS = 10_000;

export interface Clocks {
  /** Never runs backwards; stands still or runs on while the tablet sleeps, as the browser has it. Milliseconds. */
  readonly steadyMs: () => number;
  /** What the tablet takes for the time of day, milliseconds since 1970. */
  readonly wallMs: () => number;
}

/** What a look at the clocks shows, with the state of the watch to hand to the next look. */
export interface Look {
  readonly steadyMs: number;
  readonly wallMs: number;
  readonly lastActivityMs: number;
}

/**
 * Decides from two looks at the clocks whether something happened that takes a lockout away. A tablet that slept,
 * or whose clock was moved, cannot know what people did meanwhile.
 */
export function noticed(before: Look, now: Look): SystemVoid | undefined {
  const steadyGap = now.steadyMs - before.steadyMs;
  const wallGap = now.wallMs - before.wallMs;
  if (steadyGap > SLEPT_MS) return 'void.slept';
  // A steady clock that stands still during sleep shows it only here.
  if (Math.abs(wallGap - steadyGap) > CLOCK_DRIFT_MS) return 'void.clockJumped';
  if (now.steadyMs - now.lastActivityMs > IDLE_LIMIT_MS) return 'void.leftIdle';
  return undefined;
}

export interface SafetyWatch {
  /** Somebody spoke or touched: the idle time starts anew. */
  activity(): void;
  stop(): void;
}

/** Looks at the clocks every few seconds and tells of everything that takes a lockout away. */
export function watchSafety(clocks: Clocks, onVoid: (reason: SystemVoid) => void): SafetyWatch {
  const look = (lastActivityMs: number): Look => ({
    steadyMs: clocks.steadyMs(),
    wallMs: clocks.wallMs(),
    lastActivityMs,
  });
  let last = look(clocks.steadyMs());
  const timer = setInterval(() => {
    const now = look(last.lastActivityMs);
    const reason = noticed(last, now);
    last = reason ? look(now.steadyMs) : now;
    if (reason) onVoid(reason);
  }, LOOK_EVERY_MS);
  return {
    activity: () => {
      last = { ...last, lastActivityMs: clocks.steadyMs() };
    },
    stop: () => clearInterval(timer),
  };
}

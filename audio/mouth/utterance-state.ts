import type { Utterance, UtteranceEnd } from './voice.ts';

/** The one-way life of an utterance: it may start once and must end once, whatever order events arrive in. */
export interface UtteranceState {
  readonly utterance: Utterance;
  /** True once it has ended in any way. */
  over(): boolean;
  start(atMs: number): void;
  end(how: UtteranceEnd): void;
}

/** @param silence stops all sound of the utterance; called once, when it ends */
export function utteranceState(silence: (how: UtteranceEnd) => void): UtteranceState {
  let ended = false;
  let reportStart: (at: number | 'never') => void = () => {};
  let reportEnd: (how: UtteranceEnd) => void = () => {};
  const started = new Promise<number | 'never'>((resolve) => {
    reportStart = resolve;
  });
  const finished = new Promise<UtteranceEnd>((resolve) => {
    reportEnd = resolve;
  });
  const end = (how: UtteranceEnd) => {
    if (ended) return;
    ended = true;
    silence(how);
    reportStart('never');
    reportEnd(how);
  };
  return {
    utterance: { started, finished, cut: () => end('cut') },
    over: () => ended,
    start: (atMs) => reportStart(atMs),
    end,
  };
}

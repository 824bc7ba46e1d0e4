import { describe, expect, it } from 'vitest';
import { RESPELLINGS, respelled } from '../../../audio/mouth/render/respellings.ts';

describe('respellings for the synthesiser', () => {
  it('replace whole words only, in any case', () => {
    expect(respelled('Baler off, PTO off. Ten thou, a thousand.')).toBe(
      'bailer off, pea tea owe off. Ten thow, a thousand.',
    );
  });

  it('leave every other text as it is', () => {
    expect(respelled('Is the holder spring cracked?')).toBe('Is the holder spring cracked?');
    expect(respelled('constructor of a toString')).toBe('constructor of a toString');
  });

  it('never need a second pass', () => {
    for (const spoken of Object.values(RESPELLINGS)) expect(respelled(spoken)).toBe(spoken);
  });
});

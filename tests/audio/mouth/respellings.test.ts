import { describe, expect, it } from 'vitest';
import { respelled } from '../../../audio/mouth/render/respellings.ts';

describe('respellings for the synthesiser', () => {
  it('replace whole words only, in any case', () => {
    expect(respelled('Baler off, PTO off. Ten thou, a thousand.')).toBe(
      'bailer off, pea tea owe off. Ten thow, a thousand.',
    );
  });

  it('tell by the words around it which way a word is said', () => {
    expect(respelled('Close the guard. Keep close to the wheel. Does it close?')).toBe(
      'cloze the guard. Keep close to the wheel. Does it cloze?',
    );
    expect(respelled('Read the label. I have read it.')).toBe('reed the label. I have read it.');
  });

  it('leave every other text as it is', () => {
    expect(respelled('Is the holder spring cracked?')).toBe('Is the holder spring cracked?');
    expect(respelled('constructor of a toString')).toBe('constructor of a toString');
  });

  it('need no second pass', () => {
    const once = respelled('The baler by the windrow: close it, read the PTO manual, ten thou of sisal.');
    expect(respelled(once)).toBe(once);
  });
});

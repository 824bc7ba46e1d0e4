/** Numbers the phones of the model to be built: Kaldi wants one for each Markov model in each place of a word. */
import type { PhoneModel } from './sphinx-phone-definitions.ts';

/** Kaldi's names for a phone's place in a word (file word_boundary.int). */
export type WordPlace = 'begin' | 'internal' | 'end' | 'singleton' | 'nonword';

/** What a phone sounds like: a Markov model of the acoustic model, or anything that is said (scoring-network.ts has both). */
export type PhoneSound =
  | ({ readonly kind: 'modelled' } & PhoneModel)
  | { readonly kind: 'anySpeech' }
  | { readonly kind: 'anySenone' };

export interface InventoryPhone {
  /** From 1; 0 is Kaldi's epsilon. */
  readonly id: number;
  readonly place: WordPlace;
  readonly sound: PhoneSound;
}

export class PhoneInventory {
  private readonly byKey = new Map<string, InventoryPhone>();

  /** The phone with that model in that place, numbered on first use. */
  modelled({ senoneSequence, transitionMatrix }: PhoneModel, place: WordPlace): InventoryPhone {
    return this.phone({ kind: 'modelled', senoneSequence, transitionMatrix }, place);
  }

  /** The phone for anything that is said in that place, numbered on first use. */
  anything(kind: 'anySpeech' | 'anySenone', place: WordPlace): InventoryPhone {
    return this.phone({ kind }, place);
  }

  private phone(sound: PhoneSound, place: WordPlace): InventoryPhone {
    const key = `${Object.values(sound).join(' ')} ${place}`;
    const known = this.byKey.get(key);
    if (known) return known;
    const added: InventoryPhone = { id: this.byKey.size + 1, place, sound };
    this.byKey.set(key, added);
    return added;
  }

  /** All phones, in the order of their numbers. */
  all(): readonly InventoryPhone[] {
    return [...this.byKey.values()];
  }
}

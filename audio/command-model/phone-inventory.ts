/** Numbers the phones of the model to be built: Kaldi wants one for each Markov model in each place of a word. */
import type { PhoneModel } from './sphinx-phone-definitions.ts';

/** Kaldi's names for a phone's place in a word (file word_boundary.int). */
export type WordPlace = 'begin' | 'internal' | 'end' | 'singleton' | 'nonword';

export interface InventoryPhone extends PhoneModel {
  /** From 1; 0 is Kaldi's epsilon. */
  readonly id: number;
  readonly place: WordPlace;
}

export class PhoneInventory {
  private readonly byKey = new Map<string, InventoryPhone>();

  /** The phone for that model in that place, numbered on first use. */
  phone(model: PhoneModel, place: WordPlace): InventoryPhone {
    const key = `${model.senoneSequence} ${model.transitionMatrix} ${place}`;
    const known = this.byKey.get(key);
    if (known) return known;
    const added: InventoryPhone = {
      id: this.byKey.size + 1,
      senoneSequence: model.senoneSequence,
      transitionMatrix: model.transitionMatrix,
      place,
    };
    this.byKey.set(key, added);
    return added;
  }

  /** All phones, in the order of their numbers. */
  all(): readonly InventoryPhone[] {
    return [...this.byKey.values()];
  }
}

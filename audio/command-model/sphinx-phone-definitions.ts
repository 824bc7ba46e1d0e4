/**
 * Reads the binary `mdef` of a Sphinx acoustic model: which three senones model a phone between its two neighbours.
 * Source of the format and of the look-up's order: `bin_mdef_read`, `bin_mdef_phone_id` and
 * `bin_mdef_phone_id_nearest` in pocketsphinx/src/libpocketsphinx/bin_mdef.c (CMU Sphinx).
 */
import { ByteCursor } from './byte-cursor.ts';

/** Where in its word a phone stands; the numbers are those of the file (`word_posn_t` of mdef.h). */
export const wordPosition = { internal: 0, begin: 1, end: 2, single: 3 } as const;
export type WordPosition = (typeof wordPosition)[keyof typeof wordPosition];
const allPositions: readonly WordPosition[] = [0, 1, 2, 3];

/** The Markov model of a phone: its senone sequence and its transition matrix. */
export interface PhoneModel {
  readonly senoneSequence: number;
  readonly transitionMatrix: number;
}

export interface PhoneDefinitions {
  /** Names of the context-independent phones; the position is the phone's number. */
  readonly baseNames: readonly string[];
  /** Number of the base phone of that name, or undefined. */
  baseNumber(name: string): number | undefined;
  isFiller(base: number): boolean;
  /** The three senones of a sequence, in order. */
  senones(senoneSequence: number): readonly number[];
  /** The base phone, and so the codebook, that each senone belongs to. */
  readonly baseOfSenone: readonly number[];
  baseModel(base: number): PhoneModel;
  /** The model nearest to that phone between those neighbours: exact, else other positions, else beside silence. */
  modelInContext(base: number, left: number, right: number, position: WordPosition): PhoneModel;
}

interface TreeNode {
  readonly context: number;
  readonly children: number;
  /** The first child's place in the tree, or at a leaf the phone. */
  readonly target: number;
}

export function readPhoneDefinitions(bytes: Uint8Array, fileName: string): PhoneDefinitions {
  const cursor = new ByteCursor(bytes, fileName);
  if (new TextDecoder('latin1').decode(cursor.byteArray(4)) !== 'BMDF') {
    throw new Error(`${fileName} is not a little-endian binary model definition.`);
  }
  cursor.skip(4); // the format's version
  cursor.skip(cursor.int32()); // a text that describes the format
  const baseCount = cursor.int32();
  const phoneCount = cursor.int32();
  const statesPerPhone = cursor.int32();
  cursor.skip(4); // count of context-independent senones
  const senoneCount = cursor.int32();
  cursor.skip(4); // count of transition matrices
  const sequenceCount = cursor.int32();
  cursor.skip(4); // phones of context, always 3
  const treeSize = cursor.int32();
  const silence = cursor.int32();

  const namesStart = cursor.position;
  const baseNames = Array.from({ length: baseCount }, () => cursor.textUntil(0));
  cursor.skip((4 - ((cursor.position - namesStart) % 4)) % 4);

  const tree = Array.from({ length: treeSize }, (): TreeNode => {
    const context = cursor.int16();
    const children = cursor.int16();
    return { context, children, target: cursor.int32() };
  });
  const phones = Array.from({ length: phoneCount }, (_, number) => {
    const senoneSequence = cursor.int32();
    const transitionMatrix = cursor.int32();
    const info = cursor.byteArray(4);
    // A base phone's first byte tells a filler; a phone in context has its base phone in the second.
    const inContext = number >= baseCount;
    return {
      senoneSequence,
      transitionMatrix,
      base: inContext ? (info[1] ?? 0) : number,
      filler: !inContext && info[0] === 1,
    };
  });
  const sequenceEntries = cursor.int32();
  if (sequenceEntries !== sequenceCount * statesPerPhone) {
    throw new Error(`${fileName} has ${sequenceEntries} sequence entries for ${sequenceCount} sequences.`);
  }
  const sequences = Array.from({ length: sequenceCount }, () =>
    Array.from({ length: statesPerPhone }, () => cursor.uint16()),
  );

  const senones = (sequence: number): readonly number[] => {
    const found = sequences[sequence];
    if (!found) throw new Error(`${fileName} has no senone sequence ${sequence}.`);
    return found;
  };
  const phone = (number: number) => {
    const found = phones[number];
    if (!found) throw new Error(`${fileName} has no phone ${number}.`);
    return found;
  };
  const baseOfSenone = new Array<number>(senoneCount).fill(-1);
  for (const { senoneSequence, base } of phones) {
    for (const senone of senones(senoneSequence)) baseOfSenone[senone] = base;
  }

  const exact = (base: number, left: number, right: number, position: WordPosition): number | undefined => {
    let first = 0;
    let count = allPositions.length;
    for (const wanted of [position, base, left, right]) {
      const node = tree.slice(first, first + count).find(({ context }) => context === wanted);
      if (!node) return undefined;
      if (node.children === 0) return node.target;
      first = node.target;
      count = node.children;
    }
    return undefined;
  };
  const asContext = (base: number) => (phone(base).filler ? silence : base);
  const inAnyPosition = (base: number, left: number, right: number, position: WordPosition) => {
    for (const tried of [position, ...allPositions.filter((other) => other !== position)]) {
      const found = exact(base, left, right, tried);
      if (found !== undefined && found >= 0) return found;
    }
    return undefined;
  };

  return {
    baseNames,
    baseNumber(name) {
      const number = baseNames.indexOf(name);
      return number < 0 ? undefined : number;
    },
    isFiller: (base) => phone(base).filler,
    senones,
    baseOfSenone,
    baseModel: phone,
    modelInContext(base, left, right, position) {
      const besideSilenceLeft = position === wordPosition.begin || position === wordPosition.single;
      const besideSilenceRight = position === wordPosition.end || position === wordPosition.single;
      const found =
        inAnyPosition(base, asContext(left), asContext(right), position) ??
        inAnyPosition(
          base,
          besideSilenceLeft ? silence : asContext(left),
          besideSilenceRight ? silence : asContext(right),
          position,
        );
      return phone(found ?? base);
    },
  };
}

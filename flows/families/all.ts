import { FAMILY_IDS, type Family, type FamilyId } from './family.ts';
import { heldStrandLost } from './held-strand-lost.ts';

const CHARTED: Readonly<Partial<Record<FamilyId, Family>>> = { heldStrandLost };

/** The family with its causes and checks, or undefined where it can be recognised but not yet searched. */
export function familyById(id: FamilyId): Family | undefined {
  return CHARTED[id];
}

/** The families that can be searched, in the order of FAMILY_IDS. */
export const FAMILIES: readonly Family[] = FAMILY_IDS.flatMap((id) => familyById(id) ?? []);

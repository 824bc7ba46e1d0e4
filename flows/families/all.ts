import { bothSidesNowAndThen } from './both-sides-now-and-then.ts';
import { cyclesWrong } from './cycles-wrong.ts';
import { FAMILY_IDS, type Family, type FamilyId } from './family.ts';
import { heldStrandLost } from './held-strand-lost.ts';
import { knotFailsLater } from './knot-fails-later.ts';
import { knotHangsOn } from './knot-hangs-on.ts';
import { needleStrandMissed } from './needle-strand-missed.ts';
import { needlesStruck } from './needles-struck.ts';
import { noKnotEitherEnd } from './no-knot-either-end.ts';
import { twineFeedLost } from './twine-feed-lost.ts';
import { validFamily } from './validate.ts';

/** Every family, refused here at load where its data could mislead. */
const FAMILY_BY_ID: Readonly<Record<FamilyId, Family>> = {
  heldStrandLost: validFamily(heldStrandLost),
  needleStrandMissed: validFamily(needleStrandMissed),
  noKnotEitherEnd: validFamily(noKnotEitherEnd),
  knotHangsOn: validFamily(knotHangsOn),
  knotFailsLater: validFamily(knotFailsLater),
  twineFeedLost: validFamily(twineFeedLost),
  cyclesWrong: validFamily(cyclesWrong),
  needlesStruck: validFamily(needlesStruck),
  bothSidesNowAndThen: validFamily(bothSidesNowAndThen),
};

export function familyById(id: FamilyId): Family {
  return FAMILY_BY_ID[id];
}

/** The families, in the order of FAMILY_IDS. */
export const FAMILIES: readonly Family[] = FAMILY_IDS.map(familyById);

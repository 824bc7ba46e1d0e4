/** The lock that says which tab writes. */
const NAME = 'knotwright-records';

/** Gives the records back; another tab can take them once it resolves. */
export type GiveBack = () => Promise<void>;

/**
 * Takes the records for this tab, or finds them taken. Two tabs that both write would number one log twice.
 * @returns how to give them back, or undefined where another tab has them
 */
export function takeRecords(locks: LockManager): Promise<GiveBack | undefined> {
  return new Promise((resolve, reject) => {
    const given = locks.request(NAME, { ifAvailable: true }, async (lock) => {
      if (!lock) return resolve(undefined);
      await new Promise<void>((giveBack) => {
        resolve(() => {
          giveBack();
          return given;
        });
      });
    });
    given.catch(reject);
  });
}

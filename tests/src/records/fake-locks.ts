/** Web Locks for Node, as far as the records use them: one holder, or nobody waits. */
export function fakeLocks(): LockManager {
  const held = new Set<string>();
  const request = async (
    name: string,
    _options: LockOptions,
    callback: (lock: Lock | null) => Promise<unknown> | unknown,
  ): Promise<unknown> => {
    if (held.has(name)) return callback(null);
    held.add(name);
    try {
      return await callback({ name, mode: 'exclusive' });
    } finally {
      held.delete(name);
    }
  };
  return { request, query: async () => ({}) } as LockManager;
}

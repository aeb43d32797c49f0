/** Does some work while no other tab does work under the same lock; at once where the browser has no locks. */
export function underLock<T>(name: string, work: () => Promise<T>): Promise<T> {
  const locks = globalThis.navigator?.locks as LockManager | undefined
  return locks ? locks.request(name, work) : work()
}

export const LIMIT: number
export interface Built {
  readonly dist: string
  /** How many scripts load first. */
  readonly scripts: number
  /** Their size, gzipped, in bytes. */
  readonly first: number
  /** The size of all that can load before a formula is opened. */
  readonly withoutEditor: number
}
export function build(options?: { root?: string; logLevel?: 'silent' | 'error' | 'warn' | 'info' }): Promise<Built>

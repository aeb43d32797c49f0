export const LIMIT: number
export const SHEET_LIMIT: number
export const ANY_LIMIT: number
export const SHEET: string
/** The scripts fetched before a formula is opened. */
export interface FirstLoad {
  readonly page: readonly string[]
  /** By template: for the page, and a sheet made from it opened to be filled in. */
  readonly sheets: Readonly<Record<string, readonly string[]>>
  /** By template: all its drawings take, those below the first screen too. */
  readonly later: Readonly<Record<string, readonly string[]>>
}
export interface Built extends FirstLoad {
  readonly dist: string
}
export function build(options?: { root?: string; logLevel?: 'silent' | 'error' | 'warn' | 'info' }): Promise<Built>

export const LIMIT: number
export interface Built {
  readonly dist: string
  readonly files: readonly { readonly name: string; readonly size: number }[]
  readonly total: number
}
export function build(options?: { root?: string; logLevel?: 'silent' | 'error' | 'warn' | 'info' }): Promise<Built>

export interface Site {
  readonly url: string
  readonly port: number
  readonly close: () => Promise<void>
}
export function fileFor(root: string, base: string, url: string): string | undefined
export function serve(options: { root: string; port?: number; host?: string; base?: string }): Promise<Site>

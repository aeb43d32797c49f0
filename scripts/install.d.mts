export const ROOT: string
export function isInstalled(root?: string): boolean
export function install(root?: string): void

/** Made by vite/functions.ts. */
declare module 'virtual:function-names' {
  /** For each file of functions, their names with a space between. */
  export const FUNCTION_NAMES: Readonly<Record<import('./index.ts').SubjectFile, string>>
}

declare module 'virtual:guide' {
  export const GUIDE: import('../language/index.ts').Guide
}

/** Made by vite/functions.ts. */
declare module 'virtual:function-names' {
  /** For each file of functions, their names with a space between. */
  export const FUNCTION_NAMES: Readonly<Record<import('./index.ts').SubjectFile, string>>
}

declare module 'virtual:guide' {
  export const GUIDE: import('../language/index.ts').Guide
}

/** Made by vite/published.ts. */
declare module 'virtual:published' {
  /** Address of the comparisons with published values, as JSON. */
  export const PUBLISHED: string
  /** Address of the validation page. */
  export const VALIDATION: string
}

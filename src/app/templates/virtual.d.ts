/** Made by vite/shelf-figures.ts. */
declare module 'virtual:shelf-figures' {
  /** By template: the address of its small figure, empty where it has none, and one or two of its figures in words. */
  export const FIGURES: Readonly<Record<string, { readonly src: string; readonly words: string }>>
}

/** Made by vite/released.ts. */
declare module 'virtual:released-jobs' {
  /** By job and digest: the address of its worksheet as it was released; empty where it is as the template is now. */
  export const RELEASED: Readonly<Record<string, Readonly<Record<string, string>>>>
}

/** Made by vite/templates.ts. */
declare module 'virtual:templates' {
  /** Where each template's file is, by key. */
  export const TEMPLATES: Readonly<Record<string, string>>
  /** Where the marks of all templates' formulas are. */
  export const INDEX: string
  /** Where the roles, names and parts are that sheets are composed of. */
  export const PARTS: string
}

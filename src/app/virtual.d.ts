/** Made by vite/shelf-figures.ts. */
declare module 'virtual:shelf-figures' {
  /** By template: the address of its small figure, empty where it has none, and one or two of its figures in words. */
  export const FIGURES: Readonly<Record<string, { readonly src: string; readonly words: string }>>
}

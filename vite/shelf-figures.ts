import type { Plugin } from 'vite'
import { madeModule } from './made.ts'
import type { ShelfFigure } from './shelf/make.ts'

interface Made {
  readonly figures: readonly ShelfFigure[]
}

/**
 * Draws a small figure for each template, through the engine and the drawings themselves, and writes it out as a file:
 * the shelf shows it without a script. The page has the addresses, and one or two figures in words.
 */
export const shelfFigures = (): Plugin =>
  madeModule<Made>({
    plugin: 'evenfield-shelf-figures',
    name: 'virtual:shelf-figures',
    entry: 'vite/shelf/all.ts',
    write: ({ figures }, { place, follow }) => {
      const shown = figures.map(({ key, svg, words }) => {
        follow(key)
        return [key, { src: svg === undefined ? '' : place(key, 'svg', svg), words }]
      })
      return `export const FIGURES = ${JSON.stringify(Object.fromEntries(shown))}`
    },
  })

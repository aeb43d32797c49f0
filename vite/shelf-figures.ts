import { createHash } from 'node:crypto'
import { join, resolve } from 'node:path'
import { type Plugin, runnerImport } from 'vite'
import type { ShelfFigure } from './shelf/make.ts'

const NAME = 'virtual:shelf-figures'

interface Made {
  readonly figures: readonly ShelfFigure[]
}

const hash = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 8)

/**
 * Draws a small figure for each template, through the engine and the drawings themselves, and writes it out as a file:
 * the shelf shows it without a script. The page has the addresses, and one or two figures in words.
 */
export function shelfFigures(): Plugin {
  let root: string
  let base: string
  let building: boolean
  return {
    name: 'evenfield-shelf-figures',
    configResolved(config) {
      root = config.root
      base = config.base
      building = config.command === 'build'
    },
    resolveId: (id) => (id === NAME ? `\0${NAME}` : undefined),
    async load(id) {
      if (id !== `\0${NAME}`) return undefined
      const all = join(root, 'vite/shelf/all.ts')
      const { module, dependencies } = await runnerImport<Made>(all, { root, configFile: false, logLevel: 'error' })
      for (const file of [all, ...dependencies]) this.addWatchFile(resolve(root, file))
      const placed = (key: string, svg: string): string => {
        if (!building) return `data:image/svg+xml,${encodeURIComponent(svg)}`
        const fileName = `assets/${key}-${hash(svg)}.svg`
        this.emitFile({ type: 'asset', fileName, source: svg })
        return base + fileName
      }
      const figures = module.figures.map(({ key, svg, words }) => {
        this.addWatchFile(join(root, 'templates', `${key}.json`))
        return [key, { src: svg === undefined ? '' : placed(key, svg), words }]
      })
      return `export const FIGURES = ${JSON.stringify(Object.fromEntries(figures))}`
    },
  }
}

import { createHash } from 'node:crypto'
import { join, resolve } from 'node:path'
import { type Plugin, runnerImport } from 'vite'

/** What a maker may do with what it makes. */
export interface Making {
  /** Writes a text out as a file of the site. Gives its address. */
  place(name: string, ending: Ending, text: string): string
  /** Made anew when this template changes. */
  follow(template: string): void
}

interface Options<Made> {
  readonly plugin: string
  /** The module's name, to be imported by: `virtual:templates`. */
  readonly name: string
  /** The file that is run, with our own source behind it. */
  readonly entry: string
  /** The module's source, from what the file exports. */
  readonly write: (made: Made, making: Making) => string
}

const TYPES = { svg: 'image/svg+xml', json: 'application/json', html: 'text/html', css: 'text/css' } as const
type Ending = keyof typeof TYPES
const hash = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 8)

/** A module that is made while the site is built, by running the program's own code. */
export function madeModule<Made>({ plugin, name, entry, write }: Options<Made>): Plugin {
  const id = `\0${name}`
  let root: string
  let base: string
  let building: boolean
  return {
    name: plugin,
    configResolved(config) {
      root = config.root
      base = config.base
      building = config.command === 'build'
    },
    resolveId: (asked) => (asked === name ? id : undefined),
    async load(asked) {
      if (asked !== id) return undefined
      const file = join(root, entry)
      const { module, dependencies } = await runnerImport<Made>(file, { root, configFile: false, logLevel: 'error' })
      for (const one of [file, ...dependencies]) this.addWatchFile(resolve(root, one))
      return write(module, {
        place: (called, ending, text) => {
          if (!building) return `data:${TYPES[ending]},${encodeURIComponent(text)}`
          const fileName = `assets/${called}-${hash(text)}.${ending}`
          this.emitFile({ type: 'asset', fileName, source: text })
          return base + fileName
        },
        follow: (template) => this.addWatchFile(join(root, 'templates', `${template}.json`)),
      })
    },
  }
}

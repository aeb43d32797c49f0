import { createHash } from 'node:crypto'
import { join, resolve } from 'node:path'
import { type Plugin, runnerImport } from 'vite'
import type { FormulaIndex, TemplateFile } from '../src/app/template-file.ts'

const NAME = 'virtual:templates'

interface Made {
  readonly files: readonly (readonly [string, TemplateFile])[]
  readonly index: FormulaIndex
}

const hash = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 8)

/**
 * Runs parser, checker and lowering over every template, and writes what its formulas mean beside it, as data: a
 * template is filled in without any of the three. The page has the addresses.
 */
export function templates(): Plugin {
  let root: string
  let base: string
  let building: boolean
  return {
    name: 'evenfield-templates',
    configResolved(config) {
      root = config.root
      base = config.base
      building = config.command === 'build'
    },
    resolveId: (id) => (id === NAME ? `\0${NAME}` : undefined),
    async load(id) {
      if (id !== `\0${NAME}`) return undefined
      const all = join(root, 'vite/templates/all.ts')
      const { module, dependencies } = await runnerImport<Made>(all, { root, configFile: false, logLevel: 'error' })
      for (const file of [all, ...dependencies]) this.addWatchFile(resolve(root, file))
      const placed = (name: string, data: unknown): string => {
        const text = JSON.stringify(data)
        if (!building) return `data:application/json,${encodeURIComponent(text)}`
        const fileName = `assets/${name}-${hash(text)}.json`
        this.emitFile({ type: 'asset', fileName, source: text })
        return base + fileName
      }
      const addresses = module.files.map(([key, file]) => {
        this.addWatchFile(join(root, 'templates', `${key}.json`))
        return [key, placed(key, file)]
      })
      return [
        `export const TEMPLATES = ${JSON.stringify(Object.fromEntries(addresses))}`,
        `export const INDEX = ${JSON.stringify(placed('formulas', module.index))}`,
      ].join('\n')
    },
  }
}

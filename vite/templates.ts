import type { Plugin } from 'vite'
import type { FormulaIndex, TemplateFile } from '../src/app/templates/template-file.ts'
import type { PartFiles } from '../src/worksheet/compose/part-library.ts'
import { madeModule } from './made.ts'

interface Made {
  readonly parts: PartFiles
  readonly files: readonly (readonly [string, TemplateFile])[]
  readonly index: FormulaIndex
}

/**
 * Runs parser, checker and lowering over every template, and writes what its formulas mean beside it, as data: a
 * template is filled in without any of the three. The page has the addresses.
 */
export const templates = (): Plugin =>
  madeModule<Made>({
    plugin: 'evenfield-templates',
    name: 'virtual:templates',
    entry: 'vite/templates/all.ts',
    write: ({ files, index, parts }, { place, follow }) => {
      const addresses = files.map(([key, file]) => {
        follow(key)
        return [key, place(key, 'json', JSON.stringify(file))]
      })
      return [
        `export const TEMPLATES = ${JSON.stringify(Object.fromEntries(addresses))}`,
        `export const PARTS = ${JSON.stringify(place('parts', 'json', JSON.stringify(parts)))}`,
        `export const INDEX = ${JSON.stringify(place('formulas', 'json', JSON.stringify(index)))}`,
      ].join('\n')
    },
  })

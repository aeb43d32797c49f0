import { join, resolve } from 'node:path'
import { type Plugin, runnerImport } from 'vite'
import type { FunctionRecord } from '../src/language/index.ts'
import { GUIDE_KEYS, stripGuide } from './strip-guide.ts'

const FOLDER = /[\\/]src[\\/]functions[\\/][\w-]+[\\/][\w-]+\.ts$/

interface Functions {
  readonly SUBJECTS: Readonly<Record<string, readonly FunctionRecord[]>>
  readonly FUNCTIONS: readonly FunctionRecord[]
}

/** Which function is in which file. */
const names = ({ SUBJECTS }: Functions): string => {
  const table = Object.entries(SUBJECTS).map(([file, records]) => [file, records.map(({ name }) => name).join(' ')])
  return `export const FUNCTION_NAMES = ${JSON.stringify(Object.fromEntries(table))}`
}

const guide = ({ FUNCTIONS }: Functions): string => {
  const texts = FUNCTIONS.map((record) => [
    record.name,
    Object.fromEntries(GUIDE_KEYS.map((key) => [key, record[key]])),
  ])
  return `export const GUIDE = new Map(${JSON.stringify(texts)})`
}

const MADE: Readonly<Record<string, (functions: Functions) => string>> = {
  'virtual:function-names': names,
  'virtual:guide': guide,
}

/**
 * The functions as the page loads them: a subject without what only the guide reads, the guide as one module, and
 * the table that says which file to fetch for a function. All of it is made from the records themselves.
 */
export function functions(): Plugin {
  let root: string
  return {
    name: 'evenfield-functions',
    enforce: 'pre',
    configResolved(config) {
      root = config.root
    },
    resolveId: (id) => (id in MADE ? `\0${id}` : undefined),
    async load(id) {
      const make = MADE[id.replace('\0', '')]
      if (!make) return undefined
      const index = join(root, 'src/functions/index.ts')
      const { module, dependencies } = await runnerImport<Functions>(index, {
        root,
        configFile: false,
        logLevel: 'error',
      })
      for (const file of [index, ...dependencies]) this.addWatchFile(resolve(root, file))
      return make(module)
    },
    transform(code, id) {
      return FOLDER.test(id) ? { code: stripGuide(code, id), map: null } : undefined
    },
  }
}

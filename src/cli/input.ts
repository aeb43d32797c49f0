import { readFileSync } from 'node:fs'
import { USUAL_SEED } from '../worksheet/simulation/draws.ts'
import { InputError } from './input-error.ts'
import { onlyOperand, readOptions } from './options.ts'
import * as words from './words.ts'

/** A cell's name and the text that is typed for it. */
export interface NamedText {
  readonly name: string
  readonly text: string
}

export interface Arguments {
  /** The file, or the formula. */
  readonly subject: string
  readonly sets: readonly NamedText[]
  readonly json: boolean
  /** Every figure of an example is taken as the user's own. */
  readonly asMine: boolean
  /** Suggestions for checks that fail or are marginal are searched. */
  readonly advice: boolean
  /** Results to bring to a value. */
  readonly targets: readonly NamedText[]
  readonly simulation?: { readonly tries: number; readonly seed: number }
}

/** The options of `compute` and `formula`: those that take a text, and those that are given or not. */
const WITH_TEXT = { compute: ['set', 'target', 'simulate', 'seed'], formula: ['set'] } as const
const FLAGS = { compute: ['json', 'as-mine', 'advice'], formula: ['json'] } as const

/** Reads `SUBJECT [--set name=text]… [--json]`, and for `compute` what only a sheet is asked. Throws InputError. */
export function readArguments(verb: 'compute' | 'formula', args: readonly string[]): Arguments {
  const { values, positionals } = readOptions(verb, asOperands(args, WITH_TEXT[verb], FLAGS[verb]), {
    set: { type: 'string', multiple: true },
    json: { type: 'boolean' },
    'as-mine': { type: 'boolean' },
    advice: { type: 'boolean' },
    target: { type: 'string', multiple: true },
    simulate: { type: 'string' },
    seed: { type: 'string' },
  })
  const simulation = readSimulation(values.simulate, values.seed)
  return {
    subject: onlyOperand(verb, positionals),
    sets: (values.set ?? []).map(readSet),
    json: values.json ?? false,
    asMine: values['as-mine'] ?? false,
    advice: values.advice ?? false,
    targets: (values.target ?? []).map(readNamed('target')),
    ...(simulation ? { simulation } : {}),
  }
}

const MOST_TRIES = 100_000_000

function readSimulation(tries: string | undefined, seed: string | undefined): Arguments['simulation'] {
  if (tries === undefined) {
    if (seed !== undefined) throw new InputError(words.seedAlone)
    return undefined
  }
  const count = wholeNumber('--simulate', tries, words.howManyTries)
  if (count < 1 || count > MOST_TRIES) throw new InputError(words.tries(MOST_TRIES, tries))
  return { tries: count, seed: wholeNumber('--seed', seed ?? String(USUAL_SEED), words.sameSeed) }
}

function wholeNumber(option: string, text: string, meaning: string): number {
  if (/^-?\d{1,15}$/.test(text)) return Number(text)
  throw new InputError(words.wholeNumber(option, meaning, text))
}

const NAMED: readonly string[] = ['set', 'target']

/** A formula may start with a minus sign: only known options are options, all else is moved behind `--`. */
function asOperands(args: readonly string[], withText: readonly string[], flags: readonly string[]): string[] {
  const known = [...withText, ...flags].map((option) => `--${option}`)
  const options: string[] = []
  const operands: string[] = []
  for (let i = 0; i < args.length; i++) {
    const arg = args[i] as string
    const option = withText.find((one) => arg === `--${one}` || arg.startsWith(`--${one}=`))
    if (flags.some((flag) => arg === `--${flag}`) || (option !== undefined && arg.includes('='))) options.push(arg)
    else if (option !== undefined) {
      const value = args[++i]
      if (value === undefined)
        throw new InputError(words.optionTakes(option, NAMED.includes(option) ? words.nameEqualsText : words.aNumber))
      options.push(`--${option}=${value}`)
    } else if (/^--[a-z]/.test(arg)) throw new InputError(words.noOption(arg, known))
    else operands.push(arg)
  }
  return [...options, '--', ...operands]
}

/** Reads the `name=text` of an option. Throws InputError. */
const readNamed =
  (option: string) =>
  (text: string): NamedText => {
    const at = text.indexOf('=')
    if (at < 1) throw new InputError(words.namedTakes(option, text))
    return { name: text.slice(0, at).trim(), text: text.slice(at + 1) }
  }
export const readSet = readNamed('set')

/** The text of a file, or of standard input where the path is `-`. Throws what the system says. */
export const readText = (path: string): string => readFileSync(path === '-' ? 0 : path, 'utf8')

/** Why a file cannot be read or written, in words. */
export function whyUnread(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code
  if (code === 'ENOENT') return words.noFile
  if (code === 'EISDIR') return words.aFolder
  return code === 'EACCES' ? words.notPermitted : String(code ?? (error as Error).message)
}

/** The same for a folder, or a file to write in it: a missing file is then a missing folder. */
export const whyNoFolder = (error: unknown): string =>
  (error as NodeJS.ErrnoException).code === 'ENOENT' ? words.noFolder : whyUnread(error)

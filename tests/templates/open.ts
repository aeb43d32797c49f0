import { readdirSync, readFileSync } from 'node:fs'
import { expect } from 'vitest'
import { readParts, readSheetOrJob } from '../../src/cli/part-files.ts'
import { LIBRARY } from '../../src/functions/index.ts'
import { namesFor } from '../../src/worksheet/compose/part-library.ts'
import { isNamed, Sheet, type Worksheet } from '../../src/worksheet/index.ts'

const FOLDER = new URL('../../templates/', import.meta.url)

const templates = new Map<string, Worksheet>()

/** A job's sheet as its file composes it, passed by the schema. */
export function readTemplate(name: string): Worksheet {
  const worksheet = templates.get(name) ?? readSheetOrJob(readFileSync(new URL(`${name}.json`, FOLDER), 'utf8'))
  templates.set(name, worksheet)
  return worksheet
}

/** The names of all jobs. */
export const JOBS: readonly string[] = readdirSync(FOLDER).flatMap((file) =>
  file.endsWith('.json') ? [file.replace('.json', '')] : [],
)

/** A template filled in, and its figures by name. */
export class Filled {
  readonly sheet: Sheet

  constructor(worksheet: Worksheet) {
    this.sheet = new Sheet(worksheet, LIBRARY)
  }

  /** A figure in coherent SI. */
  number(name: string): number {
    const value = this.value(name)
    if (typeof value !== 'number') throw new Error(`“${name}” is no number but ${JSON.stringify(value)}.`)
    return value
  }

  /** Lengths in mm, which the tests compute in. */
  mm(name: string): number {
    return this.number(name) * 1000
  }

  value(name: string): unknown {
    const outcome = this.sheet.outcome(this.idOf(name))
    if (outcome.state !== 'value') throw new Error(`“${name}” has no value: ${this.problem(name)}`)
    return outcome.value
  }

  /** As shown, with the nearest mark where there is one. */
  shown(name: string): { readonly text: string; readonly mark?: string } {
    const outcome = this.sheet.outcome(this.idOf(name))
    if (outcome.state !== 'value') throw new Error(`“${name}” has no value: ${this.problem(name)}`)
    const { text, mark } = outcome.shown
    return mark === undefined ? { text } : { text, mark }
  }

  state(check: string): string {
    return this.sheet.check(this.idOf(check)).state
  }
  message(check: string): string {
    return this.sheet.check(this.idOf(check)).message
  }

  get checks(): string[] {
    return this.sheet.cells.filter(isNamed).flatMap(({ kind, name }) => (kind === 'check' ? [name] : []))
  }
  get failing(): string[] {
    return this.checks.filter((check) => this.state(check) === 'fail')
  }

  /** Everything that does not compute, each with why; empty when all is well. */
  get problems(): string[] {
    return this.sheet.cells
      .filter(isNamed)
      .flatMap((cell) => {
        const { kind, id, name } = cell
        // A piece of kit need not be chosen: what it would fill in is filled in.
        if (cell.kind === 'given' && cell.entry === 'kit' && cell.value === '') return []
        if (kind !== 'check') return this.sheet.outcome(id).state === 'value' ? [] : [`${name}: ${this.problem(name)}`]
        // It says nothing before something is measured, and nothing has been.
        if (cell.kind === 'check' && cell.needs_measured) return []
        const { state, message } = this.sheet.check(id)
        return state === 'waiting' || state === 'error' ? [`${name}: ${message}`] : []
      })
      .concat(this.drawingProblems)
  }

  private get drawingProblems(): string[] {
    return this.sheet.cells.flatMap((cell) =>
      cell.kind === 'drawing'
        ? Object.entries(this.sheet.drawing(cell.id).missing).map(([input, why]) => `${cell.id}.${input}: ${why}`)
        : [],
    )
  }

  private problem(name: string): string {
    const outcome = this.sheet.outcome(this.idOf(name))
    if (outcome.state === 'error') return outcome.diagnostics.map(({ message }) => message).join(' ')
    return outcome.state === 'waiting' ? `waits for ${outcome.on.join(', ')}` : ''
  }

  private idOf(name: string): string {
    const cell = this.sheet.named(name) ?? this.sheet.named(nowCalled(this.sheet.worksheet, name))
    if (!cell) throw new Error(`No cell is named “${name}”.`)
    return cell.id
  }
}

/** What the sheet calls a name that an older sheet had. */
function nowCalled({ cells }: Worksheet, name: string): string {
  const has = (one: string): boolean => cells.some((cell) => isNamed(cell) && cell.name === one)
  return has(name) ? name : (namesFor(readParts(), name, has)[0] ?? name)
}

/** Opens a template with other givens than its own, and results as measured, as one would type them. */
export function open(name: string, givens: Readonly<Record<string, string>> = {}): Filled {
  const worksheet = readTemplate(name)
  const typed = new Map(Object.entries(givens).map(([one, text]) => [nowCalled(worksheet, one), text]))
  const left = new Set(typed.keys())
  const cells = worksheet.cells.map((cell) => {
    if (cell.kind !== 'given' && cell.kind !== 'result') return cell
    const text = typed.get(cell.name)
    if (text === undefined) return cell
    left.delete(cell.name)
    return { ...cell, [cell.kind === 'given' ? 'value' : 'measured']: text }
  })
  if (left.size > 0) throw new Error(`${name} has no given or result named ${[...left].join(', ')}.`)
  return new Filled({ ...worksheet, cells })
}

/** A figure that a sentence proposes; it is in error where the sentence proposes none, so that nothing is tried by mistake. */
export function proposed(message: string, pattern: RegExp): string {
  const found = pattern.exec(message)?.[1]
  if (found === undefined) throw new Error(`“${message}” proposes nothing that ${pattern} finds.`)
  return found
}

/** At its defaults a template computes throughout and fails one check at most. */
export function expectSettled(sheet: Filled): void {
  expect(sheet.problems).toEqual([])
  expect(sheet.failing.length).toBeLessThanOrEqual(1)
}

/** One filling holds the check, another fails it, and both messages are whole sentences. */
export function expectRendered(held: Filled, failed: Filled, check: string): void {
  expect(['pass', 'marginal'], held.message(check)).toContain(held.state(check))
  expect(failed.state(check), failed.message(check)).toBe('fail')
  for (const sheet of [held, failed]) {
    expect(sheet.message(check)).not.toMatch(/—|[{}]|undefined|NaN/)
    expect(sheet.message(check)).toMatch(/\.$/)
  }
}

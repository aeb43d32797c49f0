import { expect } from 'vitest'
import { LIBRARY } from '../../src/functions/index.ts'
import {
  applyFix,
  ComputeError,
  checkFormula,
  computable,
  computeOnce,
  type Diagnostic,
  number,
  record,
  type Scope,
  showValue,
  TEXT,
  type Type,
  type Value,
  YES_NO,
} from '../../src/language/index.ts'
import { ILLUMINANCE, LENGTH, LUMINOUS_INTENSITY, NONE, TIME } from '../../src/units/index.ts'

/** The cells these tests write formulas about, with their values in coherent SI. */
const CELLS: ReadonlyMap<string, readonly [Type, Value]> = new Map<string, readonly [Type, Value]>([
  ['m', [number(NONE), 0.25]],
  ['x', [number(NONE), 3]],
  ['width', [number(LENGTH), 0.6]],
  ['play', [number(LENGTH), 0.002]],
  ['original_width', [number(LENGTH), 0.61]],
  ['wait', [number(TIME), 2]],
  ['intensity', [number(LUMINOUS_INTENSITY), 1000]],
  ['bright', [number(ILLUMINANCE), 500]],
  ['lit', [YES_NO, true]],
  ['profile', [TEXT, 'wide']],
  ['sensor', [record('size', { width: number(LENGTH), height: number(LENGTH) }), { width: 0.036, height: 0.024 }]],
])

export type Cells = ReadonlyMap<string, readonly [Type, Value]>

export const scopeOf = (cells: Cells): Scope => ({
  library: LIBRARY,
  typeOf: (name) => cells.get(name)?.[0],
  names: () => cells.keys(),
})
export const SCOPE = scopeOf(CELLS)

/** With a focal length named `f` in the sheet. */
export const WITH_F: Cells = new Map([...CELLS, ['f', [number(LENGTH), 0.06] as const]])

export function computed(text: string, cells: Cells = CELLS): { value: Value; shown: string } {
  const checked = checkFormula(text, scopeOf(cells))
  if (!checked.root) throw new ComputeError(checked.diagnostics.map(({ message }) => message).join(' '))
  const ready = computable(checked.root, checked.mayBeInfinite)
  const { value } = computeOnce(ready, (name) => (cells.get(name) as readonly [Type, Value])[1])
  return { value, shown: showValue(value, ready.type).text }
}

export const shown = (text: string, cells: Cells = CELLS): string => computed(text, cells).shown

/** All that is said of a formula; every span and every fix lies inside the text. */
export function diagnosed(text: string, cells: Cells = CELLS): readonly Diagnostic[] {
  const { diagnostics } = checkFormula(text, scopeOf(cells))
  for (const { from, to, fixes } of diagnostics)
    for (const span of [{ from, to }, ...fixes]) {
      expect(span.from).toBeGreaterThanOrEqual(0)
      expect(span.to).toBeGreaterThanOrEqual(span.from)
      expect(span.to).toBeLessThanOrEqual(text.length)
    }
  return diagnostics
}

/** The one error of a formula. */
export function errorOf(text: string, cells: Cells = CELLS): Diagnostic {
  const errors = diagnosed(text, cells).filter(({ severity }) => severity === 'error')
  expect(
    errors.map(({ message }) => message),
    text,
  ).toHaveLength(1)
  return errors[0] as Diagnostic
}

export const warningsOf = (text: string, cells: Cells = CELLS): readonly Diagnostic[] =>
  diagnosed(text, cells).filter(({ severity }) => severity === 'warning')

/** The text a diagnostic points at. */
export const pointed = (text: string, { from, to }: Diagnostic): string => text.slice(from, to)

/** The formulas its fixes make, each without the error that they fix. */
export function fixed(text: string, diagnostic: Diagnostic, cells: Cells = CELLS): string[] {
  return diagnostic.fixes.map((one) => {
    const after = applyFix(text, one)
    expect(
      diagnosed(after, cells).map(({ message }) => message),
      after,
    ).not.toContain(diagnostic.message)
    return after
  })
}

/** Says that a formula is refused, where, in words with this in them, and what the fixes make of it. */
export function expectRefused(text: string, at: string, fixes: readonly string[], cells: Cells = CELLS) {
  const error = errorOf(text, cells)
  expect(pointed(text, error), text).toBe(at)
  expect(fixed(text, error, cells), text).toEqual(fixes)
}

/** Says of a formula’s one error, or its one doubt, where it is, its whole message and what its fixes make of the formula. */
const expectFound =
  (severity: 'error' | 'warning') =>
  (text: string, at: string, message: string, fixes: readonly string[], cells: Cells = CELLS): void => {
    const found = diagnosed(text, cells).map((one) => ({
      severity: one.severity,
      at: pointed(text, one),
      message: one.message,
      fixes: one.fixes.map((fix) => applyFix(text, fix)),
    }))
    expect(found, text).toEqual([{ severity, at, message, fixes }])
  }
export const expectSaid = expectFound('error')
export const expectDoubted = expectFound('warning')

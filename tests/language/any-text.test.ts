import fc from 'fast-check'
import { expect, test } from 'vitest'
import { checkUnits } from '../../src/language/checking/check.ts'
import { lower } from '../../src/language/compiling/lower.ts'
import { ComputeError, checkFormula, namesIn, renameIn } from '../../src/language/index.ts'
import { computed, diagnosed, SCOPE } from './make.ts'

const PIECES = [
  ...['1', '2.5', '1e3', '1/125 s', '2/3 stop', '85 mm', '3 m^2', '[cd/m^2]', 'f/8', '1:4', '.5', '5.', '1,5', '20 °C'],
  ...['width', 'x', 'm', 'f', 'sensor', 'lit', 'nothing', '__proto__', 'infinity', 'pi', 'profile'],
  ...['+', '-', '−', '*', '/', '^', '**', '(', ')', '{', '}', '[', ']', ',', ':', '.', '=', '==', '<', '≤', '±', '+-'],
  ...[
    'and',
    'or',
    'not',
    'yes',
    'when(',
    'sqrt(',
    'max(',
    'depth_of_field(',
    'blur:',
    '"wide"',
    '"',
    '°',
    '²',
    ' ',
    '  ',
  ],
  ...['\u0000', '\ud800', '\u202e', '\u00a0', '\u2009', '–', 'µ', '℃', '…', "'"],
]
const nearly = fc.array(fc.constantFrom(...PIECES), { maxLength: 14 }).map((pieces) => pieces.join(''))
const spaced = fc.array(fc.constantFrom(...PIECES), { maxLength: 14 }).map((pieces) => pieces.join(' '))
const text = fc.oneof(
  nearly,
  spaced,
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.string({ unit: 'grapheme-ascii' }),
)

test('any text is checked, computed or refused with places inside it, never a crash', () => {
  fc.assert(
    fc.property(text, (formula) => {
      const errors = diagnosed(formula).filter(({ severity }) => severity === 'error')
      try {
        computed(formula)
        expect(errors).toEqual([])
      } catch (error) {
        if (!(error instanceof ComputeError)) throw error
        if (errors.length === 0) expect(checkFormula(formula, SCOPE).root, `${formula}: ${error.message}`).toBeDefined()
      }
    }),
    { numRuns: 2000 },
  )
})

test('every name in any text has its place, and is replaced there alone', () => {
  fc.assert(
    fc.property(text, (formula) => {
      for (const { name, from, to } of namesIn(formula)) expect(formula.slice(from, to)).toBe(name)
      expect(renameIn(formula, 'x', 'x')).toBe(formula)
      expect(namesIn(renameIn(formula, 'x', 'z')).map(({ name }) => name)).toEqual(
        namesIn(formula).map(({ name }) => (name === 'x' ? 'z' : name)),
      )
    }),
    { numRuns: 2000 },
  )
})

test('what is lowered holds generated names and plain signs alone', () => {
  fc.assert(
    fc.property(text, (formula) => {
      const { root } = checkUnits(formula, SCOPE)
      fc.pre(root !== undefined)
      let lowered: string
      try {
        lowered = lower(root as NonNullable<typeof root>).text
      } catch (error) {
        if (error instanceof ComputeError) return
        throw error
      }
      expect(lowered).toMatch(/^(?:a\d+|f_\d+|and|or|not|[-+*/^?:(), ]|[<>]=?|[=!]=)+$/)
    }),
    { numRuns: 1500 },
  )
})

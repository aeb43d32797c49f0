import { describe, expect, test } from 'vitest'
import { checkUnits } from '../../src/language/checking/check.ts'
import { testFixes } from '../../src/language/fixing/tested-fixes.ts'
import { applyFix, checkFormula, type Diagnostic, problem, warning } from '../../src/language/index.ts'
import { fix } from '../../src/language/values/diagnostic.ts'
import { SCOPE, scopeOf, WITH_F } from './make.ts'

/** What becomes of a formula whose first error offers to be replaced by each of these, as far as they pass the test. */
function tried(text: string, replacements: readonly string[], scope = SCOPE): string[] {
  const { diagnostics, reached } = checkUnits(text, scope)
  const fixes = replacements.map((one) => fix(one, 0, text.length))
  const [first, ...others] = diagnostics as [Diagnostic, ...Diagnostic[]]
  const [after] = testFixes(text, scope, [{ ...first, fixes }, ...others], reached) as [Diagnostic]
  return after.fixes.map((one) => applyFix(text, one))
}

describe('of the fixes of an error are offered', () => {
  test('those that leave no error, each result once', () => {
    expect(tried('width + x', ['width + play', 'width + x', 'width * x', 'width + play'])).toEqual([
      'width + play',
      'width * x',
    ])
  })

  test('those that lead nearer, where none leaves no error', () => {
    expect(tried('lit + 1 + nothing', ['x + 1 + nothing', 'lit + lit + nothing + other'])).toEqual(['x + 1 + nothing'])
    expect(tried('nothing + 1', ['anything + 1', 'none * nothing', 'none * 2']).slice(0, 1)) // x)).toEqual([])
    expect(
      tried('1 * nothing + 1 s', ['nothing + 1 s', '2 * 1 * nothing + 1 s', '1 mm + nothing', '1 mm * nothing']),
    ).toEqual(['1 mm + nothing', '1 mm * nothing'])
  })

  test('those after which the check comes further, however much it finds then', () => {
    expect(tried('width +', ['nothing + none', 'width + *'])).toEqual(['nothing + none'])
    expect(tried('2;', ['2 + * 3', 'nothing + none'])).toEqual(['2 + * 3', 'nothing + none'])
  })

  test('none after which the check comes less far, though it finds fewer or later errors', () => {
    expect(tried('nothing + none + 1', ['(width + none', 'width + 1 +', 'width; + 1'])).toEqual([])
  })

  test('unless that can be put right as well: both are one fix then', () => {
    expect(tried('nothing(2)', ['f/8(2)'])).toEqual(['f/8 * (2)'])
    const [error] = checkFormula('2 sqrt(4) + .5', SCOPE).diagnostics
    expect(error?.fixes).toEqual([{ label: 'Write 2 * sqrt(4) + 0.5', from: 0, to: 14, insert: '2 * sqrt(4) + 0.5' }])
  })

  test('the one result of several ways once', () => {
    expect(tried('2 +', ['2 sqrt(4)', '2 * sqrt(4)', '2  sqrt(4)'])).toEqual(['2 * sqrt(4)'])
  })

  test('first those that leave no doubt', () => {
    expect(tried('wait + x', ['2026-03-01', '1 / 125 s * (2026-03-01)', 'wait + wait'])).toEqual([
      'wait + wait',
      '2026-03-01',
      '1 / 125 s * (2026-03-01)',
    ])
  })

  test('eight at most', () => {
    const many = Array.from({ length: 12 }, (_, i) => `width + ${i + 1} mm`)
    expect(tried('width + x', many)).toEqual(many.slice(0, 8))
    expect(
      tried(
        'lit + nothing + none',
        many.map((one) => `${one} + nothing`),
      ),
    ).toHaveLength(8)
  })

  test('of a long formula only as many as can be tested at once', () => {
    const long = (end: string): string => `${'width + '.repeat(240)}${end}`
    const fixes = Array.from({ length: 8 }, (_, i) => long(`${i + 1} mm`))
    expect(long('x').length).toBeGreaterThan(1900)
    expect(tried(long('x'), fixes)).toEqual(fixes.slice(0, 6))
  })
})

describe('a chain of fixes', () => {
  /** So many misspelt names that each takes a step of its own. */
  const misspelt = (count: number): string => Array(count).fill('widht').join(' + ')
  const offered = (text: string): string[] => {
    const [error] = checkFormula(text, SCOPE).diagnostics
    return (error?.fixes ?? []).map((one) => applyFix(text, one))
  }

  test('is followed to its end for thirteen errors, and is one fix', () => {
    expect(offered(misspelt(13))).toEqual([misspelt(13).replaceAll('widht', 'width')])
  })

  test('is not for more: then each error has its own', () => {
    expect(offered(misspelt(14))).toEqual([misspelt(14).replace('widht', 'width')])
  })
})

describe('of the fixes of a doubt are offered', () => {
  const f = scopeOf(WITH_F)
  const doubted = (text: string, replacements: readonly string[]): string[] => {
    const { diagnostics, reached } = checkUnits(text, f)
    const at = diagnostics.findIndex(({ severity }) => severity === 'warning')
    const fixes = replacements.map((one) => fix(one, 0, text.length))
    const given = diagnostics.map((one, i) => (i === at ? { ...one, fixes } : one))
    return (testFixes(text, f, given, reached)[at] as Diagnostic).fixes.map((one) => applyFix(text, one))
  }

  test('those that settle it and bring no error', () => {
    expect(doubted('2 * f/8', ['2 * f / 8', '3 * f/8', '2 * f + 8', '2 * (f/8', '16 * f/16 + 2026-03-01'])).toEqual([
      '2 * f / 8',
      '16 * f/16 + 2026-03-01',
    ])
  })

  test('those that add no error to what is wrong elsewhere', () => {
    expect(
      doubted('f/8 * nothing', [
        'f / 8 * nothing',
        'f / 8 * nothing + lit',
        'f / 8 * (nothing',
        'nothing + none + lit * 2',
      ]),
    ).toEqual(['f / 8 * nothing'])
  })
})

test('what offers no fix stays as it is, beside what does', () => {
  const plain = warning('A doubt.', 0, 1)
  const wrong = problem('An error.', 0, 5, [fix('play', 0, 5)])
  expect(testFixes('width', SCOPE, [plain], 'units')).toEqual([plain])
  expect(testFixes('width', SCOPE, [plain, wrong], 'units')).toEqual([plain, wrong])
})

test('a formula that is only looked at for whether it is sound has its fixes untested', () => {
  const inserted = (isDraft: boolean): string[] =>
    checkFormula('lit = wide', { ...SCOPE, isDraft }).diagnostics.flatMap(({ fixes }) => fixes.map((one) => one.insert))
  expect(inserted(true)).toEqual(['"wide"'])
  expect(inserted(false)).toEqual([])
  const doubts = (text: string) => checkFormula(text, { ...scopeOf(WITH_F), isDraft: true }).diagnostics
  expect(doubts('1 / 125 s')[0]?.fixes).toHaveLength(1)
  expect(doubts('f/8 = 2')[0]?.fixes).toEqual([])
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { figureOf } from '../../../src/app/paper/figures.ts'
import { comparedOf } from '../../../src/app/stand/setting.ts'
import { reportOf } from '../../../src/cli/report.ts'
import { LIBRARY } from '../../../src/functions/index.ts'
import type { Value } from '../../../src/language/index.ts'
import { readGiven } from '../../../src/worksheet/document/read-given.ts'
import { FORMAT, VERSION } from '../../../src/worksheet/format/format.ts'
import { type Given, Sheet } from '../../../src/worksheet/index.ts'
import { PARTS } from '../compose/sets.ts'

/** Every given of every part that takes figures: each kind of field once. */
const GIVENS: readonly Given[] = [
  ...new Map(
    [...PARTS.names].flatMap(([name, known]): [string, Given][] => {
      const { entry = 'quantity', unit, label, least, most } = known
      if (!['quantity', 'size', 'list'].includes(entry)) return []
      const given = { kind: 'given', id: name, name, label, unit, least, most, value: '' } as Given
      return [[`${entry} ${unit} ${least} ${most}`, entry === 'quantity' ? given : ({ ...given, entry } as Given)]]
    }),
  ).values(),
]

/** The forms that lengths, times and the like are typed in besides the field’s own unit. */
const OTHER_UNITS: Readonly<Record<string, readonly string[]>> = {
  mm: ['cm', 'm', 'in'],
  m: ['mm', 'ft'],
  min: ['s', 'h'],
  h: ['min', 'd'],
  MB: ['GB', 'kB'],
  lx: ['klx', 'fc'],
}

const figures = fc
  .tuple(fc.integer({ min: 1, max: 999_999 }), fc.integer({ min: 0, max: 5 }))
  .map(([digits, places]) => `${Number((digits / 10 ** places).toPrecision(6))}`)

const texts = (given: Given): fc.Arbitrary<string> => {
  const units = ['', ...(OTHER_UNITS[given.unit ?? ''] ?? [])].map((unit) => (unit === '' ? '' : ` ${unit}`))
  const one = fc.tuple(figures, fc.constantFrom(...units)).map(([figure, unit]) => `${figure}${unit}`)
  if (given.entry === 'size') return fc.tuple(figures, figures).map(([width, height]) => `${width} x ${height}`)
  if (given.entry === 'list') return fc.array(figures, { minLength: 2, maxLength: 20 }).map((all) => all.join('; '))
  const written = given.unit?.trim() ?? ''
  if (written === 'f/') return figures.map((figure) => `f/${figure}`)
  if (written === '1:')
    return fc.oneof(
      figures,
      figures.map((figure) => `1:${figure}`),
    )
  if (written === '1/ s')
    return fc.oneof(
      figures,
      figures.map((figure) => `1/${figure}`),
    )
  const limits = fc.tuple(figures, figures).map(([figure, limit]) => `${figure} ± ${limit}`)
  return fc.oneof({ weight: 3, arbitrary: one }, { weight: 1, arbitrary: limits })
}

/** A shown text as one would type it again. */
const typedAgain = (text: string): string => text.replace(/^\{|\}$/g, '').replaceAll(', ', '; ')

function expectSame(found: Value | undefined, wanted: Value | undefined, text: string): void {
  const numbers = (value: Value | undefined): number[] =>
    typeof value === 'number'
      ? [value]
      : typeof value === 'object'
        ? Object.values(value as Readonly<Record<string, number>>)
        : []
  const [own, other] = [numbers(found), numbers(wanted)]
  expect(own.length, text).toBe(other.length)
  // In other units six digits may not be all there are: a third of an inch.
  for (const [at, value] of own.entries())
    expect(Math.abs(value - (other[at] as number)), text).toBeLessThanOrEqual(5e-6 * Math.abs(other[at] as number))
}

describe('a given echoes what was typed', () => {
  it('in its value, on the page, in the terminal, at the stand and on paper', () => {
    let echoed = 0
    for (const given of GIVENS)
      fc.assert(
        fc.property(texts(given), (text) => {
          const cell = { ...given, value: text }
          const sheet = new Sheet({ format: FORMAT, version: VERSION, title: 'One given', cells: [cell] }, LIBRARY)
          const outcome = sheet.outcome(cell.id)
          // What a field refuses it does not echo.
          if (outcome.state !== 'value') return
          echoed++
          const { figure, unit } = figureOf(cell, outcome)
          const stand = comparedOf(sheet, cell)
          const echoes = [
            outcome.readAs,
            outcome.shown.text,
            reportOf(outcome, text).shown,
            `${figure.replace(/(?<=\d) (?=\S+$)/, ' ')} ${unit}`.trim(),
            stand.targetText,
          ]
          for (const echo of echoes) {
            expect(echo, text).toBeTruthy()
            const again = readGiven({ ...cell, value: typedAgain(echo as string) })
            expectSame(again.value, outcome.value, `${given.name}: ${text} is shown as ${echo}`)
            if (outcome.tolerance !== undefined && given.entry !== 'size')
              expectSame(again.tolerance, outcome.tolerance, `${given.name}: ${text} is shown as ${echo}`)
          }
        }),
        { numRuns: 15 },
      )
    expect(echoed).toBeGreaterThan(10 * GIVENS.length * 0.5)
  })

  it.each([
    ['mm', '420.5', '420.5 mm'],
    ['mm', '1234.56', '1234.56 mm'],
    ['mm', '42.05 cm', '420.5 mm'],
    ['mm', '420.5 ± 0.25', '420.50 ± 0.25 mm'],
    ['f/', 'f/6.75', 'f/6.75'],
    ['1:', '1:13.25', '1:13.25'],
    ['1/ s', '0.3 s', '0.3 s'],
    ['1/ s', '1/125 s', '1/125 s'],
    ['stop', '0.125', '0.125 stop'],
    ['lx', '12345.6', '12\u202f345.6 lx'],
  ])('in a field of %s, %s is %s', (unit, value, shown) => {
    const cell: Given = { kind: 'given', id: 'one', name: 'one', label: '', unit, value }
    const sheet = new Sheet({ format: FORMAT, version: VERSION, title: 'One given', cells: [cell] }, LIBRARY)
    expect(sheet.outcome('one')).toMatchObject({ state: 'value', shown: { text: shown } })
  })

  it('also in the sentence of a check, whole or in part', () => {
    const cells = [
      { kind: 'given', id: 'a', name: 'thickness', label: '', unit: 'mm', value: '420.5' },
      { kind: 'given', id: 'b', name: 'original', label: '', entry: 'size', unit: 'mm', value: '420.5 x 297.25' },
      {
        kind: 'check',
        id: 'c',
        name: 'fits',
        condition: 'thickness < 1 mm',
        message: '{thickness} and {original.height} are too much',
      },
    ] as const
    const sheet = new Sheet(
      { format: FORMAT, version: VERSION, title: 'A check', cells: cells.map((cell) => ({ ...cell })) },
      LIBRARY,
    )
    expect(sheet.check('c').message).toBe('420.5 mm and 297.25 mm are too much')
  })
})

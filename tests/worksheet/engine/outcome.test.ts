import { describe, expect, test } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { type Callable, type Library, number } from '../../../src/language/index.ts'
import { NONE } from '../../../src/units/index.ts'
import { Sheet as PlainSheet } from '../../../src/worksheet/editing/sheet.ts'
import { type Cell, FORMAT, type Sheet, type ValueOutcome } from '../../../src/worksheet/index.ts'
import { FULL_CAPABILITIES } from '../../../src/worksheet/renaming/full-sheet.ts'
import { check, countingLibrary, given, result, seen, sheetOf } from '../make.ts'

const valued = (sheet: Sheet, id: string): ValueOutcome => {
  const outcome = sheet.outcome(id)
  if (outcome.state !== 'value') throw new Error(`“${id}”: ${JSON.stringify(outcome)}`)
  return outcome
}

describe('what a cell shows', () => {
  test('of a given is how its text was understood, and how else it could be', () => {
    const sheet = sheetOf([
      given('plain', '600', { unit: 'mm' }),
      given('other', '60 cm ± 1 mm', { unit: 'mm' }),
      given('light', '8 EV', { unit: 'lx' }),
      given('lit', '640', { unit: 'lx' }),
      given('time', '125', { unit: 's' }),
      result('twice', '2 * plain', { unit: 'mm' }),
    ])
    expect(valued(sheet, 'plain')).toMatchObject({ value: 0.6, readAs: '600 mm', offers: [], warnings: [] })
    expect(valued(sheet, 'plain')).not.toHaveProperty('tolerance')
    expect(valued(sheet, 'plain')).not.toHaveProperty('by')
    expect(valued(sheet, 'other').tolerance).toBeCloseTo(0.001, 12)
    expect(valued(sheet, 'other')).not.toHaveProperty('limits')
    expect(valued(sheet, 'light')).toMatchObject({ readAs: '640 lx', by: 'C = 250' })
    expect(valued(sheet, 'time').offers).toEqual([{ text: '1/125 s', label: 'a shutter time' }])
    expect(valued(sheet, 'twice')).toMatchObject({ offers: [], warnings: [] })
    expect(valued(sheet, 'twice')).not.toHaveProperty('readAs')
  })

  test('of a measured result says how what was typed was understood', () => {
    const sheet = sheetOf([
      result('lit', '600 lx', { unit: 'lx', measured: '8 EV' }),
      result('high', '60 mm', { unit: 'mm', measured: '6.1 cm' }),
      result('bare', '2 + 3', { measured: '4' }),
    ])
    expect(valued(sheet, 'lit')).toMatchObject({ by: 'C = 250', readAs: '640 lx' })
    expect(valued(sheet, 'high')).not.toHaveProperty('readAs')
    expect(valued(sheet, 'bare')).toMatchObject({ measured: { difference: '1 under', computed: { value: 5 } } })
  })

  test.each([
    ['4000 mm', '1.9 mm', '4000 mm'],
    ['4000 mm', '2.1 mm', '4000 ± 2 mm'],
    ['-4000 mm', '1.9 mm', '-4000 mm'],
    ['-4000 mm', '2.1 mm', '-4000 ± 2 mm'],
  ])(
    'of limits %s ± %s behind a result is %s: those far below its digits would only lengthen it',
    (value, by, text) => {
      const sheet = sheetOf([given('a', `${value} ± ${by}`), result('b', 'a', { unit: 'mm' })])
      sheet.engine.limitsBudget = Number.POSITIVE_INFINITY
      expect(seen(sheet, 'b')).toBe(text.replace('-', '−'))
      expect(valued(sheet, 'b').tolerance).toBeGreaterThan(0)
    },
  )

  test('of limits that are wider to one side is the wider one', () => {
    for (const [formula, tolerance] of [
      ['x ^ 3', 0.331],
      ['-(x ^ 3)', 0.331],
    ] as const) {
      const sheet = sheetOf([given('x', '1 ± 0.1'), result('y', formula)])
      sheet.engine.limitsBudget = Number.POSITIVE_INFINITY
      expect(valued(sheet, 'y').tolerance).toBeCloseTo(tolerance, 9)
    }
  })

  test('are doubts about its formula, cautions on its functions, and what may harm', () => {
    const sheet = sheetOf([
      given('n', '8'),
      given('height', '3 m', { unit: 'm' }),
      result('doubt', '1 / 60 s'),
      result('filter', 'filter_shift(n) + filter_shift(2)'),
      result('heat', 'irradiance_from_lux(2000 lx, 20 [lm/W])'),
      result('both', '1 / 60 s * lamp_elevation(height, 1 m) / 1 rad'),
    ])
    expect(valued(sheet, 'n')).toMatchObject({ warnings: [], cautions: [], safety: [] })
    expect(valued(sheet, 'doubt').warnings).toEqual([expect.objectContaining({ severity: 'warning', from: 0, to: 8 })])
    expect(valued(sheet, 'filter').cautions).toEqual(['A reading through the lens and its filter already includes it.'])
    expect(valued(sheet, 'heat').safety).toHaveLength(1)
    expect(valued(sheet, 'both').warnings).toEqual([
      expect.objectContaining({ to: 8 }),
      { severity: 'warning', message: expect.stringContaining('Over 45°'), from: 0, to: 46, fixes: [] },
    ])
  })
})

const LABELLED = [
  given('width', '', { unit: 'mm', label: 'Width of the page' }),
  given('height', '', { unit: 'mm', label: ' ' }),
  result('area', 'width * height', { label: 'Area' }),
]

describe('a check', () => {
  test('says what it waits for by the labels, or the names, of the cells', () => {
    const sheet = sheetOf([...LABELLED, check('k', 'area < 1 m^2')])
    expect(sheet.check('k')).toEqual({
      state: 'waiting',
      message: 'needs Width of the page and height.',
      diagnostics: [],
      needs: ['width', 'height'],
    })
    expect(sheet.checkState('k')).toBe('waiting')
  })

  const needing = (condition: string, ...cells: readonly Cell[]) => {
    const sheet = sheetOf([
      given('a', '5', { unit: 'mm' }),
      ...cells,
      check('k', condition, { needs_measured: ['b', 'read', 'nowhere'], passes: 'It fits.' }),
    ])
    expect(sheet.checkState('k')).toBe(sheet.check('k').state)
    return sheet.check('k')
  }
  const measured = (text: string) =>
    result('b', '2 * a', { unit: 'mm', label: 'Twice', ...(text === '' ? {} : { measured: text }) })
  const read = (text: string) => given('read', text, { unit: 'lx', label: 'Light' })

  test('may need results that are measured before it says anything', () => {
    const waits = { state: 'waiting', message: 'needs Twice to be measured.', needs: ['b'], diagnostics: [] }
    expect(needing('b < 1 m', measured(''))).toEqual(waits)
    expect(needing('b > 1 m', measured(''))).toEqual(waits)
    expect(needing('b < 1 m', measured('nonsense'))).toEqual(waits)
    expect(needing('b < 1 m', measured('11'))).toMatchObject({ state: 'pass', message: 'It fits.' })
    expect(needing('b > 1 m', measured('11'))).toMatchObject({ state: 'fail', message: 'k does not hold' })
  })

  test('may not pass without a reading, but fails without it', () => {
    const waits = { state: 'waiting', message: 'needs Light to be measured.', needs: ['read'], diagnostics: [] }
    expect(needing('a < 1 m', read(' '))).toEqual(waits)
    expect(needing('a > 1 m', read(' '))).toMatchObject({ state: 'fail' })
    expect(needing('a < 1 m', read('600'))).toMatchObject({ state: 'pass' })
    expect(needing('a < 1 m', read(''), measured(''))).toMatchObject({ needs: ['b', 'read'] })
    expect(needing('a < 1 m')).toMatchObject({ state: 'pass' })
  })

  test('says what it finds: its message, what it says when it holds, its label, or nothing', () => {
    const said = (more: object, condition = 'a < 1 m') =>
      sheetOf([given('a', '100 mm'), check('k', condition, { message: 'Too wide', ...more })]).check('k').message
    expect(said({ passes: 'Fits', label: 'Width' })).toBe('Fits')
    expect(said({ label: 'Width' })).toBe('Width')
    expect(said({})).toBe('')
    expect(said({ passes: 'Fits', label: 'Width' }, 'a > 1 m')).toBe('Too wide')
  })

  test('with doubts about its formula has them with its message', () => {
    const sheet = sheetOf([check('k', '1 / 30 s < 2 Hz')])
    expect(sheet.check('k').diagnostics).toEqual([expect.objectContaining({ severity: 'warning' })])
  })

  test('with the name of another is in error', () => {
    const sheet = sheetOf([given('a', '1'), check('k', 'a < 2'), { ...check('k', 'a < 2'), id: 'second' }])
    expect([sheet.checkState('k'), sheet.checkState('second')]).toEqual(['pass', 'error'])
    expect(sheet.check('second').message).toMatch(/already named “k”/)
  })

  test('shows in its message a side of a size as it was typed, and a computed figure rounded', () => {
    const sheet = sheetOf([
      given('page', '1234.56 x 400 mm', { entry: 'size' }),
      result('half', 'size(page.width / 2, 7.123456 mm)'),
      given('later', '', { unit: 'mm' }),
      check('k', 'page.width < 1 mm', {
        message: '{page.width}; { page.width }; {page.width * 1}; {half.width}; {nothing.width}; {2 * later}',
      }),
    ])
    expect(sheet.check('k').message).toBe('1234.56 mm; 1234.56 mm; 1235 mm; 617 mm; —; —')
  })
})

describe('an error', () => {
  test('names the label of the cell it comes from, and covers the formula of the other', () => {
    const sheet = sheetOf([
      given('n', '0', { label: 'Count' }),
      result('share', '5 mm / n', { label: 'Share' }),
      result('twice', 'share * 2'),
      given('typed', '3 x', { unit: 'mm' }),
    ])
    expect(sheet.outcome('twice')).toEqual({
      state: 'error',
      origin: 'share',
      diagnostics: [
        expect.objectContaining({ message: 'Fix “Share” first. Division by zero.', from: 0, to: 'share * 2'.length }),
      ],
    })
    expect(sheet.outcome('share')).not.toHaveProperty('origin')
  })

  test('of a number too large to compute covers the whole formula', () => {
    const sheet = sheetOf([
      given('n', '1e300'),
      result('large', 'n * n'),
      given('tubes', '1, 2', { entry: 'list', unit: 'mm' }),
      result('deep', 'tubes * n * n'),
    ])
    const sums = sheetOf([given('n', '1.7e308'), result('sum', 'n + n'), result('size', 'size((n + n) * 1 m, 1 m)')])
    expect(sums.outcome('sum')).toMatchObject({
      diagnostics: [{ message: expect.stringMatching(/too large/), from: 0, to: 5 }],
    })
    expect(sums.outcome('size')).toMatchObject({ diagnostics: [{ message: expect.stringMatching(/too large/) }] })
    for (const [id, to] of [
      ['large', 5],
      ['deep', 13],
    ] as const)
      expect(sheet.outcome(id)).toMatchObject({ state: 'error', diagnostics: [{ from: 0, to }] })
  })

  test.each([
    [Number.NaN, false, /not a number/],
    [Number.POSITIVE_INFINITY, false, /too large/],
    [Number.POSITIVE_INFINITY, true, undefined],
    [3, false, undefined],
  ])('is what a function gives that is no figure: %d', (gives, mayBeInfinite, message) => {
    const [one] = countingLibrary().library.values()
    const odd = {
      ...(one as Callable),
      name: 'odd',
      parameters: [],
      result: number(NONE),
      mayBeInfinite,
      compute: () => gives,
    }
    const library: Library = new Map<string, Callable>([...LIBRARY, ['odd', odd as Callable]])
    const outcome = sheetOf([result('r', 'odd()')], library).outcome('r')
    if (message)
      expect(outcome).toMatchObject({ diagnostics: [{ message: expect.stringMatching(message), from: 0, to: 5 }] })
    else expect(outcome).toMatchObject({ value: gives })
  })

  test('of a cycle covers the formula', () => {
    const sheet = sheetOf([result('a', 'b + 1'), result('b', 'a')])
    expect(sheet.outcome('a')).toMatchObject({ diagnostics: [{ from: 0, to: 5 }] })
  })

  test('of what limits are normal to is one of the given, beside that of its text', () => {
    const said = (value: string, coverage: string) => {
      const outcome = sheetOf([given('a', value, { distribution: 'normal', coverage })]).outcome('a')
      return outcome.state === 'error' ? outcome.diagnostics.length : outcome.state
    }
    expect([said('5 ± 1', 'two'), said('5 ± x', 'two'), said('5 ± x', '2'), said('5 ± 1', '2')]).toEqual([
      1,
      2,
      1,
      'value',
    ])
  })
})

describe('a drawing', () => {
  test('says what it lacks by label, and what is wrong by the labels of what a function was given', () => {
    const sheet = sheetOf([
      ...LABELLED,
      given('far', '-1 m', { unit: 'm', label: 'Far out' }),
      {
        kind: 'drawing',
        id: 'd',
        drawing: 'set-up',
        from: { one: 'area', two: 'width + height', three: 'lamp_elevation(1 m, far)', blank: ' ' },
      },
    ])
    expect(sheet.drawing('d')).toEqual({
      values: {},
      missing: {
        one: 'needs Area',
        two: 'needs Width of the page and height',
        three: expect.stringContaining('“Far out”'),
      },
    })
  })
})

describe('before the checker is here', () => {
  test('a formula is still loading, in a drawing as in a check', () => {
    const cells: Cell[] = [
      given('a', '5 mm'),
      check('k', 'a < 1 m', { passes: '{a} and {2 * a}' }),
      { kind: 'drawing', id: 'd', drawing: 'set-up', from: { one: '2 * a' } },
    ]
    const { compiler } = FULL_CAPABILITIES
    const none = { read: () => ({ mentions: ['a'], check: () => undefined }) }
    const sheet = new PlainSheet({ format: FORMAT, version: 2, title: 'A test', cells }, LIBRARY, { compiler: none })
    expect(sheet.drawing('d')).toEqual({ values: {}, missing: { one: 'its formula is still loading.' } })
    expect(sheet.check('k')).toMatchObject({ state: 'waiting', message: 'its formula is still loading.' })
    sheet.extend(LIBRARY, { compiler })
    expect(sheet.drawing('d')).toEqual({ values: { one: 0.01 }, missing: {} })
    expect(sheet.check('k')).toMatchObject({ state: 'pass', message: '5 mm and 10 mm' })
  })

  test('a measured result shows no difference without what compares', () => {
    const cells = [result('a', '5 mm', { unit: 'mm', measured: '6' })]
    const { compiler } = FULL_CAPABILITIES
    const sheet = new PlainSheet({ format: FORMAT, version: 2, title: 'A test', cells }, LIBRARY, { compiler })
    expect(sheet.outcome('a')).toMatchObject({
      measured: { shown: { text: '6 mm' }, computed: { value: 0.005, shown: { text: '5 mm' } }, difference: '' },
    })
  })

  test('a function of the sheet is asked for by its name, and cannot be called yet', () => {
    const twice: Cell = { kind: 'function', id: 'f', name: 'twice', arguments: [{ name: 'x' }], formula: 'x * 2' }
    const { compiler } = FULL_CAPABILITIES
    const read: string[] = []
    const reading = {
      read: (text: string) => {
        read.push(text)
        return compiler.read(text)
      },
    }
    const cells = [twice, result('r', 'twice(3)')]
    const sheet = new PlainSheet({ format: FORMAT, version: 2, title: 'A test', cells }, LIBRARY, { compiler: reading })
    expect(read).toContain('twice()')
    expect(sheet.engine.ownFunctions).toEqual([{ cell: twice, diagnostics: [] }])
    expect(sheet.outcome('r')).toMatchObject({
      state: 'error',
      diagnostics: [{ message: expect.stringMatching(/no function “twice”/) }],
    })
    sheet.extend(LIBRARY, FULL_CAPABILITIES)
    expect(sheet.outcome('r')).toMatchObject({ state: 'value', value: 6 })
  })

  test('a table and a picture wait, and so does what depends on them', () => {
    const cells: Cell[] = [
      { kind: 'table', id: 'pages', name: 'pages', columns: [{ name: 'wide', unit: 'mm' }], rows: [['200']] },
      {
        kind: 'frame',
        id: 'card',
        name: 'card',
        areas: [{ kind: 'evenness', name: 'light' }],
        picture: {
          name: 'card.tif',
          size: 1,
          digest: 'ab',
          taken: null,
          pixels: { width: 900, height: 700, bits: 16, channels: 3, encoding: 'sRGB' },
        },
        readings: { light: { light: [[1, 0.5]], spread: 1, uniformity: 0.667, corner: [0, -1, -1, 0] } },
      },
      result('widest', 'max(pages.wide)'),
      result('spread', 'card.light.spread'),
    ]
    const { compiler } = FULL_CAPABILITIES
    const sheet = new PlainSheet({ format: FORMAT, version: 2, title: 'A test', cells }, LIBRARY, { compiler })
    const waits = (id: string) => {
      const outcome = sheet.outcome(id)
      return outcome.state === 'waiting' ? outcome.on : outcome.state
    }
    expect(cells.map(({ id }) => waits(id))).toEqual([[], [], ['pages'], ['card']])
    sheet.extend(LIBRARY, FULL_CAPABILITIES)
    expect(cells.map(({ id }) => waits(id))).toEqual(['value', 'value', 'value', 'value'])
  })
})

test('limits of a formula’s own come and go with its text', () => {
  const sheet = sheetOf([given('a', '100 mm'), result('b', 'a'), result('c', '2 * b', { unit: 'mm' })])
  sheet.engine.limitsBudget = Number.POSITIVE_INFINITY
  const type = (formula: string): void => sheet.apply({ do: 'replace', cell: result('b', formula) })
  expect(seen(sheet, 'c')).toBe('200 mm')
  type('a ± 1 mm')
  expect(seen(sheet, 'c')).toBe('200 ± 2 mm')
  type('a')
  expect(seen(sheet, 'c')).toBe('200 mm')
})

import { describe, expect, it } from 'vitest'
import { check, countingLibrary, given, note, notifiedBy, result, sheetOf } from '../make.ts'

const CELLS = [
  given('width', '600 mm'),
  given('height', '400 mm'),
  result('double', 'counted(2 * width)'),
  result('quadruple', 'counted(2 * double)'),
  result('other', 'counted(3 * height)'),
  result('both', 'counted(double + other)'),
]

describe('an edit computes', () => {
  it('only what it reaches, each cell once', () => {
    const { library, calls } = countingLibrary()
    const sheet = sheetOf(CELLS, library)
    expect(calls).toHaveLength(4)
    calls.length = 0
    sheet.apply({ do: 'replace', cell: given('height', '100 mm') })
    expect(calls.map((x) => x.toFixed(3))).toEqual(['0.300', '1.500'])
  })

  it('nothing beyond a cell that gives the same value', () => {
    const { library, calls } = countingLibrary()
    const sheet = sheetOf(
      [given('n', '2.2'), result('rounded', 'floor(n) * 1 mm'), result('a', 'counted(rounded)')],
      library,
    )
    calls.length = 0
    const reported = notifiedBy(sheet, () => sheet.apply({ do: 'replace', cell: given('n', '2.9') }))
    expect(calls).toEqual([])
    expect(reported).toEqual(['n', 'rounded'])
  })

  it('only what a formula reaches when the formula is edited', () => {
    const { library, calls } = countingLibrary()
    const sheet = sheetOf(CELLS, library)
    calls.length = 0
    sheet.apply({ do: 'replace', cell: result('other', 'counted(4 * height)') })
    expect(calls.map((x) => x.toFixed(3))).toEqual(['1.600', '2.800'])
  })

  it('nothing that an earlier formula needed and the present one does not', () => {
    const { library, calls } = countingLibrary()
    const sheet = sheetOf(CELLS, library)
    sheet.apply({ do: 'replace', cell: result('other', 'counted(1 m)') })
    sheet.apply({ do: 'replace', cell: result('both', 'counted(other + double)') })
    calls.length = 0
    sheet.apply({ do: 'replace', cell: given('height', '100 mm') })
    expect(calls).toEqual([])
    sheet.apply({ do: 'replace', cell: given('width', '100 mm') })
    expect(calls.map((x) => x.toFixed(3))).toEqual(['0.200', '0.400', '1.200'])
    sheet.apply({ do: 'replace', cell: result('other', 'counted(3 * height)') })
    calls.length = 0
    sheet.apply({ do: 'replace', cell: given('height', '200 mm') })
    expect(calls.map((x) => x.toFixed(3))).toEqual(['0.600', '0.800'])
  })

  it('nothing when a note, a label or the title changes, or a cell moves', () => {
    const { library, calls } = countingLibrary()
    const sheet = sheetOf([...CELLS, note('n', 'first')], library)
    calls.length = 0
    sheet.apply({ do: 'replace', cell: note('n', 'second') })
    sheet.apply({ do: 'title', title: 'Another' })
    sheet.apply({ do: 'move', id: 'quadruple', to: 0 })
    expect(calls).toEqual([])
  })

  it('what a new, a removed or a renamed cell reaches', () => {
    const { library, calls } = countingLibrary()
    const sheet = sheetOf(CELLS, library)
    calls.length = 0
    sheet.apply({ do: 'add', cell: result('more', 'counted(other)'), at: 0 })
    expect(calls).toHaveLength(1)
    sheet.apply({ do: 'remove', id: 'more' })
    expect(calls).toHaveLength(1)
    sheet.apply({ do: 'rename', id: 'height', name: 'tall' })
    expect(calls.slice(1).map((x) => x.toFixed(3))).toEqual(['1.200', '2.400'])
  })
})

describe('a watcher is notified', () => {
  it('of the edited cell and those it reaches', () => {
    const sheet = sheetOf([
      given('a', '1 mm'),
      given('z', '1 mm'),
      result('b', 'a'),
      result('c', 'b'),
      result('y', 'z'),
    ])
    expect(notifiedBy(sheet, () => sheet.apply({ do: 'replace', cell: given('a', '2 mm') }))).toEqual(['a', 'b', 'c'])
  })

  it('of all that limits reach when they come or go, by whatever way', () => {
    const sheet = sheetOf([
      given('a', '5 mm'),
      given('z', '1 mm'),
      result('b', 'a + z'),
      result('c', '2 * a'),
      result('d', 'b + c'),
      result('e', 'd'),
      result('y', 'z'),
    ])
    for (const text of ['5 mm ± 1 mm', '5 mm'])
      expect(notifiedBy(sheet, () => sheet.apply({ do: 'replace', cell: given('a', text) }))).toEqual([
        ...['a', 'b', 'c', 'd', 'e'],
      ])
    expect(notifiedBy(sheet, () => sheet.apply({ do: 'replace', cell: given('a', '5 mm') }))).toEqual(['a'])
  })

  it('of a cell that says what is wrong above it, when something else is', () => {
    const sheet = sheetOf([
      given('n', '0'),
      given('unit', '2 mm'),
      result('share', '1 / n'),
      result('twice', '2 * share'),
      result('wrong', 'widht + 1'),
    ])
    const said = () => {
      const outcome = sheet.outcome('twice')
      return outcome.state === 'error' ? outcome.diagnostics[0]?.message : outcome.state
    }
    expect(said()).toBe('Fix “share” first. Division by zero.')
    const edit = () => sheet.apply({ do: 'replace', cell: result('share', 'sqrt(n - 1)') })
    expect(notifiedBy(sheet, edit)).toEqual(['share', 'twice'])
    expect(said()).toMatch(/Fix “share” first\. .*must be at least 0/)
    // Another kind of quantity may change what is said of anything in error.
    const retype = () => sheet.apply({ do: 'replace', cell: given('unit', '2 s') })
    expect(notifiedBy(sheet, retype)).toEqual(['share', 'twice', 'unit', 'wrong'])
  })

  it('of a check whose message shows a figure its condition does not use', () => {
    const sheet = sheetOf([
      given('a', '1 mm'),
      given('b', '1 mm'),
      check('k', 'b < 2 mm', { message: 'b is too wide', passes: 'beside {2 * a}' }),
    ])
    expect(sheet.check('k').message).toBe('beside 2 mm')
    expect(notifiedBy(sheet, () => sheet.apply({ do: 'replace', cell: given('a', '3 mm') }))).toEqual(['a', 'k'])
    expect(sheet.check('k').message).toBe('beside 6 mm')
  })

  it('of a drawing that shows what the edit reaches', () => {
    const sheet = sheetOf([
      given('a', '1 mm'),
      result('b', '2 * a'),
      { kind: 'drawing', id: 'd', drawing: 'set-up', from: { distance: 'b + 1 mm' } },
    ])
    expect(notifiedBy(sheet, () => sheet.apply({ do: 'replace', cell: given('a', '3 mm') }))).toEqual(['a', 'b', 'd'])
    expect(sheet.drawing('d').values.distance).toBeCloseTo(0.007, 12)
  })

  it('of everything when cells come, go or move, and no more once it stops watching', () => {
    const sheet = sheetOf([given('a', '1 mm')])
    expect(notifiedBy(sheet, () => sheet.apply({ do: 'add', cell: given('b', ''), at: 1 }))).toBe('all')
    expect(notifiedBy(sheet, () => sheet.undo())).toBe('all')
    const reported: unknown[] = []
    sheet.watch((changed) => reported.push(changed))()
    sheet.apply({ do: 'replace', cell: given('a', '2 mm') })
    expect(reported).toEqual([])
  })
})

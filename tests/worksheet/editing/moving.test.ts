import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Cell, movedBy, movedInto } from '../../../src/worksheet/index.ts'
import { given, sheetOf } from '../make.ts'

const cells = ['a', 'b', 'c', 'd', 'e', 'f'].map((name) => given(name, ''))

/** The order after a move, as letters; undefined where there is nothing to move. */
function after(ids: string, gap: number): string | undefined {
  const sheet = sheetOf(cells)
  const change = movedInto(sheet.cells, new Set(ids), gap)
  if (!change) return undefined
  sheet.apply(change)
  const order = sheet.cells.map(({ id }) => id).join('')
  sheet.undo()
  expect(sheet.worksheet.cells).toEqual(cells)
  return order
}

test('cells are brought together in the gap, in the order they had', () => {
  expect(after('b', 0)).toBe('bacdef')
  expect(after('b', 6)).toBe('acdefb')
  expect(after('be', 3)).toBe('acbedf')
  expect(after('ef', 0)).toBe('efabcd')
  expect(after('ace', 6)).toBe('bdface')
})

test('where they are already nothing is moved', () => {
  expect(after('b', 1)).toBeUndefined()
  expect(after('b', 2)).toBeUndefined()
  expect(after('cde', 4)).toBeUndefined()
  expect(after('', 4)).toBeUndefined()
  expect(after('x', 4)).toBeUndefined()
})

test('by one they pass the cell above or below, and the ends hold them', () => {
  const by = (ids: string, step: -1 | 1): string | undefined => {
    const sheet = sheetOf(cells)
    const change = movedBy(sheet.cells, new Set(ids), step)
    if (change) sheet.apply(change)
    return change && sheet.cells.map(({ id }) => id).join('')
  }
  expect(by('cd', -1)).toBe('acdbef')
  expect(by('cd', 1)).toBe('abecdf')
  expect(by('ab', -1)).toBeUndefined()
  expect(by('f', 1)).toBeUndefined()
  expect(by('bd', 1)).toBe('acebdf')
})

test('any cells, any gap: the others keep their order, and the moved are between the same two', () => {
  fc.assert(
    fc.property(fc.subarray(['a', 'b', 'c', 'd', 'e', 'f'], { minLength: 1 }), fc.nat(6), (ids, gap) => {
      const moved = new Set(ids)
      const rest = cells.filter(({ id }) => !moved.has(id))
      const before = cells.slice(0, gap).filter(({ id }) => !moved.has(id)).length
      const expected = rest.toSpliced(before, 0, ...cells.filter(({ id }) => moved.has(id)))
      const sheet = sheetOf(cells)
      const change = movedInto(sheet.cells, moved, gap)
      if (change) sheet.apply(change)
      expect(sheet.cells.map(({ id }: Cell) => id)).toEqual(expected.map(({ id }) => id))
    }),
  )
})

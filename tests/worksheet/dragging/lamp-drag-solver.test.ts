import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Change, type Drawing, LampDragSolver, type Sheet } from '../../../src/worksheet/index.ts'
import { given, notifiedBy, result, sheetOf } from '../make.ts'

const drawing = (lamps: string, moves: readonly string[]): Drawing => ({
  kind: 'drawing',
  id: 'd',
  drawing: 'set-up',
  from: { lamps },
  moves: [...moves],
})

const PAIR = [
  given('lamp_out', '900', { unit: 'mm', least: '100 mm', most: '2 m' }),
  given('lamp_height', '700', { unit: 'mm', least: '1 mm' }),
  given('thickness', '20', { unit: 'mm' }),
  result('lamps', '{lamp(-lamp_out, 0 mm, lamp_height - thickness), lamp(lamp_out, 0 mm, lamp_height - thickness)}'),
]
const pair = (moves = ['lamp_out', 'lamp_height']): Sheet => sheetOf([...PAIR, drawing('lamps', moves)])
const moverOf = (sheet: Sheet): LampDragSolver => new LampDragSolver(sheet, sheet.cell('d') as Drawing)

/** What each given would be filled in with. */
function filledIn(change: Change | undefined): Readonly<Record<string, string>> {
  const changes = change?.do === 'several' ? change.changes : change ? [change] : []
  return Object.fromEntries(
    changes.map((one) => (one.do === 'replace' && one.cell.kind === 'given' ? [one.cell.name, one.cell.value] : [])),
  )
}

describe('the givens follow a lamp', () => {
  test('whichever side it is dragged on, signs and offsets coming out right', () => {
    const mover = moverOf(pair())
    expect(filledIn(mover.to(1, { x: -1.0124, z: 0.5 }))).toEqual({ lamp_out: '1012', lamp_height: '520' })
    expect(filledIn(mover.to(2, { x: 1.0124, z: 0.5 }))).toEqual({ lamp_out: '1012', lamp_height: '520' })
  })
  test('along one axis alone', () => {
    expect(filledIn(moverOf(pair()).to(2, { x: 0.91 }))).toEqual({ lamp_out: '910' })
  })
  test('as far as their range goes', () => {
    const mover = moverOf(pair())
    expect(filledIn(mover.to(2, { x: 5, z: 0.68 }))).toEqual({ lamp_out: '2000' })
    expect(filledIn(mover.to(2, { x: -5, z: 0.68 }))).toEqual({ lamp_out: '100' })
  })
  test('not at all along an axis that none of them moves', () => {
    expect(moverOf(pair()).to(2, { y: 0.4 })).toBeUndefined()
    expect(filledIn(moverOf(pair()).to(2, { x: 1, y: 0.4 }))).toEqual({ lamp_out: '1000' })
  })
  test('in their own unit, with the limits that followed', () => {
    const sheet = sheetOf([
      given('out', '90 cm ± 5 mm', { unit: 'm' }),
      given('high', '27.5', { unit: 'in' }),
      drawing('lamp(out, 0 mm, high)', ['out', 'high']),
    ])
    expect(filledIn(moverOf(sheet).to(1, { x: 1.2347, z: 0.9 }))).toEqual({ out: '1.235 m ± 5 mm', high: '35.43' })
  })
  test('where formulas bend: a lamp given by distance and elevation', () => {
    const sheet = sheetOf([
      given('distance', '1', { unit: 'm', least: '0.1 m' }),
      given('elevation', '45', { unit: '°', least: '5 °', most: '85 °' }),
      result('lamps', '{lamp_at(distance, elevation, 180 deg), lamp_at(distance, elevation, 0 deg)}'),
      drawing('lamps', ['distance', 'elevation']),
    ])
    const change = moverOf(sheet).to(1, { x: -0.8, z: 0.6 })
    expect(filledIn(change)).toEqual({ elevation: '36.9' })
    expect(filledIn(moverOf(sheet).to(2, { x: 1.2, z: 0.9 }))).toEqual({ distance: '1.5', elevation: '36.9' })
  })
  test('the fewest movements where several could do it', () => {
    const mover = moverOf(
      sheetOf([
        given('a', '500', { unit: 'mm' }),
        given('b', '400', { unit: 'mm' }),
        drawing('lamp(a + b, 0 mm, 1 m)', ['a', 'b']),
      ]),
    )
    expect(filledIn(mover.to(1, { x: 1 }))).toEqual({ a: '550', b: '450' })
  })
})

describe('nothing follows', () => {
  test.each([
    ['no given is named', []],
    ['what is named is a result', ['lamps']],
    ['what is named is no longer there', ['gone']],
    ['what is named moves no lamp', ['thickness_of_nothing']],
  ])('where %s', (_, moves) => {
    const sheet = sheetOf([...PAIR, given('thickness_of_nothing', '3', { unit: 'mm' }), drawing('lamps', moves)])
    expect(moverOf(sheet).moves(1)).toBe(false)
    expect(moverOf(sheet).to(1, { x: 0.5, z: 0.5 })).toBeUndefined()
  })
  test('where the lamps do not compute', () => {
    const sheet = sheetOf([given('out', '', { unit: 'mm' }), drawing('lamp(out, 0 mm, 1 m)', ['out'])])
    expect(moverOf(sheet).moves(1)).toBe(false)
    expect(moverOf(sheet).placeOf(1)).toBeUndefined()
  })
})

test('a drag is one step of undo, reported only to the cells it reaches', () => {
  const sheet = sheetOf([...PAIR, given('other', '1 m'), drawing('lamps', ['lamp_out', 'lamp_height'])])
  const before = sheet.worksheet
  const mover = moverOf(sheet)
  const reported = notifiedBy(sheet, () => sheet.apply(mover.to(2, { x: 1, z: 0.9 }) as Change, { merge: 'drag' }))
  expect(reported).toEqual(['d', 'lamp_height', 'lamp_out', 'lamps'])
  sheet.apply(mover.to(2, { x: 1.1, z: 0.8 }) as Change, { merge: 'drag' })
  expect(sheet.drawing('d').values.lamps).toMatchObject([
    { x: -1.1, z: 0.8 },
    { x: 1.1, z: 0.8 },
  ])
  sheet.undo()
  expect(sheet.worksheet).toBe(before)
  expect(sheet.canUndo).toBe(false)
})

test('a drag thought better of leaves nothing behind', () => {
  const sheet = pair()
  const before = sheet.worksheet
  sheet.apply({ do: 'replace', cell: given('thickness', '30', { unit: 'mm' }) })
  sheet.apply(moverOf(sheet).to(2, { x: 1 }) as Change, { merge: 'drag' })
  expect(sheet.abandon('drag')).toBe(true)
  expect(sheet.abandon('drag')).toBe(false)
  expect(sheet.canRedo).toBe(false)
  sheet.undo()
  expect(sheet.worksheet).toBe(before)
})

test('a given renamed is followed', () => {
  const sheet = pair()
  sheet.apply({ do: 'rename', id: 'lamp_out', name: 'apart' })
  expect((sheet.cell('d') as Drawing).moves).toEqual(['apart', 'lamp_height'])
  expect(moverOf(sheet).moves(1)).toBe(true)
})

test('wherever it is dragged, the lamp comes within a millimetre or is at the end of a range', () => {
  const mover = moverOf(pair())
  fc.assert(
    fc.property(fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: 0.01, max: 3, noNaN: true }), (x, z) => {
      const { lamp_out = '900', lamp_height = '700' } = filledIn(mover.to(2, { x, z }))
      expect(Number(lamp_out)).toBeCloseTo(Math.min(2000, Math.max(100, x * 1000)), -0.31)
      expect(Number(lamp_height)).toBeCloseTo(Math.max(1, z * 1000 + 20), -0.31)
    }),
  )
})

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { frameCount, withTaken } from '../../../src/app/stand/frame-count.ts'
import { measuredGiven, plannedOf } from '../../../src/app/stand/measured-given.ts'
import { adviceText, comparedOf, targetRests } from '../../../src/app/stand/setting.ts'
import { drawingOf, figuresInOrder, type StandStep, standSteps } from '../../../src/app/stand/stand-steps.ts'
import { idsOnExamples } from '../../../src/worksheet/analysis/provenance.ts'
import type { Cell, Given, Sheet, Steps } from '../../../src/worksheet/index.ts'
import { given, result, sheetOf } from '../../worksheet/make.ts'

const heading = (text: string): Cell => ({ kind: 'note', id: text, role: 'heading', text })
const steps = (...list: Steps['steps']): Cell => ({ kind: 'steps', id: 'steps', steps: list })
const drawing = (id: string, kind: 'column' | 'set-up' | 'tiles', from: Record<string, string>): Cell => ({
  kind: 'drawing',
  id,
  drawing: kind,
  from,
})
const step = (sheet: Sheet, number: number): StandStep => standSteps(sheet)[number - 1] as StandStep

describe('the order of work', () => {
  const cells: Cell[] = [
    heading('Frame'),
    result('turned', '1 < 2', { stand: true }),
    result('far', '917 mm', { stand: true, unit: 'mm' }),
    heading('Light'),
    given('lamp_out', '1120', { unit: 'mm', stand: true }),
    result('apart', '2 * lamp_out', { unit: 'mm', stand: true }),
    heading('Papers'),
    result('alone', '1', { stand: true }),
    steps(
      { text: 'Set the lamps', reading: 'lamp_out' },
      { text: 'Measure', reading: 'far', sets: ['turned', 'gone'] },
    ),
  ]

  test('a step has its reading and the figures set at it; a name that is gone is left out', () => {
    const sheet = sheetOf(cells)
    expect(
      standSteps(sheet).map(({ number, text, reading, sets }) => [
        number,
        text,
        reading?.name,
        sets.map(({ name }) => name),
      ]),
    ).toEqual([
      [1, 'Set the lamps', 'lamp_out', []],
      [2, 'Measure', 'far', ['turned']],
    ])
  })

  test('figures follow their steps, then those of their section; the rest comes last', () => {
    const sheet = sheetOf(cells)
    expect(figuresInOrder(sheet, standSteps(sheet)).map(({ cell, step }) => [cell.name, step?.number])).toEqual([
      ['lamp_out', 1],
      ['apart', 1],
      ['turned', 2],
      ['far', 2],
      ['alone', undefined],
    ])
  })

  test('every figure marked or read is shown once, whatever the steps are', () => {
    const names = ['turned', 'far', 'lamp_out', 'apart', 'alone', 'gone']
    const one = fc.record({
      text: fc.string(),
      reading: fc.option(fc.constantFrom(...names), { nil: undefined }),
      sets: fc.subarray(names),
    })
    fc.assert(
      fc.property(fc.array(one, { maxLength: 8 }), (list) => {
        const sheet = sheetOf([...cells.slice(0, -1), steps(...(list as Steps['steps']))])
        const shown = figuresInOrder(sheet, standSteps(sheet))
        expect(shown.map(({ cell }) => cell.name).sort()).toEqual(names.slice(0, -1).sort())
        const order = shown.map(({ step }) => step?.number ?? Number.POSITIVE_INFINITY)
        expect(order).toEqual([...order].sort((a, b) => a - b))
      }),
      { numRuns: 100 },
    )
  })

  test('its drawing is the one fed by its figure alone, else the one that has it in a formula', () => {
    const sheet = sheetOf([
      ...cells,
      drawing('all', 'set-up', { original_to_sensor: 'far + 0 mm', lamps: 'lamp_out' }),
      drawing('column', 'column', { original_to_sensor: 'far' }),
    ])
    expect(drawingOf(sheet, step(sheet, 1))).toMatchObject({ cell: { id: 'all' }, emphasis: 'lamps' })
    expect(drawingOf(sheet, step(sheet, 2))).toMatchObject({ cell: { id: 'column' }, emphasis: 'original_to_sensor' })
  })

  test('is the one with less beside it, of two that show its figure', () => {
    const sheet = sheetOf([
      result('far', '917 mm', { unit: 'mm' }),
      drawing('all', 'set-up', { original_to_sensor: 'far', original_width: '420 mm' }),
      drawing('column', 'column', { original_to_sensor: 'far' }),
      steps({ text: 'Measure', reading: 'far' }),
    ])
    expect(drawingOf(sheet, step(sheet, 1))).toMatchObject({ cell: { id: 'column' } })
  })
})

describe('target and measured', () => {
  const column = drawing('column', 'column', { original_to_sensor: 'far' })
  const advice = { change: 'freely', more: 'Raise both lamps to {}', less: 'Lower both lamps to {}' } as const
  const lamps = given('lamp', '970', { unit: 'mm', advice, from: { kind: 'example', text: '970' } })
  const sheet = (...cells: Cell[]): Sheet =>
    sheetOf([...cells, column, steps({ text: 'Measure', reading: 'far' }, { text: 'Lamps', reading: 'lamp' })])

  test.each([
    ['919', '2 mm over', 'Lower the camera by 2 mm, or continue with 919 mm'],
    ['915', '2 mm under', 'Raise the camera by 2 mm, or continue with 915 mm'],
    ['917', 'as computed', 'On target.'],
  ])('a computed height measured as %s mm is %s', (measured, difference, said) => {
    const adjust = { over: 'Lower the camera by {}', under: 'Raise the camera by {}' }
    const one = sheet(result('far', '917 mm', { unit: 'mm', measured, adjust }), lamps)
    const compared = comparedOf(one, one.named('far') as never)
    expect(compared).toMatchObject({ target: { figure: '917', unit: 'mm' }, difference })
    expect(adviceText(compared)).toContain(said)
  })

  test('a setting measured stays beside what was planned, in the words of its own advice', () => {
    const one = sheet(result('far', '917 mm', { unit: 'mm' }), measuredGiven(lamps, '975'))
    const compared = comparedOf(one, one.named('lamp') as never)
    expect(compared).toMatchObject({
      target: { figure: '970', unit: 'mm' },
      measuredText: '975 mm',
      difference: '5 mm over',
    })
    expect(adviceText(compared)).toContain('Lower both lamps to 970 mm, or continue with 975 mm')
  })

  test('emptied, a setting is as it was, and where it came from; a reading is empty', () => {
    expect(measuredGiven(measuredGiven(lamps, '975'), '')).toEqual(lamps)
    expect(measuredGiven(measuredGiven(measuredGiven(lamps, '9'), '97'), '')).toEqual(lamps)
    const reading: Given = given('lux', '870', { reading: true, from: { kind: 'example', text: '870' } })
    const read = measuredGiven(reading, '900')
    expect([read.value, plannedOf(read)]).toEqual(['900', undefined])
    expect(measuredGiven(read, '').value).toBe('')
  })

  test('what was planned is forgotten once the figure is typed elsewhere', () => {
    const typed = { ...measuredGiven(lamps, '975'), value: '980' }
    expect(plannedOf(typed)).toBeUndefined()
  })

  test('an example of a reading is no target', () => {
    const reading = given('lux', '870', { unit: 'lx', reading: true, from: { kind: 'example', text: '870' } })
    const one = sheetOf([reading])
    expect(comparedOf(one, reading)).toMatchObject({ target: undefined, typed: '', measuredText: '' })
  })
})

describe('frames', () => {
  const tiles = (moves_board: string): Cell =>
    drawing('tiles', 'tiles', {
      original_width: '600 mm',
      original_height: '200 mm',
      field_width: '250 mm',
      field_height: '250 mm',
      overlap: '20 mm',
      moves_board,
    })
  const frames = (
    taken: number,
    board = 'no',
    more: readonly Cell[] = [tiles(board)],
  ): ReturnType<typeof frameCount> => {
    const sheet = sheetOf([...more, steps({ text: 'Take the frames', phase: 'frames', taken })])
    const one = step(sheet, 1)
    return frameCount(sheet, one, drawingOf(sheet, one)?.cell)
  }

  // 600 mm in frames of 250 mm with at least 20 mm of overlap: 1 + ceil(350 / 230) = 3 frames, 175 mm apart.
  test('are counted, with the move of the camera to the next', () => {
    expect(frames(0)).toEqual({ taken: 0, of: 3, now: 1, move: 'Then move the camera 175 mm to the right.' })
    expect(frames(2)).toEqual({ taken: 2, of: 3, now: 3, move: 'This is the last frame.' })
    expect(frames(3)).toEqual({ taken: 3, of: 3, now: undefined, move: '' })
  })

  test('a board moves the opposite way', () => {
    expect(frames(0, 'yes')?.move).toBe('Then move the board 175 mm to the left.')
  })

  test('without a drawing of the frames they are only counted', () => {
    expect(frames(4, 'no', [])).toEqual({ taken: 4, of: undefined, now: 5, move: '' })
  })

  test('a step that is no frames step counts none', () => {
    const sheet = sheetOf([steps({ text: 'Level the camera' })])
    expect(frameCount(sheet, step(sheet, 1), undefined)).toBeUndefined()
    expect(withTaken(sheet.cells[0] as Steps, 0, 2).steps[0]?.taken).toBe(2)
  })
})

describe('a target that rests on an example', () => {
  const example = (name: string, value: string) =>
    given(name, value, { unit: 'mm', from: { kind: 'example', text: value } })
  const rests = (cells: readonly Cell[], name: string): boolean => {
    const sheet = sheetOf(cells)
    return targetRests(sheet, sheet.named(name) as Given, idsOnExamples(sheet))
  }

  test('a given is an example until it is typed, and what is measured is reached from what was planned', () => {
    expect(rests([example('a', '10')], 'a')).toBe(true)
    expect(rests([given('a', '10', { unit: 'mm' })], 'a')).toBe(false)
    expect(rests([measuredGiven(example('a', '10'), '12')], 'a')).toBe(true)
    expect(rests([measuredGiven(given('a', '10', { unit: 'mm' }), '12')], 'a')).toBe(false)
  })

  test('a result rests on what it is computed from, also where its figure was measured', () => {
    const b = result('b', '2 * a', { unit: 'mm' })
    expect(rests([example('a', '10'), b], 'b')).toBe(true)
    expect(rests([example('a', '10'), { ...b, measured: '21' }], 'b')).toBe(true)
    expect(rests([given('a', '10', { unit: 'mm' }), { ...b, measured: '21' }], 'b')).toBe(false)
  })
})

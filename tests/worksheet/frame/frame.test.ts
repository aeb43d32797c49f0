import { describe, expect, it } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { Sheet as BareSheet } from '../../../src/worksheet/editing/sheet.ts'
import { takenDifferences, takenForBlanks, takenInWords } from '../../../src/worksheet/frame/frame-taken.ts'
import {
  type Cell,
  FORMAT,
  type Frame,
  readDocument,
  Sheet,
  VERSION,
  writeDocument,
} from '../../../src/worksheet/index.ts'
import { FULL_CAPABILITIES, FullSheet } from '../../../src/worksheet/renaming/full-sheet.ts'

const pixels = { width: 900, height: 700, bits: 16, channels: 3, encoding: 'sRGB' }
const frame = (more: object = {}): Frame => ({
  kind: 'frame',
  id: 'f',
  name: 'card',
  areas: [
    { kind: 'evenness', name: 'light' },
    { kind: 'rule', name: 'rule', from: [0, 0], to: [3, 4], length: '10 mm' },
    { kind: 'edge', name: 'edge', box: [0, 0, 50, 50] },
    { kind: 'chart', name: 'chart', patches: [] },
  ],
  ...more,
})
const measured = {
  picture: {
    name: 'card.tif',
    size: 1,
    digest: 'ab',
    pixels,
    taken: {
      camera: 'Bench',
      lens: null,
      focal: 0.09,
      aperture: 5.6,
      time: 1 / 128,
      iso: 100,
      when: '2026-03-04T10:11:12',
    },
  },
  readings: {
    light: { light: [[1, 0.5]], spread: 1, uniformity: 0.667, corner: [0, -1, -1, 0] },
    rule: { sampling: 500, ppi: 12.7, angle: 90 },
    edge: { angle: 5, sfr: [[0, 1]], mtf50: 0.3, mtf10: null, efficiency: 1, greatest: 1 },
    chart: {
      patches: [{ name: 'a', lab: [1, 2, 3], delta_e_2000: 4 }],
      mean: 4,
      percentile_90: 4,
      worst: 4,
      worst_name: 'a',
    },
  },
}
const result = (formula: string): Cell => ({ kind: 'result', id: 'r', name: 'r', formula })
const outcome = (formula: string, cell = frame(measured)) =>
  new Sheet({ format: FORMAT, version: VERSION, title: 'T', cells: [cell, result(formula)] }, LIBRARY).outcome('r')

describe('a frame in formulas', () => {
  it('gives its readings by name, in the language’s own units', () => {
    const values: [string, number][] = [
      ['card.light.spread', 1],
      ['card.light.uniformity', 0.667],
      ['card.rule.sampling', 500],
      ['card.rule.angle', Math.PI / 2],
      ['card.edge.mtf50', 0.3],
      ['card.chart.worst', 4],
      ['percentile(card.chart.delta_e_2000, 90 %)', 4],
      ['card.taken.aperture', 5.6],
      ['card.taken.focal', 0.09],
      ['card.pixels.width', 900],
    ]
    for (const [formula, value] of values)
      expect(outcome(formula), formula).toMatchObject({ state: 'value', value: expect.closeTo(value, 9) })
    expect(outcome('card.light.spread')).toMatchObject({ shown: { text: '1 stop' } })
  })

  it('says what part of the picture an evenness covers: all of it, or its box', () => {
    for (const [at, share] of [0, 0, 1, 1].entries())
      expect(outcome(`item(card.light.covers, ${at + 1})`)).toMatchObject({ value: share })
    const boxed = frame({ ...measured, areas: [{ kind: 'evenness', name: 'light', box: [90, 350, 450, 175] }] })
    for (const [at, share] of [0.1, 0.5, 0.5, 0.25].entries())
      expect(outcome(`item(card.light.covers, ${at + 1})`, boxed)).toMatchObject({ value: expect.closeTo(share, 12) })
  })

  it('has no part for what was not found: a response that never fell so far', () => {
    expect(outcome('card.edge.mtf10').state).toBe('error')
  })

  it('is shown, the camera’s blanks and areas not measured yet left out', () => {
    const { edge: _, ...readings } = measured.readings
    const cells: Cell[] = [frame({ ...measured, readings }), result('card.light.spread')]
    const sheet = new Sheet({ format: FORMAT, version: VERSION, title: 'T', cells }, LIBRARY)
    const outcome = sheet.outcome('f')
    expect(outcome).toMatchObject({ state: 'value', shown: { text: expect.stringContaining('camera Bench, focal') } })
  })

  it('waits where its reading is not loaded yet, and what reads it is computed once it is', () => {
    const { frames: _, ...without } = FULL_CAPABILITIES
    const cells: Cell[] = [frame(measured), result('card.light.spread')]
    const sheet = new BareSheet({ format: FORMAT, version: VERSION, title: 'T', cells }, LIBRARY, without)
    expect(sheet.outcome('f').state).toBe('waiting')
    sheet.extend(LIBRARY, FULL_CAPABILITIES)
    expect(sheet.outcome('f').state).toBe('value')
    expect(sheet.outcome('r')).toMatchObject({ state: 'value', value: 1 })
  })

  it('waits for an area that is not measured yet, though others are', () => {
    const { edge: _, ...readings } = measured.readings
    expect(outcome('card.edge.mtf50', frame({ ...measured, readings }))).toMatchObject({
      state: 'waiting',
      on: ['card'],
    })
    expect(outcome('card.light.spread', frame({ ...measured, readings })).state).toBe('value')
    const sheet = new Sheet(
      {
        format: FORMAT,
        version: VERSION,
        title: 'T',
        cells: [
          frame({ ...measured, readings }),
          result('card.edge.mtf50'),
          { kind: 'result', id: 'after', name: 'after', formula: 'r * 2' },
          { kind: 'check', id: 'sharp', name: 'sharp', condition: 'after > 0.2', message: 'Soft.' },
        ],
      },
      LIBRARY,
    )
    expect(sheet.outcome('after')).toMatchObject({ state: 'waiting', on: ['card'] })
    expect(sheet.check('sharp').state).toBe('waiting')
    // Measured, it is no longer waited for.
    sheet.apply({ do: 'replace', cell: frame(measured) })
    expect(sheet.outcome('after')).toMatchObject({ state: 'value', value: expect.closeTo(0.6, 9) })
    expect(sheet.check('sharp').state).toBe('pass')
  })

  it('waits while nothing is measured, with its units checked all the same', () => {
    expect(outcome('card.light.spread', frame())).toMatchObject({ state: 'waiting', on: ['card'] })
    expect(outcome('card.light.spread + 1 mm', frame()).state).toBe('error')
    expect(outcome('card.nothing.spread', frame()).state).toBe('error')
  })

  it('reads nothing out of a document that is no figure', () => {
    const broken = { ...measured, readings: { light: { spread: 'wide', uniformity: null }, rule: { sampling: [1] } } }
    for (const formula of ['card.light.spread', 'card.light.uniformity', 'card.rule.sampling'])
      expect(outcome(formula, frame(broken)).state).toBe('waiting')
    const half = { ...measured, readings: { light: { spread: 'wide', uniformity: 0.9 } } }
    expect(outcome('card.light.spread', frame(half)).state).toBe('error')
  })

  it('is saved and opened with areas and readings', () => {
    const sheet = { format: FORMAT, version: VERSION, title: 'T', cells: [frame(measured)] } as const
    expect(readDocument(writeDocument(sheet as never)).cells).toEqual(sheet.cells)
  })
})

describe('an area under another name', () => {
  const cells: Cell[] = [
    frame(measured),
    result('card.light.spread + other.light'),
    { kind: 'given', id: 'g', name: 'light', value: '1' },
    {
      kind: 'check',
      id: 'c',
      name: 'even',
      condition: 'card.light.spread < 2 stop',
      message: 'Spread {card.light.spread}.',
    },
  ]
  const sheet = () => new FullSheet({ format: FORMAT, version: VERSION, title: 'T', cells }, LIBRARY)

  it('follows into formulas, conditions, messages and its reading, and nowhere else', () => {
    const open = sheet()
    open.apply({ do: 'rename area', id: 'f', area: 0, name: 'field' })
    expect(open.cells[0]).toMatchObject({ areas: [{ name: 'field' }, {}, {}, {}], readings: { field: { spread: 1 } } })
    expect(open.cells[1]).toMatchObject({ formula: 'card.field.spread + other.light' })
    expect(open.cells[2]).toMatchObject({ name: 'light' })
    expect(open.cells[3]).toMatchObject({
      condition: 'card.field.spread < 2 stop',
      message: 'Spread {card.field.spread}.',
    })
    expect(open.check('c').state).toBe('pass')
    open.undo()
    expect(open.cells).toEqual(cells)
  })

  it('is refused with the reason where the name is taken, is the frame’s own or is no name', () => {
    for (const [name, why] of [
      ['rule', 'already named'],
      ['taken', 'is a figure of every frame'],
      ['2nd', 'cannot be the name'],
    ] as const)
      expect(() => sheet().apply({ do: 'rename area', id: 'f', area: 0, name })).toThrow(why)
    expect(() => sheet().apply({ do: 'rename area', id: 'f', area: 9, name: 'x' })).toThrow('no longer')
  })
})

describe('what the camera wrote', () => {
  const given = (name: string, unit: string | undefined, value: string): Cell => ({
    kind: 'given',
    id: name,
    name,
    value,
    ...(unit === undefined ? {} : { unit }),
  })
  const fills = { aperture: 'stop', time: 'time', focal: 'focal' }

  it('is compared with what the sheet asks for; marks that round alike are one', () => {
    const cells = [given('stop', 'f/', 'f/8'), given('time', '1/ s', '1/125'), given('focal', 'mm', '90')]
    const found = takenDifferences(cells, frame({ ...measured, fills }))
    expect(found.map(takenInWords)).toEqual(['stop: f/8 set, f/5.6 in the frame'])
  })

  it('fills the givens that are blank, so that they read back as what was written', () => {
    const cells = [given('stop', 'f/', ''), given('time', '1/ s', ''), given('focal', 'mm', '100')]
    const filled = takenForBlanks(cells, frame({ ...measured, fills }))
    expect(filled.map(({ name }) => name)).toEqual(['stop', 'time'])
    const sheet = new Sheet({ format: FORMAT, version: VERSION, title: 'T', cells: filled }, LIBRARY)
    expect(sheet.outcome('stop')).toMatchObject({ value: 5.6 })
    expect(sheet.outcome('time')).toMatchObject({ value: expect.closeTo(1 / 128, 3) })
  })
})

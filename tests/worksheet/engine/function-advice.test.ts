import { describe, expect, test } from 'vitest'
import type { Node } from '../../../src/worksheet/engine/node.ts'
import type { ValueOutcome } from '../../../src/worksheet/index.ts'
import { given, result, sheetOf } from '../make.ts'

const sheet = () =>
  sheetOf([
    given('height', '1 m', { unit: 'm' }),
    given('out', '2 m', { unit: 'm' }),
    result('angle', 'lamp_elevation(height, out)', { unit: 'deg' }),
    result('steep', 'angle > 45 deg'),
  ])
type Opened = ReturnType<typeof sheet>

const warnings = (opened: Opened): string[] =>
  (opened.outcome('angle') as ValueOutcome).warnings.map(({ message }) => message)
const type = (opened: Opened, name: string, value: string) =>
  opened.apply({ do: 'replace', cell: given(name, value, { unit: 'm' }) })
const write = (opened: Opened, formula: string, more = {}) =>
  opened.apply({ do: 'replace', cell: result('angle', formula, { unit: 'deg', ...more }) })

describe('what a function advises about its arguments', () => {
  test('comes and goes with them', () => {
    const opened = sheet()
    expect(warnings(opened)).toEqual([])
    type(opened, 'height', '3 m')
    expect(warnings(opened)).toEqual([expect.stringContaining('Over 45°')])
    type(opened, 'height', '1 m')
    expect(warnings(opened)).toEqual([])
  })

  test('is given beside functions that advise nothing', () => {
    const opened = sheet()
    type(opened, 'height', '3 m')
    write(opened, 'lamp_elevation(height, out) + atan(0)')
    expect(warnings(opened)).toEqual([expect.stringContaining('Over 45°')])
  })

  test('goes with its formula, and where a measured value takes its place; it comes back with either', () => {
    const opened = sheet()
    type(opened, 'height', '3 m')
    write(opened, 'atan(height / out)')
    expect(warnings(opened)).toEqual([])
    write(opened, 'lamp_elevation(height, out)')
    expect(warnings(opened)).toHaveLength(1)
    write(opened, 'lamp_elevation(height, out)', { measured: '50 deg' })
    expect(opened.engine.adviceOf(opened.engine.node('angle') as Node)).toEqual([])
    opened.undo()
    expect(warnings(opened)).toHaveLength(1)
  })

  test('is that of its own cell after a cell is added or removed before it', () => {
    const opened = sheet()
    type(opened, 'height', '3 m')
    opened.apply({ do: 'add', cell: result('first', '2 * 3'), at: 0 })
    expect(warnings(opened)).toHaveLength(1)
    opened.undo()
    type(opened, 'height', '1 m')
    expect(warnings(opened)).toEqual([])
  })
})

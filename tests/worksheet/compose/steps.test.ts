import { describe, expect, it } from 'vitest'
import type { PartStep } from '../../../src/worksheet/compose/part-library.ts'
import { stepsOf } from '../../../src/worksheet/compose/steps.ts'
import type { Cell } from '../../../src/worksheet/index.ts'
import { invented } from './invented.ts'

interface Options {
  readonly names?: readonly string[]
  readonly texts?: readonly string[]
  readonly setUp?: { readonly shared?: readonly string[]; readonly taken?: readonly string[] }
}

/** The list of steps that parts make, each part with its own. */
function steps(lists: readonly (readonly PartStep[])[], { names = [], texts = [], setUp }: Options = {}): Cell[] {
  const library = invented({
    roles: ['optics'],
    phases: ['board', 'lamps', 'readings'],
    parts: Object.fromEntries(lists.map((one, at) => [`part${at}`, { steps: one }])),
  })
  const gathering = { parts: [...library.parts.values()], texts: new Map(texts.map((name) => [name, '1'])) }
  const later = setUp && {
    ...{ prefix: 'raking', title: 'Raking light' },
    ...{ shared: new Set(setUp.shared), taken: new Set(setUp.taken) },
  }
  return stepsOf(library, gathering, new Set(names), later)
}

const listed = (cells: readonly Cell[]): object[] =>
  cells.flatMap((cell) => (cell.kind === 'steps' ? cell.steps.map(({ phase: _, ...step }) => step) : []))

describe('the steps of a sheet', () => {
  it('are one list in the order of work, those of one phase in the order of parts', () => {
    const list = steps([
      [
        { phase: 'readings', text: 'Read.' },
        { phase: 'lamps', text: 'Switch on.' },
      ],
      [
        { phase: 'lamps', text: 'Aim.' },
        { phase: 'board', text: 'Clear.' },
      ],
    ])
    expect(list).toStrictEqual([
      {
        ...{ kind: 'steps', id: 'steps_work', title: 'In the order of work' },
        steps: [
          { text: 'Clear.', phase: 'board' },
          { text: 'Switch on.', phase: 'lamps' },
          { text: 'Aim.', phase: 'lamps' },
          { text: 'Read.', phase: 'readings' },
        ],
      },
    ])
  })

  it('are no list where there are none', () => {
    expect(steps([[], []])).toEqual([])
  })

  it('are said once', () => {
    const step = { phase: 'board', text: 'Clear.' }
    expect(listed(steps([[step], [{ ...step, phase: 'lamps' }]]))).toEqual([{ text: 'Clear.' }])
  })

  it('take each reading once, and leave the step as a text where the sheet has not got it', () => {
    const list = [
      { phase: 'board', text: 'Read it.', reading: 'lit' },
      { phase: 'board', text: 'Read it again.', reading: 'lit' },
      { phase: 'board', text: 'Read another.', reading: 'gone' },
      { phase: 'board', text: 'And another.', reading: 'gone' },
    ]
    expect(listed(steps([list], { names: ['lit'] }))).toEqual([
      { text: 'Read it.', reading: 'lit' },
      { text: 'Read another.' },
      { text: 'And another.' },
    ])
  })

  it('leave out what a part says otherwise how it comes about', () => {
    const list = [
      { phase: 'board', text: 'Read it.', reading: 'lit' },
      { phase: 'board', text: 'Clear.' },
    ]
    expect(listed(steps([list], { texts: ['lit'] }))).toEqual([{ text: 'Clear.' }])
    expect(listed(steps([list], { texts: ['lit'], names: ['lit'] }))).toHaveLength(2)
  })

  it('set the figures that the sheet has', () => {
    const list = [
      { phase: 'board', text: 'Set it.', sets: ['lamp_out', 'gone', 'lamp_height'] },
      { phase: 'board', text: 'Set nothing.', sets: ['gone'] },
    ]
    expect(listed(steps([list], { names: ['lamp_out', 'lamp_height'] }))).toStrictEqual([
      { text: 'Set it.', sets: ['lamp_out', 'lamp_height'] },
      { text: 'Set nothing.' },
    ])
  })
})

describe('the steps of a later set-up', () => {
  it('are a list of its own, with its own figures and those that all share', () => {
    const list = [
      { phase: 'board', text: 'Read it.', reading: 'lit', sets: ['lamp_out', 'lean'] },
      { phase: 'board', text: 'Read the lean.', reading: 'lean' },
    ]
    const names = ['raking_lit', 'raking_lamp_out', 'lean', 'lit', 'raking_lean']
    expect(steps([list], { names, setUp: { shared: ['lean'] } })).toStrictEqual([
      {
        ...{ kind: 'steps', id: 'raking_steps_work', title: 'Raking light, in the order of work' },
        steps: [
          { text: 'Read it.', phase: 'board', reading: 'raking_lit', sets: ['raking_lamp_out', 'lean'] },
          { text: 'Read the lean.', phase: 'board', reading: 'lean' },
        ],
      },
    ])
  })

  it('leave out the readings that are taken before', () => {
    const list = [
      { phase: 'board', text: 'Read it.', reading: 'lit' },
      { phase: 'board', text: 'Read the lean.', reading: 'lean' },
    ]
    expect(listed(steps([list], { names: ['raking_lit'], setUp: { taken: ['lean'] } }))).toEqual([
      { text: 'Read it.', reading: 'raking_lit' },
    ])
  })
})

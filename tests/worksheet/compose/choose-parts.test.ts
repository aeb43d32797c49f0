import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type ChosenPart, choose, UnknownPart } from '../../../src/worksheet/compose/choose-parts.ts'
import { isJob, partsOfJob } from '../../../src/worksheet/compose/job.ts'
import type { Part, PartLibrary } from '../../../src/worksheet/compose/part-library.ts'

const part = (id: string, role: string, rank: number, more: Partial<Part> = {}): Part =>
  ({ id, role, rank, ...more }) as Part

/** Three roles; what fills the first may claim the second, and a part may need another. */
const PARTS = [
  part('lens', 'optics', 1),
  part('macro', 'optics', 2, { claims: ['light'] }),
  part('zoom', 'optics', 2, { needs: ['tall'] }),
  part('pair', 'light', 3),
  part('panel', 'light', 1, { needs: ['low'] }),
  part('low', 'stand', 1),
  part('tall', 'stand', 1),
]
const library = {
  parts: new Map(PARTS.map((one) => [one.id, one])),
  roles: ['optics', 'light', 'stand'].map((role) => ({ role })),
} as unknown as PartLibrary

const chosen = (...set: (string | ChosenPart)[]) => {
  const { parts, replaced } = choose(
    library,
    set.map((one) => (typeof one === 'string' ? { part: one } : one)),
  )
  return { parts: parts.map(({ id }) => id), replaced }
}

describe('of the parts for a role', () => {
  test('that of the highest rank fills it, then the first by name', () => {
    expect(chosen('lens', 'pair', 'panel')).toEqual({
      parts: ['lens', 'pair'],
      replaced: [{ part: 'panel', by: 'pair' }],
    })
    expect(chosen('tall', 'low')).toEqual({ parts: ['low'], replaced: [{ part: 'tall', by: 'low' }] })
  })

  test('one chosen by hand comes before a job’s leading part, and that before rank', () => {
    expect(chosen('pair', { part: 'panel', by: 'lead' }).parts).toEqual(['panel', 'low'])
    expect(chosen({ part: 'pair', by: 'hand' }, { part: 'panel', by: 'lead' }).parts).toEqual(['pair'])
    // Chosen twice, it counts as what comes first.
    for (const set of [
      ['panel', { part: 'panel', by: 'hand' }],
      [{ part: 'panel', by: 'hand' }, 'panel'],
      [
        { part: 'panel', by: 'hand' },
        { part: 'panel', by: 'lead' },
      ],
      [
        { part: 'panel', by: 'lead' },
        { part: 'panel', by: 'hand' },
      ],
    ] as const)
      expect(chosen({ part: 'pair', by: 'lead' }, ...set).parts, JSON.stringify(set)).toEqual(['panel', 'low'])
  })

  test('a winner’s claim leaves another role without', () => {
    expect(chosen('macro', 'pair', 'low')).toEqual({
      parts: ['macro', 'low'],
      replaced: [{ part: 'pair', by: 'macro' }],
    })
  })

  test('what a winner needs joins, and what a loser needs does not', () => {
    expect(chosen('zoom', 'pair')).toEqual({ parts: ['zoom', 'pair', 'tall'], replaced: [] })
    expect(chosen('lens', 'pair', 'panel').parts).not.toContain('low')
  })

  test('one that is not there is named', () => {
    expect(() => chosen('lens', 'nothing')).toThrow(UnknownPart)
    expect(() => chosen('nothing')).toThrow('nothing')
  })

  test('the order of the set makes no difference', () => {
    const entry = fc.record({
      part: fc.constantFrom(...PARTS.map(({ id }) => id)),
      by: fc.constantFrom('hand', 'lead', undefined),
    })
    const set = fc.uniqueArray(entry, { selector: ({ part }) => part, maxLength: PARTS.length })
    fc.assert(
      fc.property(
        set.chain((one) => fc.tuple(fc.constant(one), fc.shuffledSubarray(one, { minLength: one.length }))),
        ([one, other]) => {
          const [first, second] = [chosen(...(one as ChosenPart[])), chosen(...(other as ChosenPart[]))]
          expect(second).toEqual(first)
          // Every part of the set fills its role or says what replaced it.
          expect(
            one.every(({ part }) => first.parts.includes(part) || first.replaced.some((lost) => lost.part === part)),
          ).toBe(true)
        },
      ),
    )
  })
})

test('a job is recognised by its format, and names its leading part', () => {
  const job = {
    format: 'evenfield-job',
    title: 'A job',
    parts: ['lens', 'pair'],
    lead: 'pair',
    example: {},
    readings: {},
  }
  expect([job, null, 'evenfield-job', undefined, { format: 'evenfield' }, {}].map(isJob)).toEqual([
    true,
    false,
    false,
    false,
    false,
    false,
  ])
  expect(isJob(job) && partsOfJob(job)).toEqual([{ part: 'lens' }, { part: 'pair', by: 'lead' }])
})

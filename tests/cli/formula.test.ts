import { describe, expect, it } from 'vitest'
import { evenfield, json } from './run.ts'

describe('evenfield formula', () => {
  it('prints the value in coherent SI, its dimension and how it is shown', () => {
    const ran = evenfield('formula', 'width * 2 + 1 in', '--set', 'width=420 mm', '--json')
    expect(ran.code).toBe(0)
    expect(ran.err).toBe('')
    expect(ran.out.trim().split('\n')).toHaveLength(1)
    expect(json(ran)).toEqual({
      value: 0.8654,
      dimension: 'length',
      shown: '865 mm',
      error: null,
      warnings: [],
      fixes: [],
    })
  })

  it('prints an error with its place, and ends with 1', () => {
    const ran = evenfield('formula', '2 mm + 3 s', '--json')
    expect(ran.code).toBe(1)
    expect(json(ran)).toEqual({
      value: null,
      dimension: null,
      shown: null,
      error: { message: 'A length and a time cannot be added.', from: 0, to: 10, fixes: [] },
      warnings: [],
      fixes: [],
    })
  })

  it('without --json prints a line to read, or the error under its formula with what would mend it', () => {
    expect(evenfield('formula', '-2^2').out).toBe('−4\n')
    const ran = evenfield('formula', 'f / 8 * 2')
    expect(ran.code).toBe(1)
    expect(ran.out.split('\n').slice(1, 4)).toEqual(['  f / 8 * 2', '  ^^^^^', '  Write f/8: f/8 * 2'])
  })

  it('takes what is set as it is typed: sizes, yes and no, lists, texts, limits', () => {
    const ran = evenfield(
      ...['formula', 'when(lit and kind = "wide", o.width, sum(lengths)) + play', '--json', '--set', 'o=420 x 297 mm'],
      ...['--set', 'lit=yes', '--set', 'lengths={1 mm, 2 mm}', '--set', 'kind="wide"', '--set=play=1,5 mm ± 1 mm'],
    )
    expect(json(ran)).toMatchObject({ value: 0.4215, error: null })
  })

  it('refuses an empty formula as an error', () => {
    const ran = evenfield('formula', ' ', '--json')
    expect(ran.code).toBe(1)
    expect(json(ran)).toMatchObject({ value: null, error: { message: 'A formula is missing here.', from: 0, to: 0 } })
  })
})

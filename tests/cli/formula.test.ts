import { describe, expect, it } from 'vitest'
import { evenfield, inTerminal, json } from './run.ts'

describe('evenfield formula', () => {
  it('prints the value in coherent SI, its dimension and how it is shown', async () => {
    const ran = await evenfield('formula', 'width * 2 + 1 in', '--set', 'width=420 mm', '--json')
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

  it('prints an error with its place, and ends with 1', async () => {
    const ran = await evenfield('formula', '2 mm + 3 s', '--json')
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

  it('without --json prints a line to read, or the error under its formula with the formulas that would be right', async () => {
    expect((await evenfield('formula', '-2^2')).out).toBe('−4\n')
    const ran = await evenfield('formula', 'f / 8 * 2')
    expect(ran.code).toBe(1)
    expect(ran.out).toBe('')
    expect(ran.err.split('\n').slice(1, 4)).toEqual(['  f / 8 * 2', '  ^^^^^', '  try: f/8 * 2'])
  })

  it('prints the whole formulas that would be right, for an error and for a doubt', async () => {
    expect(json(await evenfield('formula', '=max(1 mm; 2 mm)', '--json'))).toMatchObject({
      value: null,
      error: { from: 0, to: 1, fixes: ['max(1 mm, 2 mm)'] },
    })
    expect(json(await evenfield('formula', '53.4 × 40 mm', '--json'))).toMatchObject({
      value: 2.136,
      error: null,
      warnings: [expect.stringContaining('size')],
      fixes: ['size(53.4 mm, 40 mm)', '53.4 * 40 mm'],
    })
  })

  it('takes exposure values for levels', async () => {
    expect(json(await evenfield('formula', '12 EV - 3 stop', '--json'))).toMatchObject({ value: 9, shown: '9 EV' })
    expect(json(await evenfield('formula', '13 EV + 13 EV', '--json'))).toMatchObject({ value: null, dimension: null })
  })

  it('reads the formula from standard input', async () => {
    expect(inTerminal('2 mm + 3 mm\n', 'formula', '-').out).toBe('5 mm\n')
  })

  it('takes what is set as it is typed: sizes, yes and no, lists, texts, limits', async () => {
    const ran = await evenfield(
      ...['formula', 'when(lit and kind = "wide", o.width, sum(lengths)) + play', '--json', '--set', 'o=420 x 297 mm'],
      ...['--set', 'lit=yes', '--set', 'lengths={1 mm, 2 mm}', '--set', 'kind="wide"', '--set=play=1,5 mm ± 1 mm'],
    )
    expect(json(ran)).toMatchObject({ value: 0.4215, error: null })
  })

  it('refuses an empty formula as an error', async () => {
    const ran = await evenfield('formula', ' ', '--json')
    expect(ran.code).toBe(1)
    expect(json(ran)).toMatchObject({ value: null, error: { message: 'A formula is missing here.', from: 0, to: 0 } })
  })
})

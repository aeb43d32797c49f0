import { describe, expect, it } from 'vitest'
import { evenfield, json, worksheet } from './run.ts'

const cells: readonly object[] = [
  { kind: 'given', id: 'g', name: 'width', label: 'Width', unit: 'mm', value: '600 mm ± 2 mm' },
  { kind: 'given', id: 'h', name: 'height', unit: 'mm', value: '' },
  { kind: 'result', id: 'r', name: 'double', unit: 'mm', formula: '2 * width' },
  { kind: 'result', id: 's', name: 'area', formula: 'width * height' },
  { kind: 'check', id: 'k', name: 'fits', condition: 'double < 5 m', message: 'too wide', passes: '{double} fits' },
  { kind: 'check', id: 'c', name: 'just', condition: 'double < 1210 mm', message: 'too wide' },
]

describe('evenfield compute', () => {
  it('prints every cell and check as data; all holding, it ends with 0 though cells wait', async () => {
    const ran = await evenfield('compute', worksheet('holds.json', cells), '--json')
    expect(ran.err).toBe('')
    expect(ran.code).toBe(0)
    expect(json(ran)).toEqual({
      cells: {
        width: {
          value: 0.6,
          dimension: 'length',
          shown: '600 ± 2 mm',
          error: null,
          low: 0.598,
          high: 0.602,
          state: 'value',
          warnings: [],
          fixes: [],
          from: 'typed',
        },
        height: {
          ...{ value: null, dimension: null, shown: null, error: null, low: null, high: null, state: 'waiting' },
          warnings: [],
          fixes: [],
          from: 'empty',
        },
        double: {
          value: 1.2,
          dimension: 'length',
          shown: '1200 ± 4 mm',
          error: null,
          low: expect.closeTo(1.196, 9),
          high: expect.closeTo(1.204, 9),
          state: 'value',
          warnings: [],
          fixes: [],
          rests_on_example: [],
        },
        area: expect.objectContaining({ value: null, error: null, state: 'waiting' }),
        fits: expect.objectContaining({ value: true, dimension: 'yes or no' }),
        just: expect.objectContaining({ value: true }),
      },
      checks: { fits: 'pass', just: 'marginal' },
    })
  })

  it('with a check that fails or waits, or a cell in error, ends with 1', async () => {
    const path = worksheet('fails.json', cells)
    const failing = await evenfield('compute', path, '--json', '--set', 'width=5 m')
    expect(failing.code).toBe(1)
    expect(json(failing)).toMatchObject({ checks: { fits: 'fail', just: 'fail' } })
    const waiting = await evenfield('compute', path, '--json', '--set', 'width=')
    expect(waiting.code).toBe(1)
    expect(json(waiting)).toMatchObject({ checks: { fits: 'waiting', just: 'waiting' } })
    const wrong = await evenfield('compute', path, '--json', '--set', 'height=5 s')
    expect(wrong.code).toBe(1)
    expect(json(wrong)).toMatchObject({
      cells: { height: { state: 'error', value: null, error: { from: 0, to: 3 } } },
      checks: { fits: 'pass' },
    })
  })

  it('takes a measured value for a result, and computes with it', async () => {
    const path = worksheet('measured.json', [
      ...cells.slice(0, 1),
      { kind: 'result', id: 'm', name: 'half', unit: 'mm', formula: 'width / 2' },
      { kind: 'result', id: 'n', name: 'quarter', unit: 'mm', formula: 'half / 2' },
    ])
    const ran = await evenfield('compute', path, '--json', '--set', 'half=310')
    expect(json(ran)).toMatchObject({ cells: { half: { value: 0.31 }, quarter: { value: 0.155, low: null } } })
    expect((await evenfield('compute', path, '--set', 'half=310')).out).toContain('by its formula 300 mm; 10 mm over')
  })

  it('of two cells with one name reports the first, and ends with 1', async () => {
    const path = worksheet('twice.json', [
      { kind: 'check', id: 'a', name: 'same', condition: '1 < 2', message: '' },
      { kind: 'check', id: 'b', name: 'same', condition: '2 < 1', message: '' },
      { kind: 'result', id: 'r', name: 'constructor', formula: '5' },
    ])
    const ran = await evenfield('compute', path, '--json')
    expect(ran.code).toBe(1)
    expect(json(ran)).toMatchObject({ checks: { same: 'pass' }, cells: { constructor: { value: 5 } } })
  })

  it('without --json prints a line for each cell and check, and sends no control signs to the terminal', async () => {
    const path = worksheet('plain.json', [
      { ...cells[0], label: 'Wide\u001b[31m\nline' },
      ...cells.slice(1, 3),
      ...cells.slice(4, 5),
    ])
    expect((await evenfield('compute', path)).out.split('\n')).toEqual([
      'Wide [31m line (width): 600 ± 2 mm',
      'height (height): needs to be filled in',
      'double (double): 1200 ± 4 mm',
      'fits (fits): pass: 1200 ± 4 mm fits',
      '',
    ])
  })
})

describe('a simulation', () => {
  const path = worksheet('simulated.json', [
    ...['a', 'b', 'c', 'd'].map((name) => ({ kind: 'given', id: name, name, value: '0 ± 1.7320508' })),
    { kind: 'result', id: 'y', name: 'y', formula: 'a + b + c + d' },
    { kind: 'result', id: 't', name: 't', formula: '"a text"' },
    { kind: 'check', id: 'k', name: 'below', condition: 'y < 3.88', message: 'too large' },
  ])

  it('adds mean, standard deviation and interval to results, and to checks the share in which they pass', async () => {
    const ran = await evenfield('compute', path, '--simulate', '100000', '--seed', '1', '--json')
    const { cells } = json(ran) as { cells: Record<string, Record<string, number>> }
    // JCGM 101:2008, 9.2.3: four rectangular quantities of standard deviation 1.
    expect(cells.y?.sd).toBeCloseTo(2, 1)
    expect(cells.y?.low95).toBeCloseTo(-3.88, 1)
    expect(cells.y?.high95).toBeCloseTo(3.88, 1)
    expect(cells.below?.passes).toBeCloseTo(0.975, 2)
    expect(cells.t).toMatchObject({ mean: null, sd: null, low95: null, high95: null })
    expect((await evenfield('compute', path, '--simulate', '100000', '--seed=1', '--json')).out).toBe(ran.out)
  })

  it('is reported in sentences without --json', async () => {
    const { out } = await evenfield('compute', path, '--simulate', '1000', '--seed', '2')
    expect(out).toMatch(/simulated: mean .+, 95 % of the tries from .+ to /)
    expect(out).toMatch(/simulated: passes in 9\d(\.\d+)? % of the tries/)
  })

  it.each([
    [['--simulate', 'many'], /--simulate takes a whole number, the number of tries; found 'many'/],
    [['--simulate', '0'], /--simulate takes from 1 to/],
    [['--simulate'], /--simulate takes a number/],
    [['--simulate', '10', '--seed', '1.5'], /--seed takes a whole number/],
    [['--seed', '1'], /--seed can only be used with --simulate/],
  ])('%s is refused in one line', async (options, says) => {
    const { code, err } = await evenfield('compute', path, ...options)
    expect(code).toBe(2)
    expect(err).toMatch(says)
    expect(err.trim()).not.toContain('\n')
  })
})

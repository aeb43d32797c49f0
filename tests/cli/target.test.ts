import { describe, expect, it, test } from 'vitest'
import { evenfield, json, worksheet } from './run.ts'

interface Planned {
  readonly changes: Readonly<Record<string, string>>
  readonly text: string
  readonly gives: string
  readonly passes: readonly string[]
  readonly breaks: readonly string[]
}
interface Report {
  readonly cells: Readonly<Record<string, { readonly value: number }>>
  readonly checks: Readonly<Record<string, string>>
  readonly advice: Readonly<Record<string, readonly Planned[]>>
  readonly targets: Readonly<Record<string, readonly Planned[]>>
  readonly no_target: Readonly<Record<string, string>>
}

const FLAT = ['compute', 'templates/flat-sheet.json', '--as-mine'] as const
const compute = async (...more: string[]): Promise<Report> =>
  json(await evenfield(...FLAT, '--json', ...more)) as Report
const typed = ({ changes }: Planned): string[] =>
  Object.entries(changes).flatMap(([given, text]) => ['--set', `${given}=${text}`])

describe('compute --target', () => {
  test.each([
    ['carriage', '900 mm', 0.9],
    ['carriage', '0.95 m', 0.95],
    ['spread', '0.05', 0.05],
    ['lens_height', '700', 0.7],
  ])('adds plans that bring %s to %s, as typed back by --set, and break nothing', async (name, text, wanted) => {
    const before = await compute('--target', `${name}=${text}`)
    const plans = before.targets[name] ?? []
    expect(plans.length).toBeGreaterThan(0)
    for (const plan of plans) {
      const after = await compute(...typed(plan))
      expect(Math.abs((after.cells[name]?.value ?? Number.NaN) / wanted - 1)).toBeLessThanOrEqual(0.05 + 1e-9)
      for (const [check, state] of Object.entries(before.checks))
        if (/pass|marginal/.test(state)) expect(after.checks[check], check).toMatch(/pass|marginal/)
      expect(plan.breaks).toEqual([])
      expect(plan.text).toContain(`It gives ${plan.gives}.`)
    }
  })

  it('takes several, and says where there is none', async () => {
    const { targets, no_target: none } = await compute('--target', 'carriage=900', '--target', 'ppi=90000')
    expect(Object.keys(targets)).toEqual(['carriage'])
    expect(none).toEqual({ ppi: 'No suggestion was found that gives this value.' })
    expect(await compute()).not.toHaveProperty('targets')
  })

  it('is a line to read without --json', async () => {
    const { out } = await evenfield(...FLAT, '--target', 'spread=0.05 stop')
    expect(out.trimEnd().split('\n').at(-1)).toMatch(
      /^spread: Move both lamps out to \d+ mm.*\. It gives 0\.05 stop\.$/,
    )
  })

  it('says why nothing can bring a result to a value yet', async () => {
    const path = worksheet('targets.json', [
      { kind: 'given', id: 'w', name: 'w', value: '', unit: 'mm' },
      { kind: 'given', id: 'h', name: 'h', value: '4 mm', unit: 'mm' },
      { kind: 'result', id: 'area', name: 'area', formula: 'w * h' },
      { kind: 'result', id: 'half', name: 'half', formula: 'h / 2', measured: '3 mm' },
      { kind: 'result', id: 'odd', name: 'odd', formula: 'h + 1 kg' },
    ])
    const asked = ['area=3 [mm^2]', 'half=1 mm', 'odd=1 mm'].flatMap((one) => ['--target', one])
    const { no_target: reasons } = json(await evenfield('compute', path, '--json', ...asked)) as Report
    expect(reasons).toMatchObject({
      area: 'It has no value yet; it needs w.',
      half: 'It has a measured value, which is used whatever is changed.',
      odd: expect.stringMatching(/^It has no value: A length and a mass/),
    })
  })

  test.each([
    ['carrage=1', /no result of this name/],
    ['focal=50', /filled in, not computed; use --set focal=/],
    ['carriage=', /no value is given/],
    ['carriage', /name=text/],
    ['carriage=900 kg', /a mass; the field takes a length/],
    ['carriage=far', /--target carriage: /],
    ['turned=yes', /not a figure/],
  ])('ends with 2 and one line for %s', async (asked, says) => {
    const ran = await evenfield(...FLAT, '--target', asked)
    expect(ran.code).toBe(2)
    expect(ran.out).toBe('')
    expect(ran.err).toMatch(says)
    expect(ran.err).toMatch(/^evenfield: --target \P{Cc}+\n$/u)
  })

  it('is an option of sheets alone', async () => {
    expect((await evenfield('formula', '1', '--target', 'x=1')).err).toMatch(/no option --target/)
  })
})

describe('compute --advice for a check that is marginal', () => {
  it('gives it more margin, as typed back by --set, and breaks nothing', async () => {
    const narrow = ['--set', 'even_limit=0.105']
    const before = await compute('--advice', ...narrow)
    const marginal = Object.keys(before.checks).filter((name) => before.checks[name] === 'marginal')
    const advised = marginal.filter((name) => (before.advice[name] ?? []).length > 0)
    expect(advised.length).toBeGreaterThan(0)
    for (const name of advised)
      for (const plan of before.advice[name] ?? []) {
        const after = await compute(...narrow, ...typed(plan))
        expect(after.checks[name]).toBe('pass')
        for (const [check, state] of Object.entries(before.checks))
          if (/pass|marginal/.test(state)) expect(after.checks[check], check).toMatch(/pass|marginal/)
      }
  })
})
